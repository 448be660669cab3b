namespace Heaveline.Files.Editing;

/// <summary>A part of a text with what takes its place. Everything outside the part stays as it is, character for character.</summary>
/// <param name="Start">First character of the part, counted from 0 in UTF-16 characters.</param>
/// <param name="Removed">What stands there; may be empty.</param>
/// <param name="Inserted">What takes its place; may be empty.</param>
public sealed record Splice(int Start, string Removed, string Inserted)
{
    /// <summary>The splice that takes this one back, for the text that this one made.</summary>
    public Splice Inverse => new(Start, Inserted, Removed);

    /// <summary>The text with the part replaced.</summary>
    /// <exception cref="ArgumentException">The text holds something else at the place.</exception>
    public string Apply(string text) => Start <= text.Length && text.AsSpan(Start).StartsWith(Removed, StringComparison.Ordinal)
        ? string.Concat(text.AsSpan(0, Start), Inserted, text.AsSpan(Start + Removed.Length))
        : throw new ArgumentException("The splice belongs to another text.", nameof(text));
}
