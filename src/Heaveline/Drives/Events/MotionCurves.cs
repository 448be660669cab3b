namespace Heaveline.Drives.Events;

/// <summary>What a drive measures of the body, all along: pitch with its integral and derivative, heave with its integral.</summary>
internal sealed class MotionCurves
{
    /// <summary>
    /// Slower motion is no pitch of a bump, Hz: it is taken off the angle, without delay. At 0.25 Hz the settling of 72 planted
    /// passes came out 12 % off on a smooth road and 15 % on one of class B, at 0.1 Hz 2 % and 10 %: what is taken off a bump's own
    /// pitch lies beside what the road's hills add.
    /// </summary>
    public const double Slow = 0.1;

    // The same for the height, Hz.
    private const double SlowHeave = 0.1;

    /// <summary>Pitch acceleration is said below this, Hz: the derivative of a turn rate is noise above.</summary>
    public const double Fast = 8.0;

    // What drifts while acceleration is integrated twice, Hz.
    private const double Drift = 0.05;

    // Noise is what is left above this share of the rate, up to the grid's corner.
    private const double Split = 0.2;
    private const double Corner = 0.4;

    // The tenth of a hundred windows of 1 s of white noise over their mean: of χ² with 33 degrees of freedom.
    private const double Quietest = 0.7;

    private MotionCurves(double[] pitch, double[] rate, double[] acceleration, double[] vertical, double[] heave) =>
        (Pitch, PitchRate, PitchAcceleration, Vertical, Heave) = (pitch, rate, acceleration, vertical, heave);

    /// <summary>Pitch angle above 0.1 Hz, rad; empty without a gyro or forward.</summary>
    public double[] Pitch { get; }

    /// <summary>Pitch angle above half of that, rad: how much of a bump's own pitch goes with the slow part.</summary>
    public double[] PitchWithMore { get; private init; } = [];

    /// <summary>Pitch rate, rad/s.</summary>
    public double[] PitchRate { get; }

    /// <summary>Pitch acceleration below 8 Hz, rad/s².</summary>
    public double[] PitchAcceleration { get; }

    /// <summary>Vertical acceleration in the car's middle, abreast of the phone, m/s².</summary>
    public double[] Vertical { get; }

    /// <summary>Height of that place above 0.1 Hz, m.</summary>
    public double[] Heave { get; }

    /// <summary>Height above twice that, m.</summary>
    public double[] HeaveWithLess { get; private init; } = [];

    /// <summary>Density of the turn rate's noise, (rad/s)²/Hz: what is left in the quietest tenth of the drive above half of the band.</summary>
    public double RateNoise { get; private init; }

    /// <summary>The same of the vertical acceleration, (m/s²)²/Hz.</summary>
    public double VerticalNoise { get; private init; }

    /// <summary>The curves of a drive.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="left">The phone left of the car's middle, m.</param>
    public static MotionCurves Of(Drive drive, double left)
    {
        var n = drive.Vertical.Length;
        var vertical = drive.Vertical.ToArray();
        var hasPitch = !drive.PitchRate.IsEmpty;
        var (pitch, slower) = (new double[hasPitch ? n : 0], new double[hasPitch ? n : 0]);
        var (acceleration, heave, less) = (new double[hasPitch ? n : 0], new double[n], new double[n]);
        foreach (var (first, last) in drive.Covered)
        {
            var part = first..(last + 1);
            if (left != 0.0 && !drive.RollRate.IsEmpty)
            {
                // What lies left goes up when the right side goes down.
                var roll = Derivative(ZeroPhase.Low(drive.RollRate.AsSpan()[part], drive.Rate, Fast), drive.Rate);
                for (var i = first; i <= last; i++)
                {
                    vertical[i] -= left * roll[i - first];
                }
            }

            Sharpen(vertical.AsSpan(part), drive.Rate / drive.Clock.Rate);
            var speed = Integral(Above(vertical.AsSpan(part), drive.Rate, Drift), drive.Rate);
            var place = Integral(Above(speed, drive.Rate, Drift), drive.Rate);
            Above(place, drive.Rate, SlowHeave, 2.0 * SlowHeave, heave.AsSpan(first), less.AsSpan(first));
            if (hasPitch)
            {
                var rate = drive.PitchRate.AsSpan()[part];
                Above(Integral(rate, drive.Rate), drive.Rate, Slow, 0.5 * Slow, pitch.AsSpan(first), slower.AsSpan(first));
                Derivative(ZeroPhase.Low(rate, drive.Rate, Fast), drive.Rate).CopyTo(acceleration, first);
            }
        }

        return new MotionCurves(pitch, [.. drive.PitchRate], acceleration, vertical, heave)
        {
            PitchWithMore = slower,
            HeaveWithLess = less,
            RateNoise = hasPitch ? Noise(drive, drive.PitchRate.AsSpan(), (drive.TurnClock ?? drive.Clock).Rate) : 0.0,
            VerticalNoise = Noise(drive, drive.Vertical.AsSpan(), drive.Clock.Rate),
        };
    }

    /// <summary>Standard deviation of the pitch angle's noise, rad: ∫ S/(2πf)² df from 0.1 Hz on.</summary>
    public double PitchDeviation => Math.Sqrt(RateNoise / (4.0 * Math.PI * Math.PI * Slow));

    /// <summary>Standard deviation of the pitch acceleration's noise, rad/s²: ∫ S·(2πf)² df up to 8 Hz.</summary>
    public double AccelerationDeviation => Math.Sqrt(RateNoise * 4.0 * Math.PI * Math.PI * Fast * Fast * Fast / 3.0);

    /// <summary>Standard deviation of the height's noise, m: ∫ S/(2πf)⁴ df from 0.1 Hz on.</summary>
    public double HeaveDeviation => Math.Sqrt(VerticalNoise / (3.0 * Math.Pow(2.0 * Math.PI, 4.0) * Math.Pow(SlowHeave, 3.0)));

    private static double[] Above(ReadOnlySpan<double> values, double rate, double corner)
    {
        var result = ZeroPhase.Low(values, rate, corner);
        for (var i = 0; i < result.Length; i++)
        {
            result[i] = values[i] - result[i];
        }

        return result;
    }

    // Above two corners.
    private static void Above(ReadOnlySpan<double> values, double rate, double corner, double other, Span<double> result, Span<double> ofOther)
    {
        var (low, lowOfOther) = ZeroPhase.Lows(values, corner, values, other, rate);
        for (var i = 0; i < low.Length; i++)
        {
            (result[i], ofOther[i]) = (values[i] - low[i], values[i] - lowOfOther[i]);
        }
    }

    private static double[] Integral(ReadOnlySpan<double> values, double rate)
    {
        var result = new double[values.Length];
        for (var i = 1; i < result.Length; i++)
        {
            result[i] = result[i - 1] + (0.5 * (values[i - 1] + values[i]) / rate);
        }

        return result;
    }

    /// <summary>The derivative of even samples, of four neighbours, exact for cubics; of two at the ends.</summary>
    internal static double[] Derivative(ReadOnlySpan<double> values, double rate)
    {
        var (n, result) = (values.Length, new double[values.Length]);
        for (var i = 1; i + 1 < n; i++)
        {
            var near = values[i + 1] - values[i - 1];
            result[i] = rate * (i < 2 || i + 2 >= n ? 0.5 * near : ((8.0 * near) - (values[i + 2] - values[i - 2])) / 12.0);
        }

        return result;
    }

    // Straight lines from one sample of the sensor to the next take sinc² off, 1 − (π·f/r)²/3 at first: 3 % at a tenth of the sensor's rate. It
    // is put back by the second difference, which is −(2π·f/rate)².
    private static void Sharpen(Span<double> values, double gridOverSensor)
    {
        if (values.IsEmpty)
        {
            return;
        }

        var (share, before) = (gridOverSensor * gridOverSensor / 12.0, values[0]);
        for (var i = 0; i + 1 < values.Length; i++)
        {
            var now = values[i];
            values[i] -= share * (before - (2.0 * now) + values[i + 1]);
            before = now;
        }
    }

    // Hz of white noise that the grid and the filter below leave: straight lines between samples, the grid's corner, less what the filter takes.
    private static double Left(double sensor, double rate)
    {
        const int lines = 400;
        var (corner, step, sum) = (Math.Tan(Math.PI * Split), Corner * rate / lines, 0.0);
        for (var k = 1; k <= lines; k++)
        {
            var f = k * step;
            var line = Math.Sin(Math.PI * f / sensor) / (Math.PI * f / sensor);
            var low = 1.0 / (1.0 + Math.Pow(Math.Tan(Math.PI * f / rate) / corner, 4.0));
            sum += Math.Pow(line * line * (1.0 - low), 2.0) * step;
        }

        return sum;
    }

    private static double Noise(Drive drive, ReadOnlySpan<double> signal, double sensor)
    {
        var size = Math.Max(8, (int)Math.Round(drive.Rate));
        var powers = new List<double>();
        foreach (var (first, last) in drive.Covered)
        {
            var slow = ZeroPhase.Low(signal[first..(last + 1)], drive.Rate, Split * drive.Rate);
            for (var from = 0; from + size <= slow.Length; from += size)
            {
                var sum = 0.0;
                for (var i = from; i < from + size; i++)
                {
                    var off = signal[first + i] - slow[i];
                    sum += off * off;
                }

                powers.Add(sum / size);
            }
        }

        powers.Sort();
        return powers.Count == 0 ? 0.0 : powers[powers.Count / 10] / (Quietest * Left(sensor, drive.Rate));
    }
}
