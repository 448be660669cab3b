using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Figures;

/// <summary>The few measures that a figure leads with: over an obstacle of hit and settling, on a road without one of the whole pass.</summary>
internal static class Headline
{
    /// <summary>RMS pitch angle.</summary>
    public static Measure<Pass> RmsPitch(Pass pass) => pass.Road.Event is null ? WholePassCatalogue.RmsPitch : SettlingCatalogue.RmsPitch;

    /// <summary>Largest pitch acceleration.</summary>
    public static Measure<Pass> PeakAcceleration(Pass pass) =>
        pass.Road.Event is null ? WholePassCatalogue.PeakPitchAcceleration : HitCatalogue.PeakPitchAcceleration;

    /// <summary>Largest pitch angle.</summary>
    public static Measure<Pass> PeakAngle(Pass pass) => pass.Road.Event is null ? WholePassCatalogue.PeakPitch : HitCatalogue.PeakPitch;

    /// <summary>Largest vertical acceleration in the driver's seat, or in the first when none is called driver; of the body without seats.</summary>
    public static Measure<Pass> PeakVertical(Pass pass) =>
        Driver(pass) is { } seat ? SeatCatalogue.PeakVertical(SeatPlace.Of(seat)) : WholePassCatalogue.PeakHeaveAcceleration;

    /// <summary>The driver's seat, or the first when none is called driver; null without seats.</summary>
    public static string? Driver(Pass pass)
    {
        string[] seats = [.. pass.Model.Car.Seats.Select(seat => seat.Name)];
        return seats.FirstOrDefault(seat => seat.Contains("driver", StringComparison.OrdinalIgnoreCase)) ?? seats.FirstOrDefault();
    }

    /// <summary>What the peaks are of.</summary>
    public static string PeakWords(Pass pass) => pass.Road.Event is null ? "of the whole pass" : "of the hit";

    /// <summary>The number of a pass, SI; null, not a guess, where its stretch of time is not wholly recorded.</summary>
    public static double? Of(Measure<Pass> measure, Pass pass) => IsRecorded(measure, pass) ? measure.Of(pass) : null;

    // A sample either side: the record is a grid of samples.
    private static bool IsRecorded(Measure<Pass> measure, Pass pass) => double.IsFinite(measure.LooksFor)
        ? pass.Count > 0 && pass.RearLeaves + measure.LooksFor <= pass.Time[^1] + pass.SampleStep
        : pass.Outcome == PassOutcome.Completed;
}
