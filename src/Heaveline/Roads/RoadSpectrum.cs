using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// One-sided spectral density of the heights of a random road, G_d(n) = G_d(n0)·(n/n0)^−w with n0 = 0.1 cycles/m [ISO 8608:2016], between two
/// spatial frequencies and nothing outside them. Longer waves than the band holds are hills and shorter ones texture: a straight line without
/// ends would have no finite height.
/// </summary>
public sealed record RoadSpectrum
{
    /// <summary>n0, where the density is stated, cycles/m [ISO 8608].</summary>
    public const double Reference = 0.1;

    /// <summary>G_d(n0), density at 0.1 cycles/m, above 0.</summary>
    public required Amount<RoadDensity> Density
    {
        get;
        init => field = Checked.Positive(value, "Give the spectral density of heights at 0.1 cycles/m.");
    }

    /// <summary>w, how steeply the density falls (–), 0.5 to 5. Default 2, for which the slopes are white [ISO 8608].</summary>
    public double Waviness { get; init => field = Checked.Within(value, 0.5, 5.0, "Give the exponent of the spectrum, usually 1.5 to 3."); } = 2.0;

    /// <summary>Spatial frequencies that have waves. Default 0.011 to 2.83 cycles/m.</summary>
    public SpatialBand Band { get; init; } = SpatialBand.Iso8608;

    /// <summary>Variance of heights over the whole band, m².</summary>
    public double HeightVariance => VarianceBetween(Band.Low, Band.High);

    /// <summary>The spectrum of a class at its geometric mean, waviness 2, 0.011 to 2.83 cycles/m.</summary>
    public static RoadSpectrum Of(RoadClass roadClass) => new() { Density = roadClass.Mean };

    /// <summary>Density of heights, m³.</summary>
    /// <param name="n">Spatial frequency, cycles/m; 0 outside the band.</param>
    public double HeightsAt(double n) => Band.Holds(n) ? Density.Si * Math.Pow(n / Reference, -Waviness) : 0.0;

    /// <summary>Density of slopes, (2πn)²·G_d(n), m: the "velocity" form of ISO 8608.</summary>
    /// <param name="n">Spatial frequency, cycles/m.</param>
    public double SlopesAt(double n) => Squared(2.0 * Math.PI * n) * HeightsAt(n);

    /// <summary>Density of curvatures, (2πn)⁴·G_d(n), 1/m: the "acceleration" form of ISO 8608.</summary>
    /// <param name="n">Spatial frequency, cycles/m.</param>
    public double CurvaturesAt(double n) => Squared(2.0 * Math.PI * n) * SlopesAt(n);

    /// <summary>Density of the height under a wheel in time, G_d(f/v)/v, m²/Hz.</summary>
    /// <param name="f">Frequency, Hz.</param>
    /// <param name="v">Speed, m/s, above 0.</param>
    public double HeightsAt(double f, double v) => HeightsAt(f / v) / v;

    /// <summary>Density of the vertical velocity of the road under a wheel, (2πf)²·G_d(f/v)/v, (m/s)²/Hz; with w = 2 the same at every f.</summary>
    /// <param name="f">Frequency, Hz.</param>
    /// <param name="v">Speed, m/s, above 0.</param>
    public double VelocitiesAt(double f, double v) => Squared(2.0 * Math.PI * f) * HeightsAt(f, v);

    /// <summary>Density of the vertical acceleration of the road under a wheel, (2πf)⁴·G_d(f/v)/v, (m/s²)²/Hz.</summary>
    /// <param name="f">Frequency, Hz.</param>
    /// <param name="v">Speed, m/s, above 0.</param>
    public double AccelerationsAt(double f, double v) => Squared(2.0 * Math.PI * f) * VelocitiesAt(f, v);

    /// <summary>Variance of heights between two spatial frequencies, m²; what lies outside the band adds nothing.</summary>
    /// <param name="low">Lower spatial frequency, cycles/m.</param>
    /// <param name="high">Higher spatial frequency, cycles/m.</param>
    public double VarianceBetween(double low, double high)
    {
        var from = Math.Max(low, Band.Low);
        var to = Math.Min(high, Band.High);
        return to > from ? Density.Si * Math.Pow(Reference, Waviness) * PowerIntegral(Waviness, from, to) : 0.0;
    }

    /// <summary>
    /// ν = 2L(∫G)²/∫G²: a road of length L shows the mean square of its heights as a chi-square number of about ν degrees of freedom would
    /// [Bendat and Piersol, Random Data, ch. 8, for a record much longer than its longest wave]. Long waves are few, so ν is small: 65 on 1 km
    /// of the default band, which scatters the mean square by √(2/ν) = 17 %.
    /// </summary>
    /// <param name="length">Length of the road, above 0.</param>
    public double DegreesOfFreedom(Amount<Length> length)
    {
        _ = Checked.Positive(length, "Give the length of the road.", "Length");
        var mean = PowerIntegral(Waviness, Band.Low, Band.High);
        return 2.0 * length.Si * mean * mean / PowerIntegral(2.0 * Waviness, Band.Low, Band.High);
    }

    // ∫ n^−p dn from low to high. Written with the logarithm of their ratio so that p = 1 and narrow bands lose no digits.
    internal static double PowerIntegral(double p, double low, double high)
    {
        var span = Math.Log(high / low);
        var t = (p - 1.0) * span;
        var share = Math.Abs(t) < 1e-3 ? 1.0 - (t / 2.0 * (1.0 - (t / 3.0 * (1.0 - (t / 4.0 * (1.0 - (t / 5.0))))))) : (1.0 - Math.Exp(-t)) / t;
        return Math.Pow(low, 1.0 - p) * span * share;
    }

    private static double Squared(double x) => x * x;
}
