using System.Globalization;
using Heaveline.Numerics;
using Heaveline.Quantities;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Heaveline.Roads;

/// <summary>
/// The straight line through a profile's smoothed spectrum, ln G_d = ln G_d(n0) − w·ln(n/n0), with its class and how sure it is
/// [ISO 8608:2016, the "fitted" spectrum]. Each band counts by its degrees of freedom: the logarithm of a χ²(ν)/ν number has the mean
/// ψ(ν/2) − ln(ν/2), which is taken off, and the variance ψ′(ν/2), whose inverse is its weight. Where the bands scatter about the line more than
/// chance allows, the road has no straight spectrum, and the intervals are widened by that factor.
/// </summary>
public sealed record SpectrumFit
{
    private const int FewestBands = 4;

    // The mean of n^−w over a wide band is not its value at the centre unless w = 2; each pass takes the line's own w.
    private const int Passes = 6;

    private SpectrumFit(
        double logDensity, double logDeviation, double waviness, double wavinessDeviation, double scatter, int bands, SpatialBand band)
    {
        (LogDensity, LogDeviation, Waviness, WavinessDeviation, Scatter, Bands, Band) = (
            logDensity, logDeviation, waviness, wavinessDeviation, scatter, bands, band);
    }

    /// <summary>G_d(n0), density at 0.1 cycles/m.</summary>
    public Amount<RoadDensity> Density => new(Math.Exp(LogDensity));

    /// <summary>w, how steeply the density falls (–).</summary>
    public double Waviness { get; }

    /// <summary>Standard deviation of w (–).</summary>
    public double WavinessDeviation { get; }

    /// <summary>Standard deviation of ln G_d(n0) (–), nearly a relative one while it is small.</summary>
    public double LogDeviation { get; }

    /// <summary>Root mean square distance of the bands from the line over what chance alone gives (–): near 1 for a straight spectrum.</summary>
    public double Scatter { get; }

    /// <summary>Number of bands in the fit, at least 4.</summary>
    public int Bands { get; }

    /// <summary>Spatial frequencies of the fit.</summary>
    public SpatialBand Band { get; }

    /// <summary>The class that <see cref="Density"/> falls into; see <see cref="ProbabilityOf"/> for how sure that is.</summary>
    public RoadClass Class => RoadClass.Of(Density);

    /// <summary>The line as a spectrum over its own band, for w between 0.5 and 5.</summary>
    public RoadSpectrum Line => new() { Density = Density, Waviness = Waviness, Band = Band };

    private double LogDensity { get; }

    /// <summary>The line through the bands between two spatial frequencies.</summary>
    /// <param name="spectrum">Spectrum of a profile.</param>
    /// <param name="range">Bands wholly inside it count; 0.011 to 2.83 cycles/m if left out.</param>
    /// <exception cref="RefusedValueException">
    /// No band holds 0.1 cycles/m, so the profile is too short (or too coarse) for a class, or fewer than 4 bands are left, or the profile is level.
    /// </exception>
    public static SpectrumFit Of(ProfileSpectrum spectrum, SpatialBand? range = null)
    {
        var used = Used(spectrum, range ?? SpatialBand.Iso8608);
        var bands = used.Select(i => spectrum.Bands[i]).ToArray();
        var distance = bands.Select(b => Math.Log(b.Centre / RoadSpectrum.Reference)).ToArray();
        var weight = bands.Select(b => 1.0 / Trigamma.Of(0.5 * b.DegreesOfFreedom)).ToArray();
        var logs = bands
            .Select(b => Math.Log(b.Density) - SpecialFunctions.DiGamma(0.5 * b.DegreesOfFreedom) + Math.Log(0.5 * b.DegreesOfFreedom)).ToArray();

        var (s, sx, sxx) = (weight.Sum(), Sum(weight, distance), Sum(weight, distance, distance));
        var determinant = (s * sxx) - (sx * sx);
        var (level, w) = (0.0, 2.0);
        var levelled = logs;
        for (var pass = 0; pass < Passes; pass++)
        {
            levelled = [.. logs.Select((log, i) => log - Curvature(bands[i], w))];
            var (sy, sxy) = (Sum(weight, levelled), Sum(weight, distance, levelled));
            (level, w) = (((sxx * sy) - (sx * sxy)) / determinant, -((s * sxy) - (sx * sy)) / determinant);
        }

        // Neighbouring bands share bins: the estimates' variances come from the whole covariance, not from the weights alone.
        var (levelVariance, wavinessVariance) = (0.0, 0.0);
        for (var i = 0; i < bands.Length; i++)
        {
            for (var j = 0; j < bands.Length; j++)
            {
                var both = i == j ? 1.0 / weight[i] : spectrum.RelativeCovariance(used[i], used[j]);
                levelVariance += both * weight[i] * (sxx - (sx * distance[i])) * weight[j] * (sxx - (sx * distance[j]));
                wavinessVariance += both * weight[i] * ((s * distance[i]) - sx) * weight[j] * ((s * distance[j]) - sx);
            }
        }

        var misses = levelled.Select((log, i) => log - level + (w * distance[i])).ToArray();
        var scatter = Math.Sqrt(Sum(weight, misses, misses) / (bands.Length - 2));
        var widened = Math.Max(1.0, scatter) / determinant;
        return new SpectrumFit(
            level,
            Math.Sqrt(levelVariance) * widened,
            w,
            Math.Sqrt(wavinessVariance) * widened,
            scatter,
            bands.Length,
            new SpatialBand(bands[0].Band.Low, bands[^1].Band.High));
    }

    /// <summary>Interval that holds the true G_d(n0) with a given probability (Student's t in the logarithm).</summary>
    /// <param name="confidence">Probability, above 0 and below 1.</param>
    public (Amount<RoadDensity> Low, Amount<RoadDensity> High) DensityInterval(double confidence)
    {
        var reach = Reach(confidence) * LogDeviation;
        return (new(Math.Exp(LogDensity - reach)), new(Math.Exp(LogDensity + reach)));
    }

    /// <summary>Interval that holds the true w with a given probability.</summary>
    /// <param name="confidence">Probability, above 0 and below 1.</param>
    public (double Low, double High) WavinessInterval(double confidence)
    {
        var reach = Reach(confidence) * WavinessDeviation;
        return (Waviness - reach, Waviness + reach);
    }

    /// <summary>How probable it is that the road's true density lies in a class (–).</summary>
    public double ProbabilityOf(RoadClass roadClass) => Below(roadClass.Upper.Si) - Below(roadClass.Lower.Si);

    private static int[] Used(ProfileSpectrum spectrum, SpatialBand wanted)
    {
        // The ends of the range are 2^−6.5 and 2^1.5 rounded to three digits: half a per cent lets their bands in.
        var used = Enumerable.Range(0, spectrum.Bands.Count)
            .Where(i => spectrum.Bands[i].Band is var b && b.Low >= 0.995 * wanted.Low && b.High <= 1.005 * wanted.High).ToArray();
        if (!used.Any(i => spectrum.Bands[i].Band.Holds(RoadSpectrum.Reference)))
        {
            throw new RefusedValueException(
                "profile for a road class",
                FormattableString.Invariant($"{spectrum.Length:G4} m long at {spectrum.Spacing:G3} m"),
                "at least 45.3 m long at 2.24 m or closer",
                "A class is stated at 0.1 cycles/m, and needs 4 waves of the longest wavelength in the band around it: measure a longer road.");
        }

        if (used.Length < FewestBands)
        {
            throw new RefusedValueException(
                "number of bands in the fit",
                string.Create(CultureInfo.InvariantCulture, $"{used.Length}"),
                FormattableString.Invariant($"at least {FewestBands}"),
                "Measure a longer road, or at a smaller spacing, or fit a wider range.");
        }

        return Array.TrueForAll(used, i => spectrum.Bands[i].Density > 0.0)
            ? used
            : throw new RefusedValueException(
                "profile for a road class", "level", "uneven", "A level profile has no spectrum: check that its heights were read.");
    }

    private double Below(double density) => density switch
    {
        <= 0.0 => 0.0,
        double.PositiveInfinity => 1.0,
        _ => StudentT.CDF(0.0, 1.0, Bands - 2, (Math.Log(density) - LogDensity) / LogDeviation),
    };

    private double Reach(double confidence) =>
        StudentT.InvCDF(
            0.0,
            1.0,
            Bands - 2,
            0.5 * (1.0 + Checked.Within(confidence, double.Epsilon, Math.BitDecrement(1.0), "Give a probability such as 0.95.")));

    // ln of the mean of n^−w over a band, less that of its centre.
    private static double Curvature(SpectrumBand band, double w) =>
        Math.Log(RoadSpectrum.PowerIntegral(w, band.Band.Low, band.Band.High) / (band.Band.High - band.Band.Low)) + (w * Math.Log(band.Centre));

    private static double Sum(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();

    private static double Sum(double[] a, double[] b, double[] c) => a.Select((x, i) => x * b[i] * c[i]).Sum();
}
