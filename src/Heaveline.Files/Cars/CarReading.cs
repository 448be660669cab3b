using Heaveline.Cars;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Cars;

/// <summary>A car file or a variant read: the car, or all the reasons why there is none.</summary>
public sealed record CarReading
{
    /// <summary>The car; null when anything was refused.</summary>
    public required Car? Car { get; init; }

    /// <summary>Name of the variant; null for a car file.</summary>
    public string? Variant { get; init; }

    /// <summary>Everything that was refused: the file itself first, then its bases, each in the order of its text.</summary>
    public required IReadOnlyList<Refusal> Refusals { get; init; }

    /// <summary>What is possible but not plausible: how the axles ride first, which may explain the rest, then in the same order.</summary>
    public required IReadOnlyList<Warning> Warnings { get; init; }

    /// <summary>The texts that were read: the file itself, then its bases.</summary>
    public required IReadOnlyList<SourceText> Sources { get; init; }

    /// <summary>The whole document with a variant's changes in it, every value with its place; null when it could not be put together.</summary>
    public Node? Root { get; init; }

    /// <summary>Every refusal and warning for a terminal, a blank line between them; empty when there is none.</summary>
    public string Format() =>
        string.Join("\n\n", [.. Refusals.Select(r => r.Format(Source(r.File))), .. Warnings.Select(w => w.Format(Source(w.File)))]);

    private SourceText Source(string file) => Sources.FirstOrDefault(source => source.File == file) ?? new SourceText(file, "");
}
