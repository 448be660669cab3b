namespace Heaveline.Files.Yaml;

/// <summary>What came of reading a car, a road or anything else that a text describes: it, or all the reasons why there is none.</summary>
/// <typeparam name="T">What was to be read.</typeparam>
public sealed record Reading<T>
    where T : class
{
    /// <summary>What was read; null when anything was refused.</summary>
    public required T? Value { get; init; }

    /// <summary>Everything that was refused: the text itself first, then those that it names, each in its order; empty when read.</summary>
    public IReadOnlyList<Refusal> Refusals { get; init; } = [];

    /// <summary>What is possible but not plausible, in the same order; of a car how its axles ride first, which may explain the rest.</summary>
    public IReadOnlyList<Warning> Warnings { get; init; } = [];

    /// <summary>The texts that were read: the text itself, then those that it names (a variant's bases, a road's measured profile).</summary>
    public required IReadOnlyList<SourceText> Sources { get; init; }

    /// <summary>
    /// The whole document, every value with its place; of a variant with its changes laid over its bases. Null when it could not be put together
    /// and for a text that is no YAML.
    /// </summary>
    public Node? Root { get; init; }

    /// <summary>A reading that came to nothing for one reason.</summary>
    public static Reading<T> Refused(SourceText source, Refusal refusal) => new() { Value = null, Refusals = [refusal], Sources = [source] };

    /// <summary>The same reading with other names for its files.</summary>
    /// <param name="nameOf">The other name of a file.</param>
    public Reading<T> Named(Func<string, string> nameOf) => this with
    {
        Refusals = [.. Refusals.Select(refusal => refusal with { File = nameOf(refusal.File) })],
        Warnings = [.. Warnings.Select(warning => warning with { File = nameOf(warning.File) })],
        Sources = [.. Sources.Select(source => source.Named(nameOf(source.File)))],
    };

    /// <summary>How many refusals, and how many warnings, are shown on a terminal; all, unless one slip may stand in thousands of lines.</summary>
    public int MostShown { get; init; } = int.MaxValue;

    /// <summary>
    /// The refusals and warnings for a terminal, a blank line between them, and how many more there are than are shown; empty when there is none.
    /// </summary>
    public string Format() => string.Join("\n\n", [
        .. Refusals.Take(MostShown).Select(r => r.Format(Source(r.File))), .. More(Refusals.Count, "refused"),
        .. Warnings.Take(MostShown).Select(w => w.Format(Source(w.File))), .. More(Warnings.Count, "doubtful")]);

    private IEnumerable<string> More(int count, string what) =>
        count > MostShown ? [FormattableString.Invariant($"… and {count - MostShown} more {what}.")] : [];

    private SourceText Source(string file) => Sources.FirstOrDefault(source => source.File == file) ?? new SourceText(file, "");
}
