using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Ties;

/// <summary>Height of the body over the wheels of one axle before and after the load of the passes came aboard.</summary>
public sealed record AxleHeights
{
    /// <summary>Doubt of a height that states none, m, half-width: common practice, no source.</summary>
    public const double UsualDoubt = 2e-3;

    /// <summary>The axle.</summary>
    public required AxleEnd End { get; init; }

    /// <summary>From the wheel's centre up to the arch, as the car was weighed, m; the mean of both sides.</summary>
    public required Amount<Length> Before
    {
        get;
        init => field = Checked.Within(value, 0.05, 2.0, "Measure from the middle of the wheel straight up to the arch.", "HeightBefore");
    }

    /// <summary>The same under the load, m.</summary>
    public required Amount<Length> After
    {
        get;
        init => field = Checked.Within(value, 0.05, 2.0, "Measure from the middle of the wheel straight up to the arch.", "HeightAfter");
    }

    /// <summary>By how much the body sank onto its wheels, m.</summary>
    internal double Fall => Before.Si - After.Si;

    /// <summary>One standard deviation of it, m, of the reading alone.</summary>
    internal double Spread => 0.5 * Math.Sqrt(Square(Before) + Square(After));

    private static double Square(Amount<Length> height) => Math.Pow(height.Doubt.IsStated ? height.Doubt.HalfWidth : UsualDoubt, 2);
}
