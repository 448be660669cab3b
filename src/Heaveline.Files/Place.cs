namespace Heaveline.Files;

/// <summary>A part of one line of a text.</summary>
/// <param name="Line">Line, counted from 1.</param>
/// <param name="Column">Column in UTF-16 characters, counted from 1.</param>
/// <param name="Length">Characters, at least 1.</param>
/// <param name="File">The file that it stands in when it is not the one being read (a variant's base); null for that one.</param>
public readonly record struct Place(int Line, int Column, int Length, string? File = null)
{
    /// <summary>The first character of a file.</summary>
    public static Place Start => new(1, 1, 1);
}
