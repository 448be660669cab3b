using System.Numerics;
using System.Runtime.InteropServices;
using Heaveline.Numerics;

namespace Heaveline.Drives.Events;

/// <summary>
/// When a bump began and how long it is, before the car is known: usual cars are driven over usual bumps, and each pair counts by how well it
/// moves as the log does, from every onset that may be.
/// </summary>
/// <remarks>
/// Vertical acceleration and pitch rate in a window of 6.4 s, 0.3 to 8 Hz, each frequency over what is usual there, each channel over its own power;
/// a pair's height is its best one. A pair that leaves the share u of the power unexplained counts by u^(−N/2) with N = 24: far fewer than the 200
/// numbers of a window, since no pair is the car. The weights are
/// flat over the list of cars, of shapes and over onset. Proposals of this program; what it comes to is in docs/validation.md.
/// </remarks>
internal sealed class OnsetTable
{
    /// <summary>Length of the window, s.</summary>
    public const double Window = 6.4;

    // What of it lies before the instant at which the bump was seen, s.
    private const double Before = 3.4;
    private const double Taper = 0.35;
    private const double Top = 8.0;
    private const double Step = 0.02;
    private const double Freedom = 24.0;

    // Instants about the best one that count, either way.
    private const int About = 15;

    private readonly double[] weights;
    private readonly double[] onsets;
    private readonly double[] spreads;
    private readonly double[] heights;

    private OnsetTable(double[] weights, double[] onsets, double[] spreads, double[] heights) =>
        (this.weights, this.onsets, this.spreads, this.heights) = (weights, onsets, spreads, heights);

    /// <summary>The greatest share of the window's power that a pair accounts for.</summary>
    public double Explained { get; private init; }

    /// <summary>Log weight of each car, over all shapes.</summary>
    public double[] OfCars() => Sums(weights.Length / BumpShape.All.Count, (car, shape) => (car * BumpShape.All.Count) + shape, BumpShape.All.Count);

    /// <summary>Log weight of each shape, over all cars.</summary>
    /// <param name="car">Log weight of each car from elsewhere.</param>
    public double[] OfShapes(IReadOnlyList<double> car)
    {
        var shapes = BumpShape.All.Count;
        return Sums(shapes, (shape, c) => (c * shapes) + shape, car.Count, car);
    }

    /// <summary>The height by the cars and shapes that weigh, m.</summary>
    /// <param name="car">Log weight of each car from elsewhere.</param>
    /// <param name="shape">Log weight of each shape from elsewhere.</param>
    public double HeightBy(IReadOnlyList<double> car, IReadOnlyList<double> shape)
    {
        var shapes = BumpShape.All.Count;
        var (top, sum, height) = (double.NegativeInfinity, 0.0, 0.0);
        for (var i = 0; i < weights.Length; i++)
        {
            top = Math.Max(top, weights[i] + car[i / shapes] + shape[i % shapes]);
        }

        for (var i = 0; i < weights.Length; i++)
        {
            var w = Math.Exp(weights[i] + car[i / shapes] + shape[i % shapes] - top);
            (sum, height) = (sum + w, height + (w * heights[i]));
        }

        return height / sum;
    }

    private double[] Sums(int count, Func<int, int, int> place, int among, IReadOnlyList<double>? own = null)
    {
        var result = new double[count];
        for (var i = 0; i < count; i++)
        {
            var top = double.NegativeInfinity;
            for (var j = 0; j < among; j++)
            {
                top = Math.Max(top, weights[place(i, j)] + (own?[j] ?? 0.0));
            }

            var sum = 0.0;
            for (var j = 0; j < among; j++)
            {
                sum += Math.Exp(weights[place(i, j)] + (own?[j] ?? 0.0) - top);
            }

            result[i] = top + Math.Log(sum);
        }

        return result;
    }

    /// <summary>The table of one bump.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="seen">When it was seen, s since the log's start.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="from">The earliest onset, s since the log's start.</param>
    /// <param name="to">The latest.</param>
    /// <param name="cars">The cars' responses.</param>
    public static OnsetTable Of(Drive drive, double seen, double speed, double from, double to, UsualResponses cars)
    {
        var (n, bins) = (cars.Samples, cars.Bins);
        var first = (int)Math.Round((seen - Before - drive.Start) * drive.Rate);
        var start = drive.Time(first);
        var (vertical, rate) = (
            Spectrum(drive.Vertical.AsSpan(), first, cars.Turns, n, drive.Rate, bins),
            Spectrum(drive.PitchRate.AsSpan(), first, cars.Turns, n, drive.Rate, bins));
        // Each channel over what is usual, and both alike.
        var (weightA, weightQ) = (Weights(vertical, cars.VerticalWeights), Weights(rate, cars.RateWeights));
        var power = (weightA[0] > 0.0 ? 1.0 : 0.0) + (weightQ[0] > 0.0 ? 1.0 : 0.0);

        var lags = Math.Max(1, (int)Math.Round((to - from) / Step)) + 1;
        var turns = Turns(cars, from - start, lags);
        var shapes = BumpShape.All.Select(s => cars.Frequencies.Select(f => s.At(2.0 * Math.PI * f / speed) / speed).ToArray()).ToArray();
        Complex[] delay = [.. cars.Frequencies.Select(f => Complex.FromPolarCoordinates(1.0, -2.0 * Math.PI * f * cars.Wheelbase / speed))];

        var count = cars.Count * shapes.Length;
        var (weights, onsets, spreads, heights) = (new double[count], new double[count], new double[count], new double[count]);
        var explained = 0.0;
        var (real, imaginary, log, met) = (new double[bins], new double[bins], new double[lags], new double[lags]);

        // At so many lags, every second one.
        void Met(int from, int number)
        {
            var lag = from;
            for (; number >= 2; (number, lag) = (number - 2, lag + 4))
            {
                var (one, other) = Dots(real, turns.Cosines.AsSpan(lag * bins, 3 * bins));
                var (oneLess, otherLess) = Dots(imaginary, turns.Sines.AsSpan(lag * bins, 3 * bins));
                (met[lag], met[lag + 2]) = (one - oneLess, other - otherLess);
            }

            if (number > 0)
            {
                met[lag] = Dot(real, turns.Cosines.AsSpan(lag * bins, bins)) - Dot(imaginary, turns.Sines.AsSpan(lag * bins, bins));
            }
        }

        var (modelA, modelQ, across) = (new Complex[bins], new Complex[bins], new Complex[bins]);
        for (var car = 0; car < cars.Count; car++)
        {
            var norm = new double[bins];
            for (var k = 0; k < bins; k++)
            {
                var of = cars.At(car, k);
                modelA[k] = of.FrontVertical + (delay[k] * of.RearVertical);
                modelQ[k] = of.FrontRate + (delay[k] * of.RearRate);
                across[k] = (weightA[k] * vertical[k] * Complex.Conjugate(modelA[k])) + (weightQ[k] * rate[k] * Complex.Conjugate(modelQ[k]));
                norm[k] = (weightA[k] * Square(modelA[k])) + (weightQ[k] * Square(modelQ[k]));
            }

            for (var s = 0; s < shapes.Length; s++)
            {
                var shape = shapes[s];
                var own = 0.0;
                for (var k = 0; k < bins; k++)
                {
                    var c = across[k] * Complex.Conjugate(shape[k]);
                    (real[k], imaginary[k]) = (c.Real, c.Imaginary);
                    own += norm[k] * Square(shape[k]);
                }

                var place = (car * shapes.Length) + s;
                // The best instant among every second one; then all about it.
                var (most, at) = (-1.0, 0);
                Met(0, (lags + 1) / 2);
                for (var lag = 0; lag < lags; lag += 2)
                {
                    (most, at) = met[lag] * met[lag] > most ? (met[lag] * met[lag], lag) : (most, at);
                }

                var (least, last) = (Math.Max(0, at - About), Math.Min(lags - 1, at + About));
                var (best, high) = (double.NegativeInfinity, 0.0);
                Met(least + 1 - (least % 2), (last - least + 1 + (least % 2)) / 2);
                for (var lag = least; lag <= last; lag++)
                {
                    log[lag] = -0.5 * Freedom * Math.Log(Math.Max(1.0 - (met[lag] * met[lag] / (own * power)), 1e-6));
                    (best, high) = log[lag] > best ? (log[lag], met[lag] / own) : (best, high);
                }

                explained = Math.Max(explained, 1.0 - Math.Exp(-2.0 * best / Freedom));
                var (sum, mean, square) = (0.0, 0.0, 0.0);
                for (var lag = least; lag <= last; lag++)
                {
                    var w = Math.Exp(log[lag] - best);
                    sum += w;
                    mean += w * lag;
                    square += w * lag * lag;
                }

                mean /= sum;
                weights[place] = best + Math.Log(sum);
                onsets[place] = from + (Step * mean);
                spreads[place] = Step * Math.Sqrt(Math.Max((square / sum) - (mean * mean), 0.0) + (1.0 / 12.0));
                heights[place] = high;
            }
        }

        return new OnsetTable(weights, onsets, spreads, heights) { Explained = explained };
    }

    /// <summary>Onset, length and when the rear wheels leave, each with its standard deviation, and the height.</summary>
    /// <param name="car">Log weight of each car from elsewhere.</param>
    /// <param name="shape">Log weight of each shape from elsewhere.</param>
    /// <param name="speed">Speed, m/s.</param>
    public (double Onset, double OnsetSpread, double Length, double LengthSpread, double Through, double ThroughSpread, double Height) Means(
        ReadOnlySpan<double> car, ReadOnlySpan<double> shape, double speed)
    {
        var shapes = BumpShape.All;
        var top = double.NegativeInfinity;
        for (var i = 0; i < weights.Length; i++)
        {
            top = Math.Max(top, weights[i] + car[i / shapes.Count] + shape[i % shapes.Count]);
        }

        var (sum, height) = (0.0, 0.0);
        Span<double> mean = stackalloc double[3];
        Span<double> square = stackalloc double[3];
        for (var i = 0; i < weights.Length; i++)
        {
            var w = Math.Exp(weights[i] + car[i / shapes.Count] + shape[i % shapes.Count] - top);
            var length = shapes[i % shapes.Count].Length;
            var own = spreads[i] * spreads[i];
            ReadOnlySpan<double> values = [onsets[i] - onsets[0], length, onsets[i] - onsets[0] + (length / speed)];
            ReadOnlySpan<double> owns = [own, 0.0, own];
            for (var j = 0; j < 3; j++)
            {
                mean[j] += w * values[j];
                square[j] += w * ((values[j] * values[j]) + owns[j]);
            }

            sum += w;
            height += w * heights[i];
        }

        for (var j = 0; j < 3; j++)
        {
            mean[j] /= sum;
            square[j] = Math.Sqrt(Math.Max((square[j] / sum) - (mean[j] * mean[j]), 0.0));
        }

        return (onsets[0] + mean[0], square[0], mean[1], square[1], onsets[0] + mean[2], square[2], height / sum);
    }

    private static (double[] Cosines, double[] Sines) Turns(UsualResponses cars, double from, int lags)
    {
        var bins = cars.Bins;
        var (cosines, sines) = (new double[lags * bins], new double[lags * bins]);
        for (var k = 0; k < bins; k++)
        {
            var omega = 2.0 * Math.PI * cars.Frequencies[k];
            for (var lag = 0; lag < lags; lag++)
            {
                var (sine, cosine) = Math.SinCos(omega * (from + (lag * Step)));
                (cosines[(lag * bins) + k], sines[(lag * bins) + k]) = (cosine, sine);
            }
        }

        return (cosines, sines);
    }

    private static double Square(Complex value) => (value.Real * value.Real) + (value.Imaginary * value.Imaginary);

    private static double[] Weights(Complex[] of, double[] usual)
    {
        var sum = of.Index().Sum(y => usual[y.Index] * Square(y.Item));
        return [.. usual.Select(w => sum > 0.0 ? w / sum : 0.0)];
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var wideA = MemoryMarshal.Cast<double, Vector<double>>(a);
        var wideB = MemoryMarshal.Cast<double, Vector<double>>(b);
        var wide = Vector<double>.Zero;
        for (var i = 0; i < wideA.Length; i++)
        {
            wide += wideA[i] * wideB[i];
        }

        var sum = Vector.Sum(wide);
        for (var i = wideA.Length * Vector<double>.Count; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }

    // The same with the first and the third of three rows.
    private static (double First, double Third) Dots(ReadOnlySpan<double> a, ReadOnlySpan<double> rows)
    {
        var (n, width) = (a.Length, Vector<double>.Count);
        ref var left = ref MemoryMarshal.GetReference(a);
        ref var right = ref MemoryMarshal.GetReference(rows);
        var (first, third) = (Vector<double>.Zero, Vector<double>.Zero);
        var i = 0;
        for (; i + width <= n; i += width)
        {
            var value = Vector.LoadUnsafe(ref left, (nuint)i);
            first += value * Vector.LoadUnsafe(ref right, (nuint)i);
            third += value * Vector.LoadUnsafe(ref right, (nuint)((2 * n) + i));
        }

        var (sum, other) = (Vector.Sum(first), Vector.Sum(third));
        for (; i < n; i++)
        {
            sum += a[i] * rows[i];
            other += a[i] * rows[(2 * n) + i];
        }

        return (sum, other);
    }

    // Mean out, ends rounded off; the transform as an integral over time.
    internal static Complex[] Spectrum(ReadOnlySpan<double> signal, int first, FourierTurns turns, int n, double rate, int bins)
    {
        var result = new Complex[bins];
        if (signal.IsEmpty)
        {
            return result;
        }

        var part = new double[n];
        var mean = 0.0;
        for (var i = 0; i < n; i++)
        {
            part[i] = first + i >= 0 && first + i < signal.Length ? signal[first + i] : 0.0;
            mean += part[i] / n;
        }

        for (var i = 0; i < n; i++)
        {
            var end = Math.Min(i, n - 1 - i) / (Taper * rate);
            part[i] = (part[i] - mean) * (end < 1.0 ? 0.5 - (0.5 * Math.Cos(Math.PI * end)) : 1.0);
        }

        RealFourier.Of(part, turns, CancellationToken.None).AsSpan(UsualResponses.FirstBin, bins).CopyTo(result);
        for (var k = 0; k < bins; k++)
        {
            result[k] /= rate;
        }

        return result;
    }

    /// <summary>How many bins a rate has room for, and how many samples a window.</summary>
    internal static (int Samples, int Bins) SizeOf(double rate)
    {
        var n = 2 * (int)Math.Round(0.5 * Window * rate);
        var top = (int)Math.Floor(Math.Min(Top, 0.4 * rate) * n / rate);
        return (n, top - UsualResponses.FirstBin + 1);
    }
}
