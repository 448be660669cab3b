namespace Heaveline.Doubts;

/// <summary>
/// One independent error: an amount's own, or that of an instrument or guess that several amounts share. All amounts of a source move together, each
/// by its own standard deviation times one common normal number.
/// </summary>
/// <param name="Name">The amount's path, or the shared name.</param>
/// <param name="Amounts">What it moves.</param>
public sealed record DoubtSource(string Name, IReadOnlyList<DoubtfulAmount> Amounts)
{
    /// <summary>Whether it is a named instrument, which is off for every car that it measured.</summary>
    public bool IsInstrument { get; init; }

    /// <summary>The name for a reader: a shared one with what it moves.</summary>
    public string Words => Amounts.Count == 1 && (Name == Amounts[0].Path || Name.StartsWith($"{Amounts[0].Path} of ", StringComparison.Ordinal))
        ? Name
        : $"{Name} ({string.Join(", ", Amounts.Select(a => a.Path))})";
}
