using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>Travel, stops and tyre load of one wheel over a pass. Travel from the reference state, bump positive.</summary>
public sealed record WheelMeasures
{
    // Both wheels of an axle that bear alike but for rounding are run with the mean of both: a billionth of what a tyre bears standing is no load.
    private const double Borne = 1.0 - 1e-9;

    /// <summary>The wheel in words.</summary>
    public required string Wheel { get; init; }

    /// <summary>The axle it is on.</summary>
    public required AxleEnd End { get; init; }

    /// <summary>Most bump travel, m.</summary>
    public required double Bump { get; init; }

    /// <summary>Most rebound travel, m (negative).</summary>
    public required double Rebound { get; init; }

    /// <summary>Least travel left before the bump stop touches, m; negative when it was pressed by so much; null without a stop.</summary>
    public required double? BumpMargin { get; init; }

    /// <summary>Least travel left before the rebound stop touches, m; null without a stop.</summary>
    public required double? ReboundMargin { get; init; }

    /// <summary>How often the bump stop was touched.</summary>
    public required int BumpContacts { get; init; }

    /// <summary>How often the rebound stop was touched.</summary>
    public required int ReboundContacts { get; init; }

    /// <summary>Tyre load at trim, N.</summary>
    public required double StaticLoad { get; init; }

    /// <summary>Least tyre load, N.</summary>
    public required double LeastLoad { get; init; }

    /// <summary>Greatest tyre load, N.</summary>
    public required double GreatestLoad { get; init; }

    /// <summary>Root mean square change of the tyre load from t = 0 over the static load (–).</summary>
    public required double LoadVariation { get; init; }

    /// <summary>Time without any load on the road, s.</summary>
    public required double LiftOff { get; init; }

    /// <summary>The numbers of every wheel: four, or front and rear of a two-wheeler.</summary>
    public static IReadOnlyList<WheelMeasures> Of(Pass pass) =>
        [.. (pass.Model.Rolls ? new[] { 0, 1, 2, 3 } : [0, 2]).Select(i => Of(pass, i))];

    internal static WheelMeasures Of(Pass pass, int i)
    {
        var curves = new TracedCurves(pass);
        var samples = pass.Travel(i);
        return new WheelMeasures
        {
            Wheel = CornerNames.Of(i, pass.Model.Rolls),
            End = i < 2 ? AxleEnd.Front : AxleEnd.Rear,
            Bump = BumpOf(curves, i),
            Rebound = ReboundOf(curves, i),
            BumpMargin = BumpMarginOf(curves, i),
            ReboundMargin = ReboundMarginOf(curves, i),
            BumpContacts = new Curve(pass, samples).Rises(pass.Model.BumpTouch[i]),
            ReboundContacts = new Curve(pass, samples.Select(s => -s).ToArray()).Rises(-pass.Model.ReboundTouch[i]),
            StaticLoad = StaticLoadOf(pass.Model, i),
            LeastLoad = LeastLoadOf(curves, i),
            GreatestLoad = curves.Range(Load(pass.Model, i), MeasuredCurves.Record).Most,
            LoadVariation = LoadVariationOf(curves, i),
            LiftOff = LiftOffOf(curves, i),
        };
    }

    internal static NotedNumber BumpOf(MeasuredCurves pass, int i) => pass.Range(Travel(pass.Model, i), MeasuredCurves.Record).Most;

    internal static NotedNumber? BumpMarginOf(MeasuredCurves pass, int i) =>
        double.IsFinite(pass.Model.BumpTouch[i]) ? pass.BumpTouch(i) - BumpOf(pass, i) : null;

    internal static NotedNumber? ReboundMarginOf(MeasuredCurves pass, int i) =>
        double.IsFinite(pass.Model.ReboundTouch[i]) ? ReboundOf(pass, i) - pass.ReboundTouch(i) : null;

    /// <summary>Least travel left until the coil spring is loose, as its two wheels at worst make it, m; null where that is not known.</summary>
    internal static NotedNumber? LooseLeftOf(MeasuredCurves pass, int i) =>
        pass.Model.Numbers.Elements is { } elements && elements.Stances[i] is not null && elements.Springs[i] is { Touch: { } at } spring
        && double.IsFinite(at)
            ? (spring.Sight.Wheels[i] * ReboundOf(pass, i)) + ((1.0 - spring.Sight.Wheels[i]) * ReboundOf(pass, i ^ 1)) - at
            : null;

    // A tyre cannot pull: the curve swings below nothing where the wheel lifts off.
    internal static NotedNumber LeastLoadOf(MeasuredCurves pass, int i) =>
        NotedNumber.Max(0.0, pass.Range(Load(pass.Model, i), MeasuredCurves.Record).Least);

    internal static NotedNumber LoadVariationOf(MeasuredCurves pass, int i)
    {
        var still = pass.StandingLoad(i);
        return Window.RmsOfRide(pass, Load(pass.Model, i) with { Less = still }) / still;
    }

    internal static NotedNumber LiftOffOf(MeasuredCurves pass, int i) =>
        pass.Nothing(PassSignal.With(RideSignal.TyreLoad(pass.Model, i), Borne)) * pass.SampleStep;

    internal static double StaticLoadOf(RideModel model, int i) => model.Trim.WheelLoad[i];

    private static NotedNumber ReboundOf(MeasuredCurves pass, int i) => pass.Range(Travel(pass.Model, i), MeasuredCurves.Record).Least;

    private static PassSignal Travel(RideModel model, int i) => PassSignal.WholeOf(RideSignal.Travel(model, i));

    private static PassSignal Load(RideModel model, int i) => PassSignal.WholeOf(RideSignal.TyreLoad(model, i));
}
