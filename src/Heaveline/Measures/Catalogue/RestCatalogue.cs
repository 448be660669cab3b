using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>Measures of a car at rest under a load: standing, axle by axle, and of its body.</summary>
public static class RestCatalogue
{
    private const string Model = "theory/model.md";
    private const MeasureUse Doubted = MeasureUse.Table | MeasureUse.Doubt;

    /// <summary>How it stands.</summary>
    public static IReadOnlyList<Measure<CarAtRest>> Standing { get; } =
    [
        Of("mass", "mass", In.Kilograms, 0, m => m.Trim.Weight / Gravity.Standard, "Mass on the wheels, the load with it."),
        Of("front-load", "on the front axle", In.KilogramsOfLoad, 0, m => m.Trim.AxleLoad[0],
            "Load of the front wheels on the ground.") with
        {
            Name = "load on the front axle",
            Heading = "front",
            Uses = Doubted,
        },
        Of("rear-load", "on the rear axle", In.KilogramsOfLoad, 0, m => m.Trim.AxleLoad[1],
            "Load of the rear wheels on the ground.") with
        {
            Name = "load on the rear axle",
            Heading = "rear",
            Uses = Doubted,
        },
        Of("sprung-mass", "sprung mass", In.Kilograms, 0, m => m.Body.Mass, "Mass that the springs carry."),
        Of("centre", "its centre behind the front axle", In.Millimetres, 0, m => m.Body.BehindFrontAxle,
            "Where the centre of gravity of the sprung mass lies.") with { Name = "centre of the sprung mass behind the front axle" },
        Of("front-height", "front height, change", In.Millimetres, 1, m => m.Trim.FrontHeight,
            "Height of the body over the front axle against the empty car as it was weighed; "
            + "sinking is negative.") with { Heading = "front height", HeadingDigits = 0 },
        Of("rear-height", "rear height, change", In.Millimetres, 1, m => m.Trim.RearHeight,
            "Height of the body over the rear axle against the empty car as it was weighed; "
            + "sinking is negative.") with { Heading = "rear height", HeadingDigits = 0 },
        Of("attitude", "nose-up attitude", In.Degrees, 2, m => -m.Trim.Pitch,
            "How far the nose points up against the empty car as it was weighed.") with { Heading = "pitch", Uses = Doubted | MeasureUse.Comparison },
        Of(
            "lean",
            "lean (right +, left −)",
            In.Degrees,
            2,
            m => m.Trim.Roll,
            "How far the body leans under an uneven load: to the right is positive, to the left negative.") with
        {
            Nothing = 1e-6,
        },
        Of("front-bump-left", "front travel left to the bump stop", In.Millimetres, 0, m => Left(m.Trim.BumpLeft, 0),
            "Bump travel that is left at the front wheel nearer to its stop; none without a stop.") with { Heading = "front bump" },
        Of("rear-bump-left", "rear travel left to the bump stop", In.Millimetres, 0, m => Left(m.Trim.BumpLeft, 2),
            "Bump travel that is left at the rear wheel nearer to its stop; none without a stop.") with { Heading = "rear bump" },
        Of("front-droop-left", "front droop left to the rebound stop", In.Millimetres, 0, m => Left(m.Trim.ReboundLeft, 0),
            "Droop that is left at the front wheel nearer to its stop; none without a stop."),
        Of("rear-droop-left", "rear droop left to the rebound stop", In.Millimetres, 0, m => Left(m.Trim.ReboundLeft, 2),
            "Droop that is left at the rear wheel nearer to its stop; none without a stop."),
        Of("front-coil-left", "front travel left until the coils touch", In.Millimetres, 0, m => Coil(m, AxleEnd.Front, c => c.BlockLeft),
            "Bump travel that is left until the coils of a front spring touch, metal to metal; none where its lengths are not given.") with
        {
            Better = Better.More,
        },
        Of("rear-coil-left", "rear travel left until the coils touch", In.Millimetres, 0, m => Coil(m, AxleEnd.Rear, c => c.BlockLeft),
            "Bump travel that is left until the coils of a rear spring touch, metal to metal; none where its lengths are not given.") with
        {
            Better = Better.More,
        },
        Of("front-droop-force", "force of a front spring on stands", In.Newtons, 0, m => Coil(m, AxleEnd.Front, c => c.DroopForce),
            "What presses a front spring into its seats on stands, the wheels hanging; 0 where it is loose, none where its lengths are not given."),
        Of("rear-droop-force", "force of a rear spring on stands", In.Newtons, 0, m => Coil(m, AxleEnd.Rear, c => c.DroopForce),
            "What presses a rear spring into its seats on stands, the wheels hanging; 0 where it is loose, none where its lengths are not given."),
        Of("front-friction-band", "front height uncertain by friction, ±", In.Millimetres, 1, m => FrictionBand(m, 0),
            "How far from the stated height friction may hold the front of the car; none where it has no friction."),
        Of("rear-friction-band", "rear height uncertain by friction, ±", In.Millimetres, 1, m => FrictionBand(m, 1),
            "How far from the stated height friction may hold the rear of the car; none where it has no friction."),
        Of("line-pressure", "line pressure", In.Bar, 1, m => m.Trim.LinePressure.Count > 0 ? m.Trim.LinePressure[0] : double.NaN,
            "Pressure of the fluid line of the left side; none without a line."),
        SideEffectCatalogue.LampDrop,
    ];

    /// <summary>The body on both axles.</summary>
    public static IReadOnlyList<Measure<CarAtRest>> Body { get; } =
    [
        Of("dynamic-index", "dynamic index k²/(b·c)", In.Plain, 3, c => c.DynamicIndex,
            "Pitch inertia against the distances of the axles from the centre of gravity.") with { Name = "dynamic index", Uses = Doubted },
        Of("first-mode", "first body mode", In.Hertz, 3, c => c.First.Frequency,
            "Frequency of the body mode that is the slower one of the empty car, followed in small steps of the load.") with
        {
            Name = "frequency of the first body mode",
            Uses = Doubted | MeasureUse.Comparison,
        },
        Of("first-mode-centre", "its centre behind the front axle", In.Metres, 2, c => c.First.NodeBehindFrontAxle,
            "The point about which the body turns in its first mode.") with
        {
            Name = "centre of the first body mode behind the front axle",
            PassesInfinity = true,
        },
        Of("second-mode", "second body mode", In.Hertz, 3, c => c.Second.Frequency,
            "Frequency of the body mode that is the faster one of the empty car, followed in small steps of the load.") with
        {
            Name = "frequency of the second body mode",
            Uses = Doubted | MeasureUse.Comparison,
        },
        Of("second-mode-centre", "its centre behind the front axle", In.Metres, 2, c => c.Second.NodeBehindFrontAxle,
            "The point about which the body turns in its second mode.") with
        {
            Name = "centre of the second body mode behind the front axle",
            PassesInfinity = true,
        },
        Of("roll", "roll", In.Hertz, 3, c => c.Roll?.Frequency,
            "Frequency of the body in roll; none for a two-wheeler.") with { Name = "roll frequency" },
        Of("roll-rate", "roll rate of springs and bars", In.NewtonMetresPerDegree, 0, c => c.Roll?.Stiffness,
            "Moment of springs and bars per roll, on rigid tyres."),
        Of("roll-front-share", "its front share", In.Percent, 0, c => c.Roll?.FrontShare,
            "The front axle's part of the roll rate of springs and bars.") with { Name = "front share of the roll rate" },
    ];

    /// <summary>The groups, in order.</summary>
    public static IReadOnlyList<MeasureGroup<CarAtRest>> Groups { get; } =
        [new("Standing", Standing), new("Axles", AxleCatalogue.All), new("Body", Body)];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Measure<CarAtRest>> All { get; } = [.. Groups.SelectMany(g => g.Measures)];

    /// <summary>Those that are taken up somewhere.</summary>
    public static IReadOnlyList<Measure<CarAtRest>> For(MeasureUse use) => [.. All.Where(m => m.Uses.HasFlag(use))];

    private static Measure<CarAtRest> Of(string key, string label, ShownUnit unit, int digits, Func<RideModel, double> of, string says) =>
        new(key, label, unit, digits, c => of(c.Model), says) { Page = Model };

    private static Measure<CarAtRest> Of(string key, string label, ShownUnit unit, int digits, Func<BodyModes, double?> of, string says) =>
        new(key, label, unit, digits, c => of(c.Modes) ?? double.NaN, says) { Page = Model };

    private static double Coil(RideModel model, AxleEnd end, Func<CoilStanding, double?> of) =>
        CoilStanding.Of(model, end) is { } coil ? of(coil) ?? double.NaN : double.NaN;

    private static double FrictionBand(RideModel model, int axle) => model.Trim.FrictionBand[axle] is > 0.0 and { } band ? band : double.NaN;

    private static double Left(IReadOnlyList<double> left, int corner) => Math.Min(left[corner], left[corner + 1]);
}
