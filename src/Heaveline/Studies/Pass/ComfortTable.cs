using Heaveline.Answers;
using Heaveline.Measures.Comfort;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What the comfort standard makes of one seat: a row an axis.</summary>
internal static class ComfortTable
{
    public static FactTable Of(PassComfort comfort)
    {
        string[] columns = ["as it is", "weighted", "times k", "share, %"];
        var table = new FactTable($"Comfort, {comfort.Seat.Name} (ISO 2631-1)", columns);
        foreach (var axis in comfort.Axes)
        {
            table.Add(
                axis.At.Words.Replace(' ', '-'),
                axis.At.Words,
                axis.At.Unit,
                "F3",
                [axis.UnweightedRms, axis.Weighted.Rms, axis.Rms.ForComfort, In.Percent.Of(comfort.ShareOf(axis))]);
        }

        var vertical = comfort.SeatVertical.Weighted;
        return table
            .Add("total", "vibration total value", "m/s²", "F3", [null, null, comfort.Total.Value, null])
            .Add(
                "vertical-dose",
                "seat vertical: dose VDV, MTVV, crest factor",
                "SI",
                "F3",
                [vertical.VibrationDose, vertical.LinearMtvv, vertical.CrestFactor, null])
            .Add("motion-sickness-dose", "motion sickness dose MSDV", "m/s^1.5", "F3", [comfort.MotionSicknessDose, null, null, null])
            .Add(
                "head-fore-aft",
                "head fore-aft, RMS and peak, no part of the standard",
                "m/s²",
                "F3",
                [comfort.HeadForeAftRms, comfort.HeadForeAftPeak, null, null]);
    }

    /// <summary>Which evaluation applies, the likely reactions, and what is quoted from memory.</summary>
    public static IEnumerable<Sentence> Words(PassComfort comfort)
    {
        yield return new("comfort-evaluation", $"Seat vertical: {comfort.SeatVertical.Evaluation.Words}");
        var reactions = string.Join("; ", comfort.Reactions.Select(r => r.FromMemory ? $"{r.Words} (range from memory)" : r.Words));
        yield return new("comfort-reactions", comfort.Reactions.Count == 0
            ? "The standard names no reaction to so small a value."
            : $"As a guide (annex C, public transport, ranges overlap): {reactions}.");
        var absent = comfort.Total.Absent.Select(a => a.Words).ToList();
        yield return new("comfort-total", (absent.Count > 0 ? $"Not in the total: {string.Join(", ", absent)}. " : "")
            + "The rotations' factors and which weighting each axis takes are quoted from memory.");
    }
}
