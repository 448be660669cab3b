namespace Heaveline.Studies;

/// <summary>A line of a study's file: words for a choice, and where they stand.</summary>
/// <param name="Choice">Name of the choice.</param>
/// <param name="Words">The words.</param>
/// <param name="Line">Line, counted from 1.</param>
/// <param name="Column">Column in UTF-16 characters, counted from 1.</param>
/// <param name="Length">Characters, at least 1.</param>
public sealed record ChooseLine(string Choice, string Words, int Line, int Column, int Length);
