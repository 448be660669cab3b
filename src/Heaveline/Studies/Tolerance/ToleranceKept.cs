using Heaveline.Numerics;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>How many fitted cars keep the promise where parts keep certain tolerances.</summary>
/// <param name="Tolerance">The tolerances.</param>
/// <param name="Kept">Cars that keep the promise.</param>
/// <param name="Draws">Of how many.</param>
/// <param name="Price">What the tolerances cost a kit; null where nobody said.</param>
public sealed record ToleranceKept(KitTolerance Tolerance, int Kept, int Draws, double? Price)
{
    /// <summary>Share of the drawn cars that keep it (–).</summary>
    public double Share => Kept / (double)Draws;

    /// <summary>Between which shares it really lies, nine times out of ten (–).</summary>
    public (double Low, double High) Interval => WilsonInterval.Of(Kept, Draws) is var interval ? (interval.Low, interval.High) : default;

    /// <summary>Whether so many surely keep it: the lower end of the interval reaches the share.</summary>
    /// <param name="share">The share that is asked for (–).</param>
    public bool Holds(double share) => Interval.Low >= share;

    /// <summary>Whether this is as loose in everything as another, and looser in something.</summary>
    /// <param name="other">The other.</param>
    public bool IsLooser(ToleranceKept other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var (own, its) = (Tolerance, other.Tolerance);
        return own.Springs >= its.Springs && own.Dampers >= its.Dampers && own.Heights >= its.Heights && own != its;
    }
}
