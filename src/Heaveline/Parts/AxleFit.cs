using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Measures;

namespace Heaveline.Parts;

/// <summary>One axle with its parts in it, seen by what its springs carried on the scales. Both wheels move together, the worse counts.</summary>
internal readonly struct AxleFit
{
    private readonly Car car;
    private readonly Axle axle;
    private readonly double half;
    private readonly double mean;
    private readonly SpringStance? left;
    private readonly SpringStance? right;

    /// <param name="car">The car with its parts in it.</param>
    /// <param name="end">Which axle.</param>
    public AxleFit(Car car, AxleEnd end)
    {
        (this.car, End) = (car, end);
        axle = end == AxleEnd.Front ? car.Front : car.Rear;
        half = car.Kind == VehicleKind.TwoWheeler ? 0.5 : 1.0;
        var weighed = CarElements.Weighed(car, end);
        mean = 0.5 * (weighed.Left + weighed.Right);
        left = SpringStance.Of(axle, weighed.Left, mean);
        right = weighed.Right == weighed.Left ? left : SpringStance.Of(axle, weighed.Right, mean);
    }

    public AxleEnd End { get; }

    /// <summary>What one spring carried on the scales, mean of both sides, N.</summary>
    public double Weighed => mean;

    /// <summary>How the springs' place is known; null where nothing is said of their lengths.</summary>
    public StanceOrigin? Origin => left?.Origin;

    /// <summary>
    /// Wheel travel at which the bump stop is solid, or touches where it has no hard end, m; null without a stop.
    /// </summary>
    public double? FullBump => axle.BumpStop is { } stop ? stop.Clearance.Si + (stop.SolidAfter?.Si ?? 0.0) : null;

    /// <summary>Whether <see cref="FullBump"/> is a hard end.</summary>
    public bool EndsSolid => axle.BumpStop?.SolidAfter is not null;

    /// <summary>Wheel travel at which the coils touch, m; null where a length is not known, or they never do.</summary>
    public double? CoilsTouch
    {
        get
        {
            if (left?.BlockAt is not { } one || right?.BlockAt is not { } other)
            {
                return null;
            }

            var at = RatioCurve.Of(axle.Spring.MotionRatio).SightAt(Math.Min(one, other));
            return double.IsFinite(at) ? at : null;
        }
    }

    /// <summary>Largest shear stress of the wire at full bump, Pa; null where its dimensions, its place or the stop are not known.</summary>
    public double? Stress
    {
        get
        {
            if (axle.Spring.Law is not LinearSpring { Dimensions: { } dimensions } law || FullBump is not { } full || left is null || right is null)
            {
                return null;
            }

            var travel = axle.Spring.MotionRatio.Travel(full);
            return dimensions.StressUnder(Math.Max(law.ForceAt(travel, left.Carried), law.ForceAt(travel, right.Carried)));
        }
    }

    /// <summary>Wheel travel below which a spring is loose, m; minus infinity where nobody can say.</summary>
    public double LooseBelow
    {
        get
        {
            if (left is null || right is null)
            {
                return double.NegativeInfinity;
            }

            var loose = Math.Max(left.LooseBelow, right.LooseBelow);
            var at = double.IsFinite(loose) ? RatioCurve.Of(axle.Spring.MotionRatio).SightAt(loose) : double.NegativeInfinity;
            return double.IsNaN(at) ? double.NegativeInfinity : at;
        }
    }

    /// <summary>
    /// Wheel travel below which a spring is loose, and that at which its wheel hangs on stands, m, both negative, where it is loose there; null where
    /// both stay pressed into their seats, and where that is not known.
    /// </summary>
    /// <remarks>
    /// A loose spring pushes no more: the wheel's weight and the damper's gas alone stretch the rebound stop. So a spring is loose just where they
    /// outweigh the stop at the travel at which it comes loose. Of unlike sides, a bar lets the spring of the other wheel help to stretch it: as
    /// much as that pushes there, and no more. What this cannot settle, and links and unlike sides of a solid axle, are hung out whole.
    /// </remarks>
    public (double Loose, double Hangs)? HangsLoose()
    {
        var loose = LooseBelow;
        if (!double.IsFinite(loose) || axle.ReboundStop is not { } stop)
        {
            return null;
        }

        var hard = -(stop.Clearance.Si + (stop.SolidAfter?.Si ?? double.PositiveInfinity));
        if (loose <= hard)
        {
            return null;
        }

        var isAlike = ReferenceEquals(left, right);
        if (car.Interconnection is not null || (!isAlike && axle.Suspension == SuspensionKind.SolidAxle))
        {
            return Hung();
        }

        var spare = (half * StopForce.At(stop, -loose - stop.Clearance.Si)) - Down(loose);
        if (spare >= 0.0 && (isAlike || axle.AntiRollBar.Si == 0.0 || spare >= OthersPush(loose)))
        {
            return null;
        }

        if (!isAlike && axle.AntiRollBar.Si != 0.0)
        {
            return Hung();
        }

        var hangs = loose;
        for (var turn = 0; turn < 50; turn++)
        {
            hangs = Math.Max(hard, -(stop.Clearance.Si + StopForce.PressedBy(stop, Down(hangs) / half)));
        }

        return hangs < loose - Rounding ? (loose, hangs) : null;
    }

    /// <summary>Damper travel from full droop to full bump, m; null without both stops. A soft stop counts to its touch.</summary>
    public double? DamperTravel => axle.ReboundStop is { } rebound && FullBump is { } bump
        ? axle.Damper.MotionRatio.Travel(bump) - axle.Damper.MotionRatio.Travel(-(rebound.Clearance.Si + (rebound.SolidAfter?.Si ?? 0.0)))
        : null;

    private const double Rounding = 1e-9;

    // What pulls a wheel of a car on stands down where its spring is loose, N.
    private double Down(double travel) => (0.5 * axle.UnsprungMass.Si * Gravity.Standard)
        + (half * axle.Damper.GasForce.Si * axle.Damper.MotionRatio.At(travel));

    // What the spring that stays pressed longer pushes its wheel down with where the other comes loose, N.
    private double OthersPush(double travel)
    {
        var other = left!.LooseBelow < right!.LooseBelow ? left : right;
        var force = axle.Spring.Law.ForceAt(axle.Spring.MotionRatio.Travel(travel), other.Carried);
        return half * Math.Max(0.0, force) * axle.Spring.MotionRatio.At(travel);
    }

    private (double Loose, double Hangs)? Hung()
    {
        var elements = CarElements.Of(car);
        var hanging = HangingWheels.Of(car, elements);
        (double Loose, double Hangs)? worst = null;
        var first = 2 * (int)End;
        for (var i = first; i < first + 2; i++)
        {
            // The spring of a solid axle stands between its wheels.
            var (share, stance) = (elements.Springs[i].Sight.Wheels[i], i == first ? left! : right!);
            var hangs = (share * hanging[i]) + ((1.0 - share) * hanging[i ^ 1]);
            if (stance.LooseBelow - axle.Spring.MotionRatio.Travel(hangs) is > Rounding and var by
                && (worst is not { } known || by > axle.Spring.MotionRatio.Travel(known.Loose) - axle.Spring.MotionRatio.Travel(known.Hangs)))
            {
                worst = (RatioCurve.Of(axle.Spring.MotionRatio).SightAt(stance.LooseBelow), hangs);
            }
        }

        return worst;
    }
}
