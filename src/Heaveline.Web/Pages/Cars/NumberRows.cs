using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;

namespace Heaveline.Web.Pages.Cars;

/// <summary>The numbers beside the form, in three parts.</summary>
internal static class NumberRows
{
    private const double PerG = 1.0 / Gravity.Standard;
    private const double Degrees = 180.0 / Math.PI;

    /// <summary>How it stands.</summary>
    public static IReadOnlyList<NumberRow> Standing { get; } =
    [
        new("mass", "mass", "kg", 0, 1.0, RestOutput.Mass),
        new("front-load", "on the front axle", "kg", 0, PerG, StaticOutput.FrontLoad),
        new("rear-load", "on the rear axle", "kg", 0, PerG, StaticOutput.RearLoad),
        new("front-height", "front height, change", "mm", 1, 1e3, RestOutput.Height(AxleEnd.Front)),
        new("rear-height", "rear height, change", "mm", 1, 1e3, RestOutput.Height(AxleEnd.Rear)),
        new("attitude", "nose-up attitude", "°", 2, Degrees, RestOutput.NoseUp),
        new("front-bump-left", "front travel left to the bump stop", "mm", 0, 1e3, RestOutput.BumpLeft(AxleEnd.Front)),
        new("rear-bump-left", "rear travel left to the bump stop", "mm", 0, 1e3, RestOutput.BumpLeft(AxleEnd.Rear)),
        new("front-droop-left", "front droop left", "mm", 0, 1e3, RestOutput.DroopLeft(AxleEnd.Front)),
        new("rear-droop-left", "rear droop left", "mm", 0, 1e3, RestOutput.DroopLeft(AxleEnd.Rear)),
        new("line-pressure", "line pressure", "bar", 1, 1e-5, RestOutput.LinePressure),
        new("lamp-drop", "dipped beam drop", "%", 2, 100.0, RestOutput.LampDrop),
    ];

    /// <summary>Each axle by itself.</summary>
    public static IReadOnlyList<NumberRow> Axles { get; } =
    [
        .. Axle("front", AxleEnd.Front),
        .. Axle("rear", AxleEnd.Rear),
        new("ratio", "rear over front ride frequency", "–", 3, 1.0, StaticOutput.FrequencyRatio),
    ];

    /// <summary>The body on both.</summary>
    public static IReadOnlyList<NumberRow> Body { get; } =
    [
        new("dynamic-index", "dynamic index k²/(b·c)", "–", 3, 1.0, StaticOutput.DynamicIndex),
        new("bounce", "bounce", "Hz", 2, 1.0, StaticOutput.BounceFrequency),
        new("bounce-centre", "its centre behind the front axle", "m", 2, 1.0, RestOutput.BounceCentre),
        new("pitch", "pitch", "Hz", 2, 1.0, StaticOutput.PitchFrequency),
        new("pitch-centre", "its centre behind the front axle", "m", 2, 1.0, RestOutput.PitchCentre),
        new("roll", "roll", "Hz", 2, 1.0, RestOutput.RollFrequency),
        new("suited-speed", "speed that this ratio suits", "km/h", 0, 3.6, RestOutput.SuitedSpeed),
    ];

    /// <summary>The parts under their headings.</summary>
    public static IReadOnlyList<(string Heading, IReadOnlyList<NumberRow> Rows)> Parts { get; } = [("Standing", Standing), ("The axles", Axles), ("The body", Body)];

    private static IEnumerable<NumberRow> Axle(string name, AxleEnd end) =>
    [
        new($"{name}-wheel-rate", $"{name} wheel rate, each", "N/mm", 2, 1e-3, RestOutput.WheelRate(end)),
        new($"{name}-frequency", $"{name} ride frequency", "Hz", 2, 1.0, RestOutput.Frequency(end)),
        new($"{name}-damping", $"{name} damping ratio", "–", 2, 1.0, RestOutput.Damping(end)),
        new($"{name}-damping-bump", $"{name} damping ratio, bump", "–", 2, 1.0, RestOutput.BumpDamping(end)),
        new($"{name}-damping-rebound", $"{name} damping ratio, rebound", "–", 2, 1.0, RestOutput.ReboundDamping(end)),
        new($"{name}-hop", $"{name} wheel hop", "Hz", 1, 1.0, RestOutput.Hop(end)),
    ];
}
