using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// Spectral density of a profile's heights, smoothed over octaves, third octaves and twelfth octaves as ISO 8608 asks (bands after a public
/// transcription): one periodogram of the whole length, its line taken off, under a Hann window, each bin counted by the share of it that lies in the
/// band. Bands reach from 4 waves in the whole length (below that the window smears the estimate by more than 6 %) to a quarter of the sampling rate
/// (above that shorter waves, folded back by the sampling, may add more than 11 %).
/// </summary>
public sealed record ProfileSpectrum
{
    private const double FewestWaves = 4.0;
    private const double FewestPointsPerWave = 4.0;
    private const int FewestHeights = 32;

    private readonly double[,] covariance;

    private ProfileSpectrum(double length, double spacing, IReadOnlyList<SpectrumBand> bands, double[,] covariance) =>
        (Length, Spacing, Bands, this.covariance) = (length, spacing, bands, covariance);

    /// <summary>Length of the profile, m.</summary>
    public double Length { get; }

    /// <summary>Distance between the heights used, m.</summary>
    public double Spacing { get; }

    /// <summary>Smoothed density, lowest band first, at least one.</summary>
    public IReadOnlyList<SpectrumBand> Bands { get; }

    /// <summary>The spectrum of equally spaced heights.</summary>
    /// <param name="heights">Heights, m, finite, shape (n), n at least 32.</param>
    /// <param name="spacing">Distance between them, 1 mm to 10 m.</param>
    public static ProfileSpectrum Of(IReadOnlyList<double> heights, Amount<Length> spacing) => Of([.. heights], spacing, CancellationToken.None);

    internal static ProfileSpectrum Of(double[] heights, Amount<Length> spacing, CancellationToken stop)
    {
        var dx = Checked.Within(spacing, 1e-3, 10.0, "Give the distance between measured heights.", "Spacing").Si;
        if (heights.Length < FewestHeights)
        {
            throw new RefusedValueException(
                "number of heights",
                FormattableString.Invariant($"{heights.Length}"),
                FormattableString.Invariant($"at least {FewestHeights}"),
                "Measure a longer road, or at a smaller spacing.");
        }

        foreach (var height in heights)
        {
            _ = Checked.Within(height, -double.MaxValue, double.MaxValue, "Give finite heights.", "Height");
        }

        var raw = Periodogram.Of(heights, dx, stop);
        var length = heights.Length * dx;
        var weights = SmoothingBands.Within(FewestWaves / length, 1.0 / (FewestPointsPerWave * dx))
            .Select(band => new BandWeights(band, raw.Resolution)).ToArray();
        var covariance = new double[weights.Length, weights.Length];
        for (var i = 0; i < weights.Length; i++)
        {
            stop.ThrowIfCancellationRequested();
            for (var j = 0; j < weights.Length; j++)
            {
                covariance[i, j] = weights[i].CovarianceWith(weights[j]);
            }
        }

        var bands = weights.Select((w, i) => new SpectrumBand(w.Band, w.Mean(raw.At), 2.0 / covariance[i, i])).ToArray();
        return bands.Length > 0
            ? new ProfileSpectrum(length, dx, bands, covariance)
            : throw new RefusedValueException(
                "length of the profile",
                string.Create(CultureInfo.InvariantCulture, $"{length:G4} m at {dx:G3} m"),
                "long enough for one band of 4 waves with 4 heights each",
                "Measure a longer road, or at a smaller spacing.");
    }

    /// <summary>The spectrum of a profile read at a spacing, from its start to its end.</summary>
    /// <param name="profile">
    /// A profile with a length. Between measured heights it is interpolated: do not read it closer than it was measured.
    /// </param>
    /// <param name="spacing">Distance between the heights read, 1 mm to 10 m.</param>
    public static ProfileSpectrum Of(Profile profile, Amount<Length> spacing) =>
        Of(EqualSamples.Of(profile, spacing), spacing, CancellationToken.None);

    /// <summary>Covariance of two bands' densities, each over its own true mean (–), for a Gaussian road.</summary>
    internal double RelativeCovariance(int i, int j) => covariance[i, j];
}
