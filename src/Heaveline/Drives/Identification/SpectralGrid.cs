using Heaveline.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>
/// The frequencies at which windows of one length are compared, and how the window smears a spectrum: its own kernel over a grid twice as fine.
/// Smearing the model as the window smears the data is the debiased form of Whittle's likelihood (Sykulski and others, 2019; from memory).
/// </summary>
internal sealed class SpectralGrid
{
    // Cosine ends of a window, s.
    private const double Edge = 0.35;

    // The lowest frequency read, Hz.
    private const double Lowest = 0.4;

    // Steps of the fine grid beyond either end of the band, and either side of a line that the kernel reaches.
    private const int Beyond = 12;
    private const int Reach = 24;

    private readonly double[] taper;
    private readonly int first;
    private readonly int[] smearFrom;
    private readonly double[][] smear;

    /// <summary>The grid of windows.</summary>
    /// <param name="count">Samples of a window.</param>
    /// <param name="rate">Samples a second, Hz.</param>
    /// <param name="band">The highest frequency, Hz.</param>
    public SpectralGrid(int count, double rate, double band)
    {
        (Count, Rate) = (count, rate);
        taper = Taper(count, rate);
        Scale = taper.Sum(w => w * w) / rate / 2.0;
        Bandwidth = count * taper.Sum(w => w * w * w * w) / (taper.Sum(w => w * w) * taper.Sum(w => w * w));
        var step = rate / count;
        first = Math.Max(1, (int)Math.Ceiling((Lowest / step) - 1e-9));
        var last = Math.Max(first, (int)Math.Floor((Math.Min(band, 0.45 * rate) / step) + 1e-9));
        Frequencies = [.. Enumerable.Range(first, last - first + 1).Select(k => k * step)];
        var fineFirst = Math.Max(1, (2 * first) - Beyond);
        var fineLast = (2 * last) + Beyond;
        Fine = [.. Enumerable.Range(fineFirst, fineLast - fineFirst + 1).Select(k => 0.5 * k * step)];
        Pick = [.. Enumerable.Range(first, last - first + 1).Select(k => (2 * k) - fineFirst)];
        var kernel = Kernel();
        smearFrom = new int[Frequencies.Length];
        smear = new double[Frequencies.Length][];
        for (var k = 0; k < Frequencies.Length; k++)
        {
            var (from, to) = (Math.Max(0, Pick[k] - Reach), Math.Min(Fine.Length - 1, Pick[k] + Reach));
            var weights = Enumerable.Range(from, to - from + 1).Select(m => kernel[Math.Abs(m - Pick[k])]).ToArray();
            var sum = weights.Sum();
            (smearFrom[k], smear[k]) = (from, [.. weights.Select(w => w / sum)]);
        }
    }

    /// <summary>Samples of a window.</summary>
    public int Count { get; }

    /// <summary>Samples a second, Hz.</summary>
    public double Rate { get; }

    /// <summary>Mean square of a transformed stationary process over its one-sided density, s.</summary>
    public double Scale { get; }

    /// <summary>By how much the mean power of many lines scatters more than if they were independent, as variances; 1 without a taper.</summary>
    public double Bandwidth { get; }

    /// <summary>Frequencies of the data, Hz.</summary>
    public double[] Frequencies { get; }

    /// <summary>Frequencies at which spectra are worked out before they are smeared, Hz.</summary>
    public double[] Fine { get; }

    /// <summary>Where each frequency of the data stands in the fine grid.</summary>
    public int[] Pick { get; }

    /// <summary>Transforms samples to the instant of the guessed onset: mean off, ends tapered, Σ w·y·e^(−iω(t − before))/rate.</summary>
    /// <param name="values">Samples.</param>
    /// <param name="before">From the first sample to the onset, s.</param>
    /// <param name="real">Receives the real parts.</param>
    /// <param name="imaginary">Receives the imaginary parts.</param>
    public void Transform(ReadOnlySpan<double> values, double before, Span<double> real, Span<double> imaginary)
    {
        var mean = 0.0;
        foreach (var value in values)
        {
            mean += value / Count;
        }

        for (var k = 0; k < Frequencies.Length; k++)
        {
            var line = first + k;
            var (re, im) = (0.0, 0.0);
            for (var j = 0; j < Count; j++)
            {
                var (sine, cosine) = Math.SinCos(2.0 * Math.PI * (line * (long)j % Count) / Count);
                var y = (values[j] - mean) * taper[j];
                re += y * cosine;
                im -= y * sine;
            }

            var (s, c) = Math.SinCos(2.0 * Math.PI * Frequencies[k] * before);
            (real[k], imaginary[k]) = (((re * c) - (im * s)) / Rate, ((re * s) + (im * c)) / Rate);
        }
    }

    /// <summary>Smears rows of the fine grid into rows at the frequencies of the data.</summary>
    /// <param name="fine">Shape (fine, width).</param>
    /// <param name="width">Numbers a row.</param>
    /// <param name="to">Shape (frequencies, width); overwritten.</param>
    public void Smear(ReadOnlySpan<double> fine, int width, Span<double> to)
    {
        for (var k = 0; k < Frequencies.Length; k++)
        {
            var row = to.Slice(k * width, width);
            row.Clear();
            for (var m = 0; m < smear[k].Length; m++)
            {
                Dot.Add(smear[k][m], fine.Slice((smearFrom[k] + m) * width, width), row);
            }
        }
    }

    private static double[] Taper(int count, double rate)
    {
        var ends = Math.Min((int)(Edge * rate), count / 4);
        var result = new double[count];
        for (var j = 0; j < count; j++)
        {
            var from = Math.Min(j, count - 1 - j);
            result[j] = from < ends ? 0.5 - (0.5 * Math.Cos(Math.PI * (from + 0.5) / ends)) : 1.0;
        }

        return result;
    }

    // |W|² at multiples of half a line.
    private double[] Kernel()
    {
        var result = new double[Reach + 1];
        for (var d = 0; d <= Reach; d++)
        {
            var (re, im) = (0.0, 0.0);
            for (var j = 0; j < Count; j++)
            {
                var (sine, cosine) = Math.SinCos(Math.PI * d * j / Count);
                re += taper[j] * cosine;
                im -= taper[j] * sine;
            }

            result[d] = (re * re) + (im * im);
        }

        return result;
    }
}
