using Heaveline.Numerics;
using Heaveline.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Films;

/// <summary>
/// A dying swing beside a parabola in the logarithm of a lamp's brightness: frequency and decay by trial on a grid and then finer, the rest by least
/// squares; intervals by drawing blocks of what is left over.
/// </summary>
internal sealed class LampFit(LampTrack lamp, double? from, CancellationToken stop)
{
    private const double Slowest = 0.5;
    private const double Fastest = 6.0;
    private const double Least = 1.0;
    private const double FewestFlashes = 1.5;
    private const double LeastExplained = 0.5;
    private const double MostSaturated = 0.5;
    private const int Draws = 60;

    // A body with a twentieth of critical damping at 0.8 Hz dies away by 0.25 a second; what does not by half of that is no settling, 1/s.
    private const double LeastDecay = 0.12;

    // By so much the draws' scatter lies below that of planted lamps.
    private const double Widened = 1.25;

    // A lamp that is not seen is taken for so much of its brightest.
    private const double Dark = 0.001;

    private const double Block = 0.2;
    private const ulong Seed = 20_261_130;

    public LampFlash Found()
    {
        if (lamp.Saturated > MostSaturated)
        {
            throw new RefusedValueException(
                "frames in which the lamp saturates the picture",
                $"{Numeral.Of(In.Percent.Of(lamp.Saturated), 0)} %",
                $"at most {Numeral.Of(In.Percent.Of(MostSaturated), 0)} %",
                "Film from farther away, exposure locked and dark.");
        }

        if (lamp.Times.Length != lamp.Brightness.Length)
        {
            throw new RefusedValueException(
                "brightness", $"{lamp.Brightness.Length} numbers", $"{lamp.Times.Length}, one a frame", "Give the brightness of each frame.");
        }

        if (from < lamp.Times[0])
        {
            throw new RefusedValueException(
                "the time after which the lamp is looked at",
                $"{Numeral.Of(from.Value, 2)} s",
                $"{Numeral.Of(lamp.Times[0], 2)} s, the first frame, or later",
                "Give the film's time at which the rear wheels have left the bump.");
        }

        var floor = Dark * lamp.Brightness.Max();
        double[] all = [.. lamp.Brightness.Select(b => Math.Log(Math.Max(b, floor)))];
        var begins = from ?? Begins(all);
        var kept = Enumerable.Range(0, all.Length).Where(i => lamp.Times[i] >= begins).ToArray();
        double[] times = [.. kept.Select(i => lamp.Times[i] - begins)];
        double[] y = [.. kept.Select(i => all[i])];
        if (times.Length < FilmTrack.FewestFrames || times[^1] < Least)
        {
            throw new RefusedValueException(
                "the time that the lamp is seen after the bump",
                times.Length == 0 ? "none" : $"{Numeral.Of(times[^1], 2)} s",
                $"{Numeral.Of(Least, 0)} s at least",
                "Film the car from farther ahead.");
        }

        var best = Searched(times, y);
        var (smooth, swing) = Parts(times, y, best.Frequency, best.Decay);
        var left = y.Zip(smooth.Zip(swing, (a, b) => a + b), (v, m) => v - m).ToArray();
        var (whole, rest) = (y.Zip(smooth, (v, s) => (v - s) * (v - s)).Sum(), left.Sum(r => r * r));
        var explained = whole > 0.0 ? 1.0 - (rest / whole) : 0.0;
        if (explained < LeastExplained || best.Frequency * times[^1] < FewestFlashes)
        {
            throw new RefusedValueException(
                "the rhythm of the lamp",
                $"{Numeral.Of(best.Frequency * times[^1], 1)} flashes that explain {Numeral.Of(In.Percent.Of(explained), 0)} % of its changes",
                $"{Numeral.Of(FewestFlashes, 1)} flashes at least and {Numeral.Of(In.Percent.Of(LeastExplained), 0)} %",
                "Film the lamp for longer after the bump, from the road's edge, exposure locked.");
        }

        if (best.Decay < LeastDecay)
        {
            throw new RefusedValueException(
                "what is left of the flash one flash later",
                $"{Numeral.Of(In.Percent.Of(Math.Exp(-best.Decay / best.Frequency)), 0)} %",
                "a swing that dies away",
                "Look whether the lamp shows the settling after a bump: other lights and a rough road flash on and on.");
        }

        double[] model = [.. smooth.Zip(swing, (a, b) => a + b)];
        var draws = Enumerable.Range(0, Draws).Select(d => Searched(times, Drawn(times, model, left, d), best.Frequency)).ToList();
        double After(double frequency, double decay) => Math.Exp(-decay / frequency);
        var one = FilmNumber.Of(After(best.Frequency, best.Decay), [.. draws.Select(d => After(d.Frequency, d.Decay))]).Wider(Widened);
        return new LampFlash
        {
            Rhythm = FilmNumber.Of(best.Frequency, [.. draws.Select(d => d.Frequency)]).Wider(Widened),
            LeftAfterOne = one with { Low = Math.Max(0.0, one.Low) },
            Explained = explained,
            From = begins,
            Length = times[^1],
            Times = [.. kept.Select(i => lamp.Times[i])],
            Seen = [.. y.Zip(smooth, (v, s) => v - s)],
            Fitted = [.. swing],
        };
    }

    // From one frame to the next a lamp changes most while the car is on the bump: what follows is looked at.
    private double Begins(double[] y)
    {
        var steps = y.Zip(y.Skip(1), (a, b) => Math.Abs(b - a)).ToArray();
        return lamp.Times[Array.IndexOf(steps, steps.Max()) + 1];
    }

    private (double Frequency, double Decay) Searched(double[] times, double[] y, double? about = null)
    {
        var (low, high) = about is { } f ? (0.6 * f, 1.6 * f) : (Math.Max(Slowest, 1.0 / times[^1]), Fastest);
        var best = (Frequency: low, Decay: 1.0, Left: double.PositiveInfinity);
        void Try(double frequency, double decay)
        {
            stop.ThrowIfCancellationRequested();
            var (smooth, swing) = Parts(times, y, frequency, decay);
            var left = 0.0;
            for (var i = 0; i < y.Length; i++)
            {
                left += Math.Pow(y[i] - smooth[i] - swing[i], 2.0);
            }

            best = left < best.Left ? (frequency, decay, left) : best;
        }

        foreach (var decay in new[] { 0.5, 1.5, 3.0, 5.0 })
        {
            for (var frequency = low; frequency <= high; frequency *= 1.06)
            {
                Try(frequency, decay);
            }
        }

        for (var (width, slope) = (0.03, 0.7); width > 5e-4; width *= 0.6, slope *= 0.6)
        {
            var (centre, decay) = (best.Frequency, best.Decay);
            foreach (var k in new[] { -1.0, -0.5, 0.0, 0.5, 1.0 })
            {
                foreach (var j in new[] { -1.0, 0.0, 1.0 })
                {
                    Try(centre * (1.0 + (k * width)), Math.Clamp(decay + (j * slope), 0.0, 12.0));
                }
            }
        }

        return (best.Frequency, best.Decay);
    }

    private static (double[] Smooth, double[] Swing) Parts(double[] times, double[] y, double frequency, double decay)
    {
        var length = times[^1];
        var rows = times.Select(t =>
        {
            var (sin, cos) = Math.SinCos(2.0 * Math.PI * frequency * t);
            var dying = Math.Exp(-decay * t);
            var u = (2.0 * t / length) - 1.0;
            return new[] { 1.0, u, u * u, dying * sin, dying * cos };
        }).ToArray();
        var c = Solved(rows, y);
        return ([.. rows.Select(r => (c[0] * r[0]) + (c[1] * r[1]) + (c[2] * r[2]))], [.. rows.Select(r => (c[3] * r[3]) + (c[4] * r[4]))]);
    }

    // Thousands of trials: the normal equations of five well scaled columns do.
    private static double[] Solved(double[][] rows, double[] y)
    {
        var n = rows[0].Length;
        var (left, right) = (Matrix<double>.Build.Dense(n, n), Vector<double>.Build.Dense(n));
        for (var i = 0; i < rows.Length; i++)
        {
            for (var a = 0; a < n; a++)
            {
                right[a] += rows[i][a] * y[i];
                for (var b = 0; b < n; b++)
                {
                    left[a, b] += rows[i][a] * rows[i][b];
                }
            }
        }

        for (var a = 0; a < n; a++)
        {
            left[a, a] += 1e-9;
        }

        return left.Cholesky().Solve(right).ToArray();
    }

    private static double[] Drawn(double[] times, double[] model, double[] left, int draw)
    {
        var each = Math.Max(2, (int)Math.Round(Block / (times[^1] / (times.Length - 1))));
        var drawn = new double[model.Length];
        for (var (i, k) = (0, 0UL); i < drawn.Length; i += each, k++)
        {
            var at = (int)(SplitMix.Uniform(Seed + (ulong)draw, k) * Math.Max(1, left.Length - each + 1));
            for (var j = i; j < Math.Min(drawn.Length, i + each); j++)
            {
                drawn[j] = model[j] + left[Math.Min(left.Length - 1, at + j - i)];
            }
        }

        return drawn;
    }
}
