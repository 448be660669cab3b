using Heaveline.Roads;

namespace Heaveline.Files.Roads;

/// <summary>What came of reading a road: the road, or everything that is wrong with the file.</summary>
/// <param name="Road">The road; null when anything was refused.</param>
/// <param name="Refusals">All refusals, in the order of the file; empty when the road was read.</param>
public sealed record RoadReading(Road? Road, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>What is possible but not plausible, in the order of the file.</summary>
    public IReadOnlyList<Warning> Warnings { get; init; } = [];

    /// <summary>The texts that were read: the file itself, then the measured profile that it names.</summary>
    public IReadOnlyList<SourceText> Sources { get; init; } = [];

    // A measured road has thousands of lines, and one slip may stand in all of them.
    private const int MostShown = 20;

    /// <summary>
    /// The first 20 refusals and the first 20 warnings for a terminal, a blank line between them, and how many more there are; empty when there
    /// is none.
    /// </summary>
    public string Format() => string.Join("\n\n", [
        .. Refusals.Take(MostShown).Select(r => r.Format(Source(r.File))), .. More(Refusals.Count, "refused"),
        .. Warnings.Take(MostShown).Select(w => w.Format(Source(w.File))), .. More(Warnings.Count, "doubtful")]);

    private static IEnumerable<string> More(int count, string what) =>
        count > MostShown ? [FormattableString.Invariant($"… and {count - MostShown} more {what}.")] : [];

    private SourceText Source(string file) => Sources.FirstOrDefault(source => source.File == file) ?? new SourceText(file, "");
}
