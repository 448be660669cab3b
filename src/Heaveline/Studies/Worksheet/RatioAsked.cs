using System.Collections.Immutable;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A wheel jacked through its travel, to be worked out.</summary>
public sealed record RatioAsked : SheetAsked
{
    /// <summary>Travels of the wheel, each with that of spring or damper, m, from the state described, bump positive.</summary>
    public required ImmutableArray<(Amount<Length> Wheel, Amount<Length> Element)> Stops
    {
        get;
        init => field = [.. Drawable.Any(value).OrderBy(s => s.Wheel.Si)];
    }
}
