namespace Heaveline.Files;

/// <summary>What is possible in a file but not plausible, and where. A warning does not keep the file from being read.</summary>
/// <param name="File">The file as the user named it.</param>
/// <param name="Line">Line, counted from 1.</param>
/// <param name="Column">Column in UTF-16 characters, counted from 1.</param>
/// <param name="Length">Characters marked, at least 1.</param>
/// <param name="Message">What is not plausible, one sentence with its full stop.</param>
/// <param name="Advice">The likely slip and what to look at.</param>
public sealed record Warning(string File, int Line, int Column, int Length, string Message, string Advice)
{
    /// <summary>Whether nothing of it looks wrong, but something is not said that an answer would need: it says what is taken instead.</summary>
    public bool IsUnknown { get; init; }

    /// <summary>The warning for a terminal: place and message, the line with the part marked, the advice.</summary>
    public string Format(SourceText source) => Excerpt.Of(File, source.Line(Line), new Place(Line, Column, Length), "warning", Message, Advice);
}
