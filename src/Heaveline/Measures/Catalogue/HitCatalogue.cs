using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>Measures of the hit: from the front wheels' first touch until the rear wheels have left. None on a road without an obstacle.</summary>
public static class HitCatalogue
{
    /// <summary>The largest angle.</summary>
    public static Measure<Pass> PeakPitch { get; } = Of("peak-pitch", "greatest pitch", In.Degrees, 2, PitchHit.PeakAngleOf,
        "Largest pitch angle until the rear wheels have left.") with
    {
        Name = "peak pitch angle of the hit",
        Uses = MeasureUse.Table | MeasureUse.BeforeAfter,
        Word = "hit-angle",
    };

    /// <summary>What the causes of a hit are ranked by.</summary>
    public static Measure<Pass> PeakPitchAcceleration { get; } = Of("peak-pitch-acceleration", "greatest pitch acceleration",
        In.RadiansPerSecondSquared, 2, PitchHit.PeakAccelerationOf, "Largest pitch acceleration until the rear wheels have left.") with
    {
        Name = "peak pitch acceleration of the hit",
        ShortLabel = "hit: peak pitch acceleration",
        Uses = MeasureUse.Everywhere | MeasureUse.Short,
        Word = "hit",
    };

    /// <summary>All of them, in the order of a table.</summary>
    public static IReadOnlyList<Measure<Pass>> All { get; } =
    [
        PeakPitch,
        Of("peak-pitch-rate", "greatest pitch rate", In.DegreesPerSecond, 1, PitchHit.PeakRateOf,
            "Largest pitch rate until the rear wheels have left."),
        PeakPitchAcceleration,
    ];

    private static Measure<Pass> Of(string key, string what, ShownUnit unit, int digits, CurveNumber of, string says) =>
        CurvedMeasure.Of($"hit-{key}", $"hit: {what}", unit, digits, p => p.HasObstacle ? of(p) : double.NaN, says) with
        {
            Better = Better.Less,
            NeedsObstacle = true,
            LooksFor = 0.0,
        };
}
