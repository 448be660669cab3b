namespace Heaveline.Parts;

/// <summary>What one place costs.</summary>
/// <param name="Place">The place.</param>
/// <param name="Part">The part as it is set.</param>
/// <param name="Pieces">How many are bought; 0 for a part that stands there already.</param>
/// <param name="PriceOfOne">Price of one; null when nobody said.</param>
public sealed record CostLine(PartPlace Place, string Part, int Pieces, Money? PriceOfOne)
{
    /// <summary>What fitting it costs; null where nobody said, or nothing is fitted.</summary>
    public Money? Fitting { get; init; }

    /// <summary>Price of all with its fitting where that has one; nothing where none is bought, null where nobody said.</summary>
    public Money? Total => Pieces == 0 ? Money.None : PriceOfOne is { } one ? (Pieces * one) + (Fitting ?? Money.None) : null;
}
