using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>
/// What no cure may do: lift a wheel that stayed on the road, or for longer; press a stop that stayed clear, or deeper; make the other of hit and
/// settling much worse; bring a spring loose; take an axle's damping out of what is common; and what <see cref="CureStance"/> tells of it standing.
/// </summary>
/// <param name="rolls">Whether the car has left and right wheels.</param>
/// <param name="aims">The two numbers that are told of a crossing, that which is to be less first.</param>
internal sealed class CureGuard(bool rolls, IReadOnlyList<Measure<Pass>> aims)
{
    /// <summary>Least damping ratio that a cure may leave an axle with where it had more (–). Common practice, no source.</summary>
    public const double LeastDamping = 0.20;

    /// <summary>Greatest damping ratio that a cure may leave an axle with where it had less (–). Common practice, no source.</summary>
    public const double MostDamping = 0.50;

    /// <summary>By how much of itself the other of hit and settling may get worse (–). Judged by eye, no source.</summary>
    public const double Spoilt = 0.10;

    private static readonly string[] Margins = ["bump-margin", "rebound-margin"];

    private const string LiftOff = "lift-off";

    private const string Loose = "loose-left";

    /// <summary>What is measured of each crossing: the aims, then at each axle its stops and its wheels' time off the road.</summary>
    public IReadOnlyList<Measure<Pass>> Measured { get; } =
    [
        .. aims,
        .. from place in WheelPlace.Axles(rolls)
           from measure in WheelCatalogue.Of(place)
           where Margins.Append(LiftOff).Any(key => measure.Key == $"{place.Key}-{key}")
           select measure,
        .. WheelPlace.Axles(rolls).Select(LooseLeft),
    ];

    /// <summary>For a road and what is to be less over it.</summary>
    public static CureGuard Of(RideModel model, Road road, CureAim aim)
    {
        var both = PassCatalogue.PitchOver(road);
        return new CureGuard(model.Rolls, aim == CureAim.Settling ? both : [both[1], both[0]]);
    }

    /// <summary>What a crossing does that the one before did not do as much, and that no cure may do.</summary>
    /// <param name="before">The numbers of <see cref="Measured"/> before, SI.</param>
    /// <param name="after">The same after.</param>
    public CureBreach Breach(IReadOnlyList<double> before, IReadOnlyList<double> after) => Found(before, after).Breach;

    /// <summary>The same with what it is of: the stop, the springs or the wheels of an axle; null where it is of none.</summary>
    /// <param name="before">The numbers of <see cref="Measured"/> before, SI.</param>
    /// <param name="after">The same after.</param>
    public (CureBreach Breach, string? Of) Found(IReadOnlyList<double> before, IReadOnlyList<double> after)
    {
        if (!double.IsFinite(before[0]) || !double.IsFinite(after[0]))
        {
            return (CureBreach.NoCrossing, null);
        }

        foreach (var (breach, of, _) in Worse(before, after))
        {
            return (breach, of);
        }

        return (after[1] > (1.0 + Spoilt) * before[1] ? CureBreach.Spoilt : CureBreach.None, null);
    }

    /// <summary>
    /// Wheels that leave the road for longer, stops that are pressed deeper and springs that come loose, each with what it is of and its place in
    /// <see cref="Measured"/>.
    /// </summary>
    /// <param name="before">The numbers of <see cref="Measured"/> before, SI.</param>
    /// <param name="after">The same after.</param>
    public IEnumerable<(CureBreach Breach, string Of, int Measure)> Worse(IReadOnlyList<double> before, IReadOnlyList<double> after)
    {
        for (var k = aims.Count; k < Measured.Count; k++)
        {
            // As printed, so that nobody is told of a price that no table shows.
            var measure = Measured[k];
            var (was, now) = (measure.Printed(before[k]), measure.Printed(after[k]));
            var isLift = measure.Key.EndsWith(LiftOff, StringComparison.Ordinal);
            if (isLift ? now > was : now < Math.Min(was, 0.0))
            {
                var end = measure.Key[..measure.Key.IndexOf('-', StringComparison.Ordinal)];
                yield return isLift ? (CureBreach.Lift, $"a {end} wheel", k)
                    : measure.Key.EndsWith(Loose, StringComparison.Ordinal) ? (CureBreach.Loose, $"a {end} spring", k)
                    : (CureBreach.Stop, $"the {end} {(measure.Key.EndsWith(Margins[1], StringComparison.Ordinal) ? "rebound" : "bump")} stop", k);
            }
        }
    }

    /// <summary>The same of two recorded crossings.</summary>
    /// <param name="before">The crossing before.</param>
    /// <param name="after">The crossing after.</param>
    public CureBreach Breach(Pass before, Pass after) =>
        Breach([.. Measured.Select(measure => measure.Of(before))], [.. Measured.Select(measure => measure.Of(after))]);

    /// <summary>The first axle whose damping is not common, and farther from it than it was; null where there is none.</summary>
    /// <param name="before">The car standing before.</param>
    /// <param name="after">After.</param>
    internal static AxleEnd? Undamped(CarAtRest before, CarAtRest after) => new AxleEnd?[] { AxleEnd.Front, AxleEnd.Rear }
        .FirstOrDefault(end => !IsDamped(before, after, end!.Value));

    /// <summary>Whether an axle is damped as is common, or no farther from it than it was.</summary>
    /// <param name="before">The car standing before.</param>
    /// <param name="after">After.</param>
    /// <param name="end">The axle.</param>
    internal static bool IsDamped(CarAtRest before, CarAtRest after, AxleEnd end) => IsCommon(before.DampingRatio(end), after.DampingRatio(end));

    private static Measure<Pass> LooseLeft(WheelPlace place) => CurvedMeasure.Of(
        $"{place.Key}-{Loose}", $"{place.Name}: left until a spring is loose", In.Millimetres, 1,
        p => place.Worst(Better.More, i => WheelMeasures.LooseLeftOf(p, i) ?? double.NaN),
        "Least travel left until a coil spring of known lengths comes loose from its seats.") with
    { Better = Better.More };

    private static bool IsCommon(double was, double now) =>
        !(now < Math.Min(LeastDamping, was * (1.0 - 1e-9)) || now > Math.Max(MostDamping, was * (1.0 + 1e-9)));
}
