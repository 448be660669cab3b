using Heaveline.Quantities;

namespace Heaveline.Tests.Files;

internal sealed record Bench(
    string Title,
    IReadOnlyList<Coil> Springs,
    Coil? Spare,
    bool? Warm,
    int? Turns,
    IReadOnlyList<(Amount<Velocity> Speed, Amount<Force> Force)>? Table,
    IReadOnlyList<KeyValuePair<string, Amount<Mass>>>? Loads);
