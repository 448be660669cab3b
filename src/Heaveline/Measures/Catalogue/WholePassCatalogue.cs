using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>
/// Measures of a pass from t = 0 until the rear wheels have left the road: the headlines of a road without an obstacle. Over an obstacle they run to
/// the record's end, which hangs on the speed, so that a root mean square of it says nothing beside another: those are not taken up there.
/// </summary>
public static class WholePassCatalogue
{
    /// <summary>The headline of a road without an obstacle.</summary>
    public static Measure<Pass> RmsPitch { get; } = Of("rms-pitch", "RMS pitch", In.Degrees, 3, PitchMeasures.RmsAngleOf,
        "Root mean square pitch angle from t = 0 until the rear wheels have left the road.") with
    {
        Name = "RMS pitch",
        CaptionLabel = "RMS pitch over the whole pass",
        Uses = MeasureUse.None,
        UsesWithoutObstacle = MeasureUse.Everywhere | MeasureUse.Short,
    };

    /// <summary>What the causes are ranked by on a road without an obstacle, beside the angle.</summary>
    public static Measure<Pass> RmsPitchAcceleration { get; } = Of("rms-pitch-acceleration", "RMS pitch acceleration", In.RadiansPerSecondSquared, 3,
        PitchMeasures.RmsAccelerationOf, "Root mean square pitch acceleration from t = 0 until the rear wheels have left the road.") with
    {
        Name = "RMS pitch acceleration",
        Uses = MeasureUse.None,
        UsesWithoutObstacle = MeasureUse.Everywhere | MeasureUse.Short,
    };

    /// <summary>What is left for those who do not mind pitch, on a road without an obstacle.</summary>
    public static Measure<Pass> RmsHeaveAcceleration { get; } = Of("rms-heave-acceleration", "RMS heave acceleration", In.MetresPerSecondSquared, 2,
        PassMeasures.RmsHeaveAccelerationOf,
        "Root mean square vertical acceleration of the centre of gravity from t = 0 until the rear wheels have left the road.") with
    {
        Name = "RMS heave acceleration",
        Uses = MeasureUse.None,
        UsesWithoutObstacle = MeasureUse.Table | MeasureUse.BeforeAfter | MeasureUse.Comparison | MeasureUse.Short,
    };

    /// <summary>The same over an obstacle, in a time that is the same at every speed.</summary>
    public static Measure<Pass> RmsHeaveOverObstacle { get; } = CurvedMeasure.Of(
        "obstacle-rms-heave-acceleration", "RMS heave acceleration, 3 s from first touch",
        In.MetresPerSecondSquared, 2, p => p.Road.Event is null ? double.NaN : PassMeasures.RmsHeaveAccelerationOf(p),
        "Root mean square vertical acceleration of the centre of gravity in the three seconds from the front wheels' first touch of the obstacle on; "
        + "none when a slow hit lasts longer.") with
    {
        Better = Better.Less,
        NeedsObstacle = true,
        LooksFor = Window.OverObstacle,
        Uses = MeasureUse.Table | MeasureUse.BeforeAfter | MeasureUse.Comparison | MeasureUse.Short,
    };

    /// <summary>The largest angle, for captions.</summary>
    public static Measure<Pass> PeakPitch { get; } = Of("peak-pitch", "greatest pitch", In.Degrees, 2, PitchMeasures.PeakAngleOf,
        "Largest pitch angle of the whole pass.") with
    {
        Name = "peak pitch angle of the whole pass",
        Uses = MeasureUse.None,
    };

    /// <summary>The largest pitch acceleration, for captions.</summary>
    public static Measure<Pass> PeakPitchAcceleration { get; } = Of("peak-pitch-acceleration", "greatest pitch acceleration",
        In.RadiansPerSecondSquared, 2, PitchMeasures.PeakAccelerationOf, "Largest pitch acceleration of the whole pass.") with
    {
        Name = "peak pitch acceleration of the whole pass",
        Uses = MeasureUse.None,
    };

    /// <summary>The largest vertical acceleration of a car without seats, for figures.</summary>
    public static Measure<Pass> PeakHeaveAcceleration { get; } = Of("peak-heave-acceleration", "greatest heave acceleration",
        In.MetresPerSecondSquared, 2, PassMeasures.PeakHeaveAccelerationOf, "Largest vertical acceleration of the centre of gravity.") with
    {
        ShortLabel = "body: largest vertical acceleration",
        Uses = MeasureUse.None,
    };

    /// <summary>All of them, in the order of a table.</summary>
    public static IReadOnlyList<Measure<Pass>> All { get; } =
    [
        RmsPitch, PeakPitch, RmsPitchAcceleration, PeakPitchAcceleration,
        Of("pitch-share", "pitch share", In.Plain, 2, PitchMeasures.ShareOf,
            "How many times as much the ends move by pitching as by heaving from t = 0 until the rear wheels have left the road.") with
        {
            Uses = MeasureUse.None,
            UsesWithoutObstacle = MeasureUse.Table,
        },
        RmsHeaveAcceleration, RmsHeaveOverObstacle, PeakHeaveAcceleration,
        CurvedMeasure.Of("peak-roll", "greatest roll", In.Degrees, 2, PassMeasures.PeakRollOf, "Largest roll angle of the pass.") with
        {
            Better = Better.Less,
            Nothing = 1e-9,
        },
    ];

    private static Measure<Pass> Of(string key, string what, ShownUnit unit, int digits, CurveNumber of, string says) =>
        CurvedMeasure.Of(key, $"whole road: {what}", unit, digits, of, says) with { Better = Better.Less };
}
