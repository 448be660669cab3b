using System.Globalization;
using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Measures.Comfort;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What the comfort standard makes of one seat: a row an axis.</summary>
internal static class ComfortTable
{
    private const string Page = "theory/comfort.md";

    // A column each: as it is, weighted, times k.
    private static readonly Measure<PassComfort>[] AsItIs =
    [
        Of("head-fore-aft", "head fore-aft, RMS, no part of the standard", In.MetresPerSecondSquared, 3, c => c.HeadForeAftRms,
            "Root mean square fore-aft acceleration at the head, as it is."),
        Of("head-fore-aft-peak", "head fore-aft, peak, no part of the standard", In.MetresPerSecondSquared, 3, c => c.HeadForeAftPeak,
            "Greatest fore-aft acceleration at the head, as it is."),
    ];

    private static readonly Measure<PassComfort>[] Weighted =
    [
        Of("vertical-dose", "seat vertical: vibration dose VDV", In.MetresPerSecondToTheOneAndThreeQuarters, 3, c => Vertical(c).VibrationDose,
            "Vibration dose value of the seat's vertical acceleration weighted by Wk."),
        Of("vertical-running", "seat vertical: greatest running RMS, MTVV", In.MetresPerSecondSquared, 3, c => Vertical(c).LinearMtvv,
            "Greatest root mean square over one second of the seat's vertical acceleration weighted by Wk."),
        Of("vertical-crest", "seat vertical: crest factor", In.Plain, 2, c => c.SeatVertical.Weighted.CrestFactor,
            "Peak over root mean square of the seat's vertical acceleration weighted by Wk."),
        Of("motion-sickness-dose", "motion sickness dose MSDV", In.MetresPerSecondToTheOneAndAHalf, 3,
            c => c.IsSingleEvent ? null : c.MotionSicknessDose,
            "Dose of the seat's vertical acceleration weighted by Wf; none for a single obstacle."),
    ];

    private static readonly Measure<PassComfort> Total = Of("total", "vibration total value", In.MetresPerSecondSquared, 3, c => c.Total.Value,
        "Root sum of squares of the weighted axes, each times its factor k.");

    /// <summary>All that the table holds, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. PointAxis.All.Select(At), Total, .. Weighted, .. AsItIs];

    public static FactTable Of(PassComfort comfort)
    {
        string[] columns = ["as it is", "weighted", "times k", "share"];
        var table = new FactTable($"Comfort, {comfort.Seat.Name} (ISO 2631-1)", columns);
        foreach (var axis in comfort.Axes)
        {
            var measure = At(axis.At);
            table.Add(
                measure.Key,
                measure.Label,
                measure.Unit.Symbol,
                measure.Format,
                [axis.UnweightedRms, axis.Weighted.Rms, axis.Rms.ForComfort, comfort.ShareOf(axis)]);
        }

        Row(2, Total);
        foreach (var measure in Weighted)
        {
            Row(1, measure);
        }

        foreach (var measure in AsItIs)
        {
            Row(0, measure);
        }

        return table;

        void Row(int column, Measure<PassComfort> measure) =>
            table.Add(measure, Enumerable.Range(0, columns.Length).Select(i => i == column ? measure.Of(comfort) : double.NaN));
    }

    private static Measure<AxisComfort> At(PointAxis at) => new(
        at.Words.Replace(' ', '-'),
        at.Words,
        at.IsRotation ? In.RadiansPerSecondSquared : In.MetresPerSecondSquared,
        3,
        axis => axis.Rms.ForComfort,
        "Root mean square acceleration of this axis: as it is, weighted, and times its factor k.")
    { Page = Page };

    private static Measure<PassComfort> Of(string key, string label, ShownUnit unit, int digits, Func<PassComfort, double?> of, string says) =>
        new(key, label, unit, digits, c => of(c) ?? double.NaN, says) { Page = Page };

    private static WeightedAcceleration Vertical(PassComfort comfort) => comfort.IsSingleEvent ? comfort.Recorded : comfort.SeatVertical.Weighted;

    /// <summary>Which evaluation applies, and for a motion that lasts the likely reactions.</summary>
    public static IEnumerable<Sentence> Words(PassComfort comfort)
    {
        if (comfort.IsSingleEvent)
        {
            yield return new("comfort-evaluation", Event(comfort));
        }
        else
        {
            yield return new("comfort-evaluation", $"Seat vertical: {comfort.SeatVertical.Evaluation.Words}");
            yield return new("comfort-reactions", comfort.Reactions.Count == 0
                ? "The standard names no reaction to so small a value."
                : $"As a guide (annex C, public transport, ranges overlap): {string.Join("; ", comfort.Reactions.Select(r => r.Words))}.");
        }

        if (comfort.Total.Absent.Count > 0)
        {
            yield return new("comfort-total", $"Not in the total: {string.Join(", ", comfort.Total.Absent.Select(a => a.Words))}.");
        }
    }

    // A root mean square of one bump is what its window makes of it.
    private static string Event(PassComfort comfort) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"One obstacle is a single event: judge it by the seat's VDV, {comfort.Recorded.VibrationDose:F2} m/s^1.75, and MTVV, "
            + $"{comfort.Recorded.LinearMtvv:F2} m/s². The root mean squares are of the {comfort.Window.Length:F0} s from the front wheels' first ")
        + "touch on, the same at every speed; annex C's words and motion sickness are for motion that lasts and are not named."
        + (comfort.HoldsHit ? "" : " So slowly the obstacle lasts longer than that: the root mean squares do not hold all of it.");
}
