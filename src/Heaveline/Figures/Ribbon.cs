using System.Collections.Immutable;

namespace Heaveline.Figures;

/// <summary>A shaded interval around a curve: what doubt, or a range of load states, makes of it.</summary>
public sealed record Ribbon
{
    /// <summary>Places along x, shape (n), finite.</summary>
    public required ImmutableArray<double> Xs { get; init => field = Drawable.AsLongAs(Drawable.Places(value), Lows); }

    /// <summary>Lower edge, shape (n), finite.</summary>
    public required ImmutableArray<double> Lows { get; init => field = Drawable.AsLongAs(Drawable.Places(value), Xs); }

    /// <summary>Upper edge, shape (n), finite.</summary>
    public required ImmutableArray<double> Highs { get; init => field = Drawable.AsLongAs(Drawable.Places(value), Xs); }

    /// <summary>The ink, printed as a pale tint.</summary>
    public Ink Ink { get; init; } = Ink.First;
}
