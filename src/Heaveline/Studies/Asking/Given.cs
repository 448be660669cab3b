namespace Heaveline.Studies;

/// <summary>What was given for each choice, as words: typed at a command line, or standing in a page's address. Not yet checked.</summary>
public sealed class Given
{
    private readonly List<(string Name, string Words)> all;

    /// <summary>Words by the names of their choices. A name may come more than once; blank words count as none.</summary>
    public Given(IEnumerable<(string Name, string? Words)> words) =>
        all = [.. words.Where(w => !string.IsNullOrEmpty(w.Words)).Select(w => (w.Name, w.Words!))];

    /// <summary>All of them, in order.</summary>
    public IReadOnlyList<(string Name, string Words)> Words => all;

    /// <summary>Nothing: everything stands as usual.</summary>
    public static Given Nothing { get; } = new([]);

    /// <summary>The words for a choice; null where none were given.</summary>
    public string? Of(Choice choice) => All(choice) is [var first, ..] ? first : null;

    /// <summary>All words for a choice, in order.</summary>
    public IReadOnlyList<string> All(Choice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return [.. all.Where(w => w.Name == choice.Name).Select(w => w.Words)];
    }

    /// <summary>Whether words were given for a choice.</summary>
    /// <param name="choice">Name of the choice.</param>
    /// <param name="words">The words.</param>
    internal bool Has(string choice, string words) => all.Contains((choice, words));

    /// <summary>The same with other words for a choice.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="words">The words; null for none.</param>
    public Given With(Choice choice, string? words)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return new Given([.. all.Where(w => w.Name != choice.Name).Select(w => (w.Name, (string?)w.Words)), (choice.Name, words)]);
    }

    /// <summary>The same with every word for a choice turned into another.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="turn">From the one word to the other.</param>
    public Given With(Choice choice, Func<string, string> turn)
    {
        ArgumentNullException.ThrowIfNull(choice);
        ArgumentNullException.ThrowIfNull(turn);
        return new([.. all.Select(w => (w.Name, (string?)(w.Name == choice.Name ? turn(w.Words) : w.Words)))]);
    }
}
