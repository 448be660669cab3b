using Heaveline.Elements;
using Heaveline.Models;

namespace Heaveline.Rides;

/// <summary>An element whose force bends, seen by a Gaussian motion: its mean force and the straight line that misses it least.</summary>
internal sealed class RandomElement
{
    private readonly Element element;
    private readonly double[] breaks;
    private readonly double trim;
    private ElementMean moving;

    public RandomElement(RideNumbers numbers, Element element)
    {
        (this.element, breaks, trim) = (element, element.Breaks(), numbers.AtTrim(element.Sight));
        // The tangent leaves friction out.
        AtTrim = element.AtRest(trim);
        Now = AtTrim;
    }

    /// <summary>What the tangent at trim counts for it.</summary>
    public ElementMean AtTrim { get; }

    /// <summary>The means last taken.</summary>
    public ElementMean Now { get; private set; }

    /// <summary>Whether it has means at all: not where its range ends.</summary>
    public bool IsSound => double.IsFinite(Now.Force) && double.IsFinite(Now.Rate) && double.IsFinite(Now.Damping);

    /// <summary>Takes the means.</summary>
    /// <param name="shift">Mean of what it sees, from trim.</param>
    /// <param name="deviation">Deviation of what it sees, m (of volume, m³).</param>
    /// <param name="speed">Deviation of its rate.</param>
    /// <param name="again">Whether only the mean has changed since the last time.</param>
    public void Update(double shift, double deviation, double speed, bool again)
    {
        var (force, rate) = element.StandingMean(trim + shift, deviation, breaks);
        if (!again || element.Ratio.Varies)
        {
            moving = element.MovingMean(trim + shift, deviation, speed);
        }

        Now = new(force + moving.Force, rate + moving.Rate, moving.Damping);
    }
}
