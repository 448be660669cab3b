using System.Globalization;
using Heaveline.Answers;
using Heaveline.Measures.Comfort;

namespace Heaveline.Studies;

/// <summary>What the comfort standard makes of one seat: a row an axis.</summary>
internal static class ComfortTable
{
    public static FactTable Of(PassComfort comfort)
    {
        string[] columns = ["as it is", "weighted", "times k", "share"];
        var table = new FactTable($"Comfort, {comfort.Seat.Name} (ISO 2631-1)", columns);
        foreach (var axis in comfort.Axes)
        {
            table.Add(
                axis.At.Words.Replace(' ', '-'),
                axis.At.Words,
                axis.At.Unit,
                "F3",
                [axis.UnweightedRms, axis.Weighted.Rms, axis.Rms.ForComfort, comfort.ShareOf(axis)]);
        }

        var vertical = comfort.IsSingleEvent ? comfort.Recorded : comfort.SeatVertical.Weighted;
        table
            .Add("total", "vibration total value", "m/s²", "F3", [null, null, comfort.Total.Value, null])
            .Add("vertical-dose", "seat vertical: vibration dose VDV", "m/s^1.75", "F3", [null, vertical.VibrationDose, null, null])
            .Add("vertical-running", "seat vertical: greatest running RMS, MTVV", "m/s²", "F3", [null, vertical.LinearMtvv, null, null])
            .Add("vertical-crest", "seat vertical: crest factor", "–", "F2", [null, comfort.SeatVertical.Weighted.CrestFactor, null, null]);
        if (!comfort.IsSingleEvent)
        {
            table.Add("motion-sickness-dose", "motion sickness dose MSDV", "m/s^1.5", "F3", [null, comfort.MotionSicknessDose, null, null]);
        }

        return table
            .Add("head-fore-aft", "head fore-aft, RMS, no part of the standard", "m/s²", "F3", [comfort.HeadForeAftRms, null, null, null])
            .Add("head-fore-aft-peak", "head fore-aft, peak, no part of the standard", "m/s²", "F3", [comfort.HeadForeAftPeak, null, null, null]);
    }

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
