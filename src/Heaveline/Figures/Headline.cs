using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Figures;

/// <summary>
/// The few numbers a figure leads with. Over an obstacle: RMS pitch of the settling's first second, and the hit's peak pitch acceleration. On a road
/// without one: both over the whole pass. A number whose stretch of time is not wholly recorded is null, not a guess.
/// </summary>
internal static class Headline
{
    /// <summary>RMS pitch angle, rad.</summary>
    public static double? RmsPitch(Pass pass, PassMeasures measures) => measures.Pitch.Settling is { } settling
        ? Recorded(pass, settling.Window.To) ? settling.RmsAngle : null
        : pass.Outcome == PassOutcome.Completed ? measures.Pitch.RmsAngle : null;

    /// <summary>Peak pitch acceleration, rad/s².</summary>
    public static double? PeakAcceleration(Pass pass, PassMeasures measures) => measures.Pitch.Hit is { } hit
        ? Recorded(pass, hit.Window.To) ? hit.PeakAcceleration : null
        : pass.Outcome == PassOutcome.Completed ? measures.Pitch.PeakAcceleration : null;

    /// <summary>Peak pitch angle, rad.</summary>
    public static double? PeakAngle(Pass pass, PassMeasures measures) => measures.Pitch.Hit is { } hit
        ? Recorded(pass, hit.Window.To) ? hit.PeakAngle : null
        : pass.Outcome == PassOutcome.Completed ? measures.Pitch.PeakAngle : null;

    /// <summary>The driver's seat, or the first when none is called driver; null without seats.</summary>
    public static SeatMeasures? Driver(PassMeasures measures) =>
        measures.Seats.FirstOrDefault(seat => seat.Seat.Contains("driver", StringComparison.OrdinalIgnoreCase))
        ?? (measures.Seats.Count > 0 ? measures.Seats[0] : null);

    /// <summary>What the RMS pitch is of.</summary>
    public static string RmsPitchWords(Pass pass) =>
        pass.Road.Event is null ? "RMS pitch over the whole pass" : "RMS pitch in the first second of the settling";

    /// <summary>What the peaks are of.</summary>
    public static string PeakWords(Pass pass) => pass.Road.Event is null ? "of the whole pass" : "of the hit";

    // A sample either side: the record is a grid of samples.
    private static bool Recorded(Pass pass, double until) => pass.Count > 0 && until <= pass.Time[^1] + pass.SampleStep;
}
