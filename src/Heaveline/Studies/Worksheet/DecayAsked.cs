using System.Collections.Immutable;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Swings that die, to be worked out.</summary>
public sealed record DecayAsked : SheetAsked
{
    /// <summary>Height at which it comes to rest, m.</summary>
    public required Amount<Length> Rest { get; init; }

    /// <summary>Heights at which it turns, one after another, m.</summary>
    public required ImmutableArray<Amount<Length>> Turns { get; init => field = Drawable.Any(value); }

    /// <summary>Half-width of the band of heights at which friction lets it come to rest, m; null when not known.</summary>
    public Amount<Length>? Friction { get; init; }

    /// <summary>Rate of the spring at the wheel, N/m; null when not known.</summary>
    public Amount<Stiffness>? WheelRate { get; init; }

    /// <summary>Rate of one tyre, N/m; null when not known.</summary>
    public Amount<Stiffness>? Tyre { get; init; }
}
