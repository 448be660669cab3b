namespace Heaveline.Files;

/// <summary>Why a file is not accepted, and where. All refusals of a file are given at once.</summary>
/// <param name="File">The file as the user named it.</param>
/// <param name="Line">Line, counted from 1.</param>
/// <param name="Column">Column in UTF-16 characters, counted from 1.</param>
/// <param name="Length">Characters marked, at least 1.</param>
/// <param name="Message">What is wrong, one sentence with its full stop.</param>
/// <param name="Advice">What to write instead.</param>
public sealed record Refusal(string File, int Line, int Column, int Length, string Message, string Advice)
{
    /// <summary>The refusal for a terminal: place and message, the line with the part marked, the advice.</summary>
    public string Format(SourceText source) => Format(source.Line(Line));

    /// <summary>The same, with the line that it points into.</summary>
    public string Format(string sourceLine) => Excerpt.Of(File, sourceLine, new Place(Line, Column, Length), "refused", Message, Advice);
}
