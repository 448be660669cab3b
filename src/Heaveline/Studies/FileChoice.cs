namespace Heaveline.Studies;

/// <summary>A file of an answer that a command writes where it is asked for.</summary>
/// <param name="Name">The option, without its dashes.</param>
/// <param name="Ending">How the file's name must end.</param>
/// <param name="Says">What it is, as the help says it.</param>
/// <param name="Needs">The choice that it speaks of: without it the file is objected to.</param>
public sealed record FileChoice(string Name, string Ending, string Says, Choice Needs)
{
    /// <summary>Endings of the files that are written beside it, under its name.</summary>
    public IReadOnlyList<string> Beside { get; init; } = [];

    /// <summary>The choice whose file it names by its name alone, so that it must lie in that one's folder; null: it may lie anywhere.</summary>
    public Choice? LiesBeside { get; init; }
}
