using System.Collections.Immutable;

namespace Heaveline.Drives.Events;

/// <summary>The numbers of a bump that was driven over, by the definitions of a computed pass; not finite where there is none.</summary>
public sealed record EventNumbers
{
    /// <summary>Pitch angles are what lies above this, Hz.</summary>
    public const double Slow = MotionCurves.Slow;

    /// <summary>Pitch accelerations are what lies below this, Hz.</summary>
    public const double Fast = MotionCurves.Fast;

    /// <summary>All of them, in the order of a table.</summary>
    public required ImmutableArray<EventNumber> All { get; init; }

    /// <summary>RMS pitch in the first second of the settling, rad.</summary>
    public double Headline => Value("settling-rms-pitch");

    /// <summary>Half-width of that, rad.</summary>
    public double HeadlineHalfWidth => For("settling-rms-pitch")?.HalfWidth ?? double.NaN;

    /// <summary>Greatest pitch rate of the hit, rad/s.</summary>
    public double PeakPitchRate => Value("hit-peak-pitch-rate");

    /// <summary>Greatest pitch acceleration of the hit below 8 Hz, rad/s².</summary>
    public double PeakPitchAcceleration => Value("hit-peak-pitch-acceleration");

    /// <summary>Pitch from 0.8 s after the rear wheels have left until the settling ends, rad·√s.</summary>
    public double LatePitch => Value("settling-late-pitch");

    /// <summary>RMS vertical acceleration in the 3 s from first touch on, where the phone lay or at the seat that was asked for, m/s².</summary>
    public double HeaveRms => Value("rms-vertical");

    /// <summary>Greatest vertical acceleration at the same place, m/s².</summary>
    public double HeavePeak => Value("peak-vertical");

    /// <summary>How many times as much the ends move by pitching as by heaving in the first second of the settling.</summary>
    public double PitchShare => Value("settling-share");

    /// <summary>Swings of pitch after the rear wheels have left that reach a tenth of the peak: two make a cycle.</summary>
    public double Swings => 2.0 * Value("settling-cycles");

    /// <summary>A number by its key; null where there is no such key.</summary>
    /// <param name="key">The key, for a number of a place without the place's part.</param>
    public EventNumber? For(string key) =>
        All.FirstOrDefault(n => n.Measure.Key == key || n.Measure.Key.EndsWith("-" + key, StringComparison.Ordinal));

    private double Value(string key) => For(key)?.Value ?? double.NaN;
}
