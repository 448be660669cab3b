using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>Measures of the settling: pitch after the rear wheels have left the obstacle. None on a road without one.</summary>
public static class SettlingCatalogue
{
    /// <summary>The headline, and what the causes of a settling are ranked by.</summary>
    public static Measure<Pass> RmsPitch { get; } = Of("rms-pitch", "RMS pitch, first second", In.Degrees, 3, PitchSettling.RmsAngleOf,
        "Root mean square pitch angle in the first second after the rear wheels have left: the headline.") with
    {
        Name = "RMS pitch in the first second after the rear has left",
        ShortLabel = "settling: RMS pitch in its first second",
        CaptionLabel = "RMS pitch in the first second of the settling",
        LooksFor = PitchSettling.Second,
        Uses = MeasureUse.Everywhere | MeasureUse.Short,
        Word = "settling",
    };

    /// <summary>The largest swing after the bump.</summary>
    public static Measure<Pass> PeakPitch { get; } = Of("peak-pitch", "greatest pitch, first second", In.Degrees, 2, PitchSettling.PeakAngleOf,
        "Largest pitch angle in the first second after the rear wheels have left.") with
    {
        Name = "peak pitch in the first second after the rear has left",
        LooksFor = PitchSettling.Second,
        Uses = MeasureUse.Table | MeasureUse.BeforeAfter | MeasureUse.Comparison,
    };

    /// <summary>What is left later on.</summary>
    public static Measure<Pass> LatePitch { get; } = Of("late-pitch", "late pitch, after 0.8 s", In.DegreesRootSecond, 3, PitchSettling.LateAngleOf,
        "√∫θ²dt from 0.8 s after the rear wheels have left to the end of the record: what is left of the pitch later on.") with
    {
        Name = "pitch later than 0.8 s after the rear has left",
        Uses = MeasureUse.Everywhere,
        Word = "late",
    };

    /// <summary>All of them, in the order of a table.</summary>
    public static IReadOnlyList<Measure<Pass>> All { get; } =
    [
        RmsPitch, PeakPitch, LatePitch,
        Of("share", "pitch share", In.Plain, 2, PitchSettling.ShareOf,
            "How many times as much the ends move by pitching as by heaving above the road in the first second after the rear wheels have left."),
        Of("time", "time to a tenth of the peak (staircase)", In.Seconds, 2, p => PitchSettling.TimeFromRearOf(p) ?? double.NaN,
            "When the pitch falls below a tenth of its peak for good, from the rear wheels' leaving on; it jumps when a swing just clears the mark."),
        Of("cycles", "cycles", In.Plain, 1, PitchSettling.CyclesOf,
            "Half the number of swings after the rear wheels have left that reach a tenth of the pass's peak."),
    ];

    private static Measure<Pass> Of(string key, string what, ShownUnit unit, int digits, CurveNumber of, string says) =>
        CurvedMeasure.Of($"settling-{key}", $"settling: {what}", unit, digits, p => p.HasObstacle ? of(p) : double.NaN, says) with
        {
            Better = Better.Less,
            NeedsObstacle = true,
        };
}
