using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>
/// Pitch after the rear wheels have left the obstacle. The headline is the root mean square angle of the first second: it is smooth in the car's
/// numbers. The settling time is a staircase: a lobe that just clears the threshold moves it by half a period, so it stands with the lobes' heights.
/// </summary>
public sealed record PitchSettling
{
    /// <summary>Length of the headline's window, s.</summary>
    public const double Second = 1.0;

    /// <summary>The late part begins this long after the rear wheels have left, s.</summary>
    public const double Late = 0.8;

    /// <summary>Threshold of the settling time as a share of the pass's peak angle (–).</summary>
    public const double Threshold = 0.10;

    /// <summary>The first second after the rear wheels have left.</summary>
    public required Window Window { get; init; }

    /// <summary>Root mean square pitch angle in it, rad: the headline.</summary>
    public required double RmsAngle { get; init; }

    /// <summary>Largest pitch angle in it, rad.</summary>
    public required double PeakAngle { get; init; }

    /// <summary>Root mean square pitch acceleration in it, rad/s².</summary>
    public required double RmsAcceleration { get; init; }

    /// <summary>√∫θ²dt from 0.8 s after the rear wheels have left to the end of the record, rad·s^0.5.</summary>
    public required double LateAngle { get; init; }

    /// <summary>Root mean square of half the wheelbase times the pitch over that of the heave, in the first second (–).</summary>
    public required double Share { get; init; }

    /// <summary>Last time at which the angle passes a tenth of its peak, from the front wheels' first touch, s; null when it does not fall below it within the record.</summary>
    public required double? TimeFromStart { get; init; }

    /// <summary>The same from the moment the rear wheels have left, s.</summary>
    public required double? TimeFromRear { get; init; }

    /// <summary>Turning points of the pitch angle after the rear wheels have left that reach the threshold, rad, signed, in order: two lobes make a cycle.</summary>
    public required IReadOnlyList<double> Lobes { get; init; }

    /// <summary>Cycles until settled: half the number of lobes (–).</summary>
    public double Cycles => 0.5 * Lobes.Count;

    /// <summary>The numbers of a pass over an obstacle.</summary>
    public static PitchSettling Of(Pass pass)
    {
        var pitch = pass.Pitch;
        var window = new Window(pass.RearLeaves, pass.RearLeaves + Second);
        var late = new Window(pass.RearLeaves + Late, double.PositiveInfinity).Of(pass.Time, pitch);
        var limit = Threshold * Signal.Peak(pitch);
        var last = Array.FindLastIndex(pitch, p => Math.Abs(p) > limit);
        // A record that ends while the car still swings has no settling time.
        double? settled = last >= 0 && last < pitch.Length - 1 ? pass.Time[last] : last < 0 ? 0.0 : null;
        var inWindow = window.Of(pass.Time, pitch);
        return new PitchSettling
        {
            Window = window,
            RmsAngle = Signal.Rms(inWindow),
            PeakAngle = Signal.Peak(inWindow),
            RmsAcceleration = Signal.Rms(window.Of(pass.Time, pass.PitchAcceleration)),
            LateAngle = Signal.Rms(late) * Math.Sqrt(late.Length * pass.SampleStep),
            Share = PitchMeasures.Ratio(0.5 * pass.Model.Car.Wheelbase.Si * Signal.Rms(inWindow), Signal.Rms(window.Of(pass.Time, pass.Heave))),
            TimeFromStart = settled,
            TimeFromRear = settled is { } t ? Math.Max(0.0, t - pass.RearLeaves) : null,
            Lobes = Turning(pass, pitch, limit),
        };
    }

    private static List<double> Turning(Pass pass, double[] pitch, double limit)
    {
        var lobes = new List<double>();
        for (var k = 1; k < pitch.Length - 1; k++)
        {
            if (pass.Time[k] > pass.RearLeaves && Math.Abs(pitch[k]) > limit
                && (pitch[k] - pitch[k - 1]) * (pitch[k + 1] - pitch[k]) <= 0.0 && pitch[k] != pitch[k - 1]
                && pitch[k] * (pitch[k] - pitch[k - 1]) > 0.0)
            {
                lobes.Add(pitch[k]);
            }
        }

        return lobes;
    }
}
