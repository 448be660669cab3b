using Heaveline.Answers;
using Heaveline.Drives;
using Heaveline.Measures;
using Heaveline.Measures.Comfort;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The vibration of the floor in a drive, weighted by its effect on people.</summary>
public static class FloorTable
{
    private const string Page = "guide/what-a-log-is-good-for.md";

    private static readonly MotionAxis[] AxesInOrder = [MotionAxis.Z, MotionAxis.X, MotionAxis.Y, MotionAxis.Roll, MotionAxis.Pitch];

    private static readonly Measure<DriveComfort>[] OfDrive =
    [
        Of("floor-feet", "floor: total of the feet", In.MetresPerSecondSquared, 3, c => c.Feet ?? double.NaN,
            "Root sum of squares of the floor's three axes, each weighted by Wk, with the factors 0.25, 0.25 and 0.4 of ISO 2631-1 for the feet."),
        Of("floor-lost", "floor: what is missing above, at most", In.Percent, 1, c => c.Lost,
            "By how much the vertical value would be greater if vibration from the last frequency that is seen to 80 Hz were as "
            + "strong as in the last fifth below it."),
        Of("floor-top", "floor: weighed up to", In.Hertz, 0, c => c.Top, "0.4 of the accelerometer's own rate, at most 80 Hz."),
        Of("floor-length", "floor: weighed for", In.Seconds, 0, c => c.Length,
            "How long the stretches of 5 s and more are together in which the accelerometer has samples and the phone lies "
            + "still in its place, standing included."),
    ];

    /// <summary>All that the tables hold, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. AxesInOrder.SelectMany(a => OfAxis(a)), .. OfDrive];

    /// <summary>The table.</summary>
    /// <param name="comfort">The comfort of a drive.</param>
    public static FactTable Of(DriveComfort comfort)
    {
        ArgumentNullException.ThrowIfNull(comfort);
        var table = new FactTable("Vibration of the floor at the phone (ISO 2631-1)", ["value"]);
        foreach (var axis in AxesInOrder)
        {
            if (comfort.Axes.FirstOrDefault(a => a.Axis == axis) is { } found)
            {
                table.Add(OfAxis(axis), [found]);
            }
        }

        return table.Add(OfDrive, [comfort]);
    }

    /// <summary>The few that matter most.</summary>
    /// <param name="comfort">The comfort of a drive.</param>
    public static FactTable Fewest(DriveComfort comfort) => Of(comfort).Only(new HashSet<string> { "floor-vertical-rms", "floor-vertical-mtvv" });

    /// <summary>That the root mean square hides shocks, where the crest factor says so; blank where it does not.</summary>
    /// <param name="axis">The vibration along an axis.</param>
    internal static string Shocks(ComfortAxis axis) => axis.CrestFactor is > Evaluation.LargestCrestFactor and var crest
        ? InvariantText.Text($" Its crest factor is {crest:F1}, above {Evaluation.LargestCrestFactor:F0}: the RMS alone is not enough then ")
            + "(ISO 2631-1, 6.2), MTVV and VDV belong beside it."
        : "";

    private static IEnumerable<Measure<ComfortAxis>> OfAxis(MotionAxis axis)
    {
        var (word, weighting) = axis switch
        {
            MotionAxis.Z => ("vertical", "Wk"),
            MotionAxis.X => ("fore-aft", "Wd"),
            MotionAxis.Y => ("lateral", "Wd"),
            MotionAxis.Roll => ("roll", "We"),
            _ => ("pitch", "We"),
        };
        var isTurn = axis is MotionAxis.Roll or MotionAxis.Pitch;
        var unit = isTurn ? In.RadiansPerSecondSquared : In.MetresPerSecondSquared;
        var dose = isTurn ? new ShownUnit("rad/s^1.75", "rad/s^1.75", 1.0) : In.MetresPerSecondToTheOneAndThreeQuarters;
        yield return Axis("rms", $"RMS by {weighting}", unit, a => a.Rms, $"Root mean square, weighted by {weighting}, without a factor k.");
        yield return Axis("mtvv", "greatest running RMS, MTVV", unit, a => a.Mtvv, "Greatest root mean square over one second of the same.");
        yield return Axis("vdv", "vibration dose VDV", dose, a => a.Dose, "Vibration dose value of the same.");
        yield return Axis(
            "crest", "crest factor", In.Plain, a => a.CrestFactor ?? double.NaN, "Peak over root mean square of the same.") with
        {
            Format = "F1",
        };

        Measure<ComfortAxis> Axis(string key, string label, ShownUnit of, Func<ComfortAxis, double> value, string says) =>
            new($"floor-{word}-{key}", $"floor {word}: {label}", of, 3, value, says) { Page = Page };
    }

    private static Measure<DriveComfort> Of(string key, string label, ShownUnit unit, int digits, Func<DriveComfort, double> of, string says) =>
        new(key, label, unit, digits, of, says) { Page = Page };
}
