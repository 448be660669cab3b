using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>Measures of what springs, bars, links and loads do besides riding, standing still.</summary>
public static class SideEffectCatalogue
{
    private const MeasureUse Few = MeasureUse.Table | MeasureUse.Short;

    /// <summary>The key of the roll in a bend per g.</summary>
    internal const string RollPerG = "roll-per-g";

    private const string SideEffectsPage = "theory/side-effects.md";

    /// <summary>Where the dipped beam points.</summary>
    public static Measure<CarAtRest> LampDrop { get; } =
        Of("lamp-drop", "dipped beam drop", In.Percent, 2, e => e.Headlamp?.Drop,
            "Drop of the dipped beam's upper edge per distance, standing; below 0 it points above the horizon.") with
        {
            Heading = "lamp",
            Better = Better.More,
            Uses = Few,
        };

    /// <summary>What has no place, roll and pitch.</summary>
    public static IReadOnlyList<Measure<CarAtRest>> Attitude { get; } =
    [
        Of("roll-stiffness", "roll stiffness, tyres included", In.NewtonMetresPerDegree, 0, e => e.Roll?.WithTyres,
            "Moment of springs, bars and tyres per roll; none for a two-wheeler.") with { Uses = Few },
        Of("roll-stiffness-front-share", "its front share", In.Percent, 1, e => e.Roll?.FrontShareWithTyres,
            "The front axle's part of the roll stiffness: more of it moves the balance towards understeer.") with
        {
            Name = "front share of the roll stiffness",
            Uses = Few,
        },
        Of("roll-bar-share", "share of the anti-roll bars", In.Percent, 1, e => e.Roll?.BarShare,
            "The anti-roll bars' part of the roll stiffness on rigid tyres."),
        Of(RollPerG, "roll in a bend, per g", In.Degrees, 2, e => e.Roll?.AnglePerG,
            "Roll of the body at one g of steady lateral acceleration.") with { Better = Better.Less, Uses = Few },
        Of("braking-pitch-per-g", "nose-down pitch in braking, per g", In.Degrees, 2, e => e.Braking.Angle,
            "Pitch of the body in braking over the braking, the slope at rest; it holds until the first stop is met.") with
        {
            Better = Better.Less,
            Uses = Few,
        },
        Of("braking-first-stop", "first stop met in braking", In.StandardGravities, 2, e => e.Braking.FirstStop?.Acceleration,
            "Braking at which the first bump or rebound stop is met, by the slope at rest; none where it is above 1 g.") with
        {
            Name = "braking at which the first stop is met",
            NoneAbove = In.StandardGravities.ToSi(1.0),
            Better = Better.More,
        },
        Of("driving-pitch-per-g", "nose-up pitch in accelerating, per g", In.Degrees, 2, e => -e.Driving.Angle,
            "Pitch of the body in driving over the acceleration, the slope at rest; it holds until the first stop is met.") with
        {
            Better = Better.Less,
            Uses = Few,
        },
        Of("driving-first-stop", "first stop met in accelerating", In.StandardGravities, 2, e => e.Driving.FirstStop?.Acceleration,
            "Acceleration at which the first bump or rebound stop is met, by the slope at rest; none where it is above 1 g.") with
        {
            Name = "acceleration at which the first stop is met",
            NoneAbove = In.StandardGravities.ToSi(1.0),
            Better = Better.More,
        },
    ];

    /// <summary>The dipped beam; none without a lamp.</summary>
    public static IReadOnlyList<Measure<CarAtRest>> Lamp { get; } =
    [
        LampDrop,
        Of("lamp-road", "cut-off meets the road at", In.Metres, 0, e => e.Headlamp?.MeetsRoad,
            "Distance at which the beam's upper edge meets a level road; none when it points up."),
        Of("lamp-50", "cut-off height at 50 m", In.Metres, 2, e => e.Headlamp?.CutOffHeight(50.0), "Height of the beam's upper edge 50 m ahead."),
    ];

    /// <summary>All of them at some wheels, in the order of a table.</summary>
    /// <param name="wheels">The wheels, one each.</param>
    public static IReadOnlyList<Measure<CarAtRest>> Of(IEnumerable<WheelPlace> wheels) => [.. Attitude, .. wheels.SelectMany(Of), .. Lamp];

    /// <summary>The measures of one wheel.</summary>
    public static IReadOnlyList<Measure<CarAtRest>> Of(WheelPlace place) =>
    [
        At(place, "height", "height, change from empty", In.Millimetres, 1, w => w.HeightChange,
            "Height of the body at the wheel against the empty car; sinking is negative."),
        At(place, "sag", "sag under the load", In.Millimetres, 1, w => w.Sag, "Travel that the load uses up."),
        At(place, "bump-left", "travel left to the bump stop", In.Millimetres, 0, w => w.BumpLeft,
            "Bump travel until the stop touches; none without a stop.") with { Better = Better.More, Uses = Few },
        At(place, "droop-left", "droop left", In.Millimetres, 0, w => w.DroopLeft, "Droop until the rebound stop touches; none without a stop.") with
        {
            Better = Better.More,
        },
        At(place, "stress", "spring stress standing", In.Megapascals, 0, w => w.Stress?.AtTrim,
            "Largest stress of the spring, standing; none where its wire, leaves or bar are not known.") with { Better = Better.Less },
        At(place, "stress-bump", "spring stress at full bump", In.Megapascals, 0, w => w.Stress?.AtFullBump,
            "Largest stress of the spring when both wheels of the axle meet their bump stops' hard end.") with { Better = Better.Less },
    ];

    private static Measure<CarAtRest> Of(string key, string label, ShownUnit unit, int digits, Func<SideEffects, double?> of, string says) =>
        new(key, label, unit, digits, c => of(c.SideEffects) ?? double.NaN, says) { Page = SideEffectsPage };

    // A two-wheeler's keys say that they are of a wheel: its axles have the same names.
    private static Measure<CarAtRest> At(
        WheelPlace place, string key, string what, ShownUnit unit, int digits, Func<WheelStanding, double?> of, string says)
    {
        var (wheels, at) = place.HasSides ? (4, place.Corners[0]) : (2, place.Corners[0] / 2);
        var prefix = place.HasSides ? place.Key : $"{place.Key}-wheel";
        return Of($"{prefix}-{key}", $"{place.Name}: {what}", unit, digits, e => e.Wheels.Count == wheels ? of(e.Wheels[at]) : null, says);
    }
}
