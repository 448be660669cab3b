namespace Heaveline.Files.Yaml;

/// <summary>A text read: the value, or all the reasons why there is none.</summary>
/// <typeparam name="T">What was to be read.</typeparam>
/// <param name="Value">The value; null when refused.</param>
/// <param name="Refusals">All refusals, in the order of the text; empty when read.</param>
/// <param name="Warnings">All warnings, in the order of the text.</param>
/// <param name="Source">The text, for showing where something stands.</param>
/// <param name="Root">The document, to find places for later warnings; null when the text is not YAML.</param>
public sealed record Reading<T>(T? Value, IReadOnlyList<Refusal> Refusals, IReadOnlyList<Warning> Warnings, SourceText Source, Node? Root)
    where T : class
{
    /// <summary>Every refusal and warning for a terminal, a blank line between them; empty when there is none.</summary>
    public string Format() => string.Join("\n\n", [.. Refusals.Select(r => r.Format(Source)), .. Warnings.Select(w => w.Format(Source))]);
}
