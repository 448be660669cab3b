using Heaveline.Cars;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>Measures of each axle of a car at rest, the other axle held.</summary>
public static class AxleCatalogue
{
    private const MeasureUse Followed = MeasureUse.Table | MeasureUse.Doubt | MeasureUse.Comparison;

    /// <summary>Rear over front: what the rule of the trade is about.</summary>
    public static Measure<CarAtRest> FrequencyRatio { get; } =
        new("ratio", "frequency ratio, rear over front", In.Plain, 3, c => c.Frequency(AxleEnd.Rear) / c.Frequency(AxleEnd.Front),
            "Ride frequency of the rear over that of the front, tyres included.")
        {
            Name = "rear/front frequency ratio",
            Heading = "ratio",
            HeadingDigits = 2,
            Page = "theory/model.md",
            Uses = Followed,
        };

    /// <summary>All of them, in the order of a table.</summary>
    public static IReadOnlyList<Measure<CarAtRest>> All { get; } = [.. Of(AxleEnd.Front), .. Of(AxleEnd.Rear), FrequencyRatio];

    /// <summary>Ride frequency with the tyres.</summary>
    public static Measure<CarAtRest> Frequency(AxleEnd end) =>
        At(end, "frequency", "ride frequency", In.Hertz, 3, c => c.Frequency(end),
            "Frequency of the body on the axle's springs and tyres; a fluid line gives way as it does at that frequency.") with
        {
            Heading = $"{CornerNames.Of(end)} f",
            HeadingDigits = 2,
            Uses = Followed,
        };

    /// <summary>Damping ratio of the mean of bump and rebound.</summary>
    public static Measure<CarAtRest> Damping(AxleEnd end) =>
        At(end, "damping", "damping ratio, mean at zero speed", In.Plain, 2, c => c.DampingRatio(end),
            "c/(2√(k·m)) of the mean of the slopes in bump and rebound at zero speed, with the suspension's rate and the sprung mass.") with
        {
            Name = $"{CornerNames.Of(end)} damping ratio",
            Uses = Followed,
        };

    private static Measure<CarAtRest>[] Of(AxleEnd end) =>
    [
        At(end, "wheel-rate", "wheel rate, each", In.NewtonsPerMillimetre, 2, a => a.Rates.WheelRate,
            "Tangent rate of springs and links felt at one wheel."),
        Frequency(end),
        At(end, "frequency-rigid-tyres", "ride frequency on rigid tyres", In.Hertz, 3, a => a.Rates.FrequencyOnRigidTyres,
            "Frequency of the body on the axle's springs alone."),
        At(end, "frequency-shut", "ride frequency, line shut", In.Hertz, 3, a => a.RatesShut?.Frequency,
            "Frequency of the body on the axle's springs and tyres if the fluid of a line could not flow; none without a pipe."),
        At(end, "deflection", "effective static deflection", In.Millimetres, 0, a => a.Rates.Deflection,
            "Sprung load of the axle over its tangent rate."),
        Damping(end),
        At(end, "damping-bump", "damping ratio, bump", In.Plain, 2, a => a.Damping.BumpRatio, "Damping ratio of the slope in bump at zero speed."),
        At(end, "damping-rebound", "damping ratio, rebound", In.Plain, 2, a => a.Damping.ReboundRatio,
            "Damping ratio of the slope in rebound at zero speed."),
        At(end, "hop", "wheel hop", In.Hertz, 1, a => a.Rates.HopFrequency, "Frequency of the wheels between tyres and springs."),
    ];

    private static Measure<CarAtRest> At(AxleEnd end, string key, string what, ShownUnit unit, int digits, Func<AxleRide, double?> of, string says) =>
        At(end, key, what, unit, digits, (CarAtRest c) => of(c.Axle(end)) ?? double.NaN, says);

    private static Measure<CarAtRest> At(AxleEnd end, string key, string what, ShownUnit unit, int digits, Func<CarAtRest, double> of, string says) =>
        new($"{CornerNames.Of(end)}-{key}", $"{CornerNames.Of(end)} {what}", unit, digits, of, says) { Page = "theory/model.md" };
}
