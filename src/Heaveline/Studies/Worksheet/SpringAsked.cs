using System.Collections.Immutable;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A spring pressed on a scale, to be worked out.</summary>
public sealed record SpringAsked : SheetAsked
{
    /// <summary>Lengths of the spring, m, each with the force on it, N.</summary>
    public required ImmutableArray<(Amount<Length> Length, Amount<Force> Force)> Pairs { get; init => field = Drawable.Any(value); }

    /// <summary>A length at which to tell force and rate, m: where it is fitted, or at ride height; null for none.</summary>
    public Amount<Length>? At { get; init; }
}
