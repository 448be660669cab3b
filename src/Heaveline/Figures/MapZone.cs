using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>Points of a map without a value that mean something, hatched in their own manner: one car passes there and the other does not.</summary>
public sealed record MapZone
{
    /// <summary>What it means, named over the map.</summary>
    public required string Label { get; init => field = Checked.NotBlank(value, "Say what the zone means."); }

    /// <summary>Whether it is on the better side; null where it is on neither.</summary>
    public required bool? IsBetter { get; init; }

    /// <summary>Which nodes of the grid belong to it, shape (ny, nx).</summary>
    public required ImmutableArray<bool> Nodes { get; init; }
}
