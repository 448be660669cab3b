using System.Numerics;

namespace Heaveline.Drives;

/// <summary>
/// What forward is looked for in: the drive's slow horizontal acceleration and turning, about ten samples a second, and the speed beside.
/// </summary>
/// <remarks>
/// The speed is filtered once, over more than the drive on either side; a lag only shifts it. Its product with the yaw rate is filtered for
/// every lag.
/// </remarks>
internal sealed class SlowMotion
{
    /// <summary>The greatest lag of the speed, s.</summary>
    public const double MostLag = 2.0;

    /// <summary>Into so many equal stretches a drive is cut.</summary>
    public const int Blocks = 16;

    private const double Low = 0.03;
    private const double High = 0.35;
    private const double Sparse = 0.5;
    private readonly List<Part> parts = [];
    private readonly double rate;
    private readonly int every;

    private SlowMotion(double rate) => (this.rate, every) = (rate, Math.Max(1, (int)Math.Round(Sparse * rate)));

    /// <summary>How long it is, s.</summary>
    public double Length => parts.Sum(p => p.Along.Length) / rate;

    /// <summary>Reads a drive.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="first">Acceleration along the first horizontal axis, m/s².</param>
    /// <param name="second">Along the second, to the left of the first.</param>
    /// <param name="yaw">Turn rate about up, rad/s.</param>
    /// <param name="speed">The speed; null where there is none.</param>
    public static SlowMotion Of(EvenGrid grid, double[] first, double[] second, double[] yaw, TimedTrack? speed)
    {
        var thin = Math.Max(1, (int)Math.Round(grid.Rate / 10.0));
        var result = new SlowMotion(grid.Rate / thin);
        foreach (var (from, to) in grid.Covered)
        {
            var (least, most) = speed is null ? (grid.Time(from), grid.Time(to)) : (speed.Times[0] + MostLag, speed.Times[^1] - MostLag);
            var a = Math.Max(from, (int)Math.Ceiling((least - grid.Start) * grid.Rate));
            var b = Math.Min(to, (int)Math.Floor((most - grid.Start) * grid.Rate));
            if (b - a > 10.0 * grid.Rate)
            {
                const double corner = 2.0;
                var n = b - a + 1;
                var (slow1, slow2) = ZeroPhase.Lows(first.AsSpan(a, n), corner, second.AsSpan(a, n), corner, grid.Rate);
                var slowYaw = ZeroPhase.Low(yaw.AsSpan(a, n), grid.Rate, corner);
                result.Add(grid.Time(a), [.. new[] { slow1, slow2, slowYaw }.Select(x => Thinned(x, thin))], speed);
            }
        }

        return result;
    }

    /// <summary>Sums over equal stretches of the drive: any draw of stretches is then a sum of sums.</summary>
    /// <param name="lag">By how much the speed comes late, s; null: turning alone, at a speed of 1 m/s.</param>
    public SlowSums[] Gathered(double? lag)
    {
        var shift = (lag ?? 0.0) * rate;
        var all = parts.Sum(p => ((p.Along.Length - 1) / every) + 1);
        var blocks = new SlowSums[Blocks];
        var n = 0;
        foreach (var part in parts)
        {
            var turning = new double[part.Along.Length];
            for (var i = 0; i < turning.Length; i++)
            {
                turning[i] = (lag is null ? 1.0 : part.At(part.Speed, i, shift)) * part.Yaw[i];
            }

            turning = ZeroPhase.Band(turning, rate, Low, High);
            for (var i = 0; i < turning.Length; i += every)
            {
                ref var block = ref blocks[(int)((long)n++ * Blocks / all)];
                block = block.With(part.Along[i], lag is null ? 0.0 : part.At(part.Growth, i, shift), turning[i]);
            }
        }

        return blocks;
    }

    /// <summary>Where each stretch begins, s.</summary>
    public double[] Starts()
    {
        var all = parts.Sum(p => ((p.Along.Length - 1) / every) + 1);
        var starts = new double[Blocks];
        Array.Fill(starts, double.NaN);
        var n = 0;
        foreach (var part in parts)
        {
            for (var i = 0; i < part.Along.Length; i += every)
            {
                ref var start = ref starts[(int)((long)n++ * Blocks / all)];
                start = double.IsNaN(start) ? part.Start + (i / rate) : start;
            }
        }

        return starts;
    }

    private static double[] Thinned(double[] values, int every) =>
        [.. Enumerable.Range(0, ((values.Length - 1) / every) + 1).Select(i => values[i * every])];

    private void Add(double start, double[][] slow, TimedTrack? speed)
    {
        var (h1, h2) = (ZeroPhase.Band(slow[0], rate, Low, High), ZeroPhase.Band(slow[1], rate, Low, High));
        Complex[] along = [.. h1.Zip(h2, (x, y) => new Complex(x, y))];
        var over = (int)Math.Ceiling(MostLag * rate) + 1;
        var v = speed is null ? [] : ZeroPhase.Low(Speeds(speed, start - (over / rate), along.Length + (2 * over)), rate, 0.5);
        var growth = new double[v.Length];
        for (var i = 0; i < v.Length; i++)
        {
            var (before, after) = (Math.Max(i - 1, 0), Math.Min(i + 1, v.Length - 1));
            growth[i] = (v[after] - v[before]) * rate / (after - before);
        }

        parts.Add(new Part(start, along, slow[2], v, growth.Length == 0 ? [] : ZeroPhase.Band(growth, rate, Low, High), over));
    }

    private double[] Speeds(TimedTrack speed, double start, int count)
    {
        var result = new double[count];
        var k = 0;
        for (var i = 0; i < count; i++)
        {
            var t = start + (i / rate);
            while (k + 2 < speed.Times.Length && speed.Times[k + 1] <= t)
            {
                k++;
            }

            var share = Math.Clamp((t - speed.Times[k]) / (speed.Times[k + 1] - speed.Times[k]), 0.0, 1.0);
            result[i] = speed.Values[0][k] + (share * (speed.Values[0][k + 1] - speed.Values[0][k]));
        }

        return result;
    }

    // Speed and growth begin so many samples before the acceleration.
    private sealed record Part(double Start, Complex[] Along, double[] Yaw, double[] Speed, double[] Growth, int Over)
    {
        public double At(double[] values, int i, double shift)
        {
            var place = Math.Clamp(i + Over + shift, 0.0, values.Length - 1.0);
            var k = Math.Min((int)place, values.Length - 2);
            return values[k] + ((place - k) * (values[k + 1] - values[k]));
        }
    }
}
