using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// International Roughness Index: mean |suspension motion| of the <see cref="GoldenCar"/> over distance. The slope between each height and the one
/// 250 mm further (interpolated where no height stands there), held for one spacing, drives the car; it starts at rest on the mean slope of the
/// first 11 m [ASTM E1926; World Bank Technical Paper 46; Sayers, TRR 1501 (1995)].
/// </summary>
/// <remarks>
/// Heights may be at most 250 mm apart, as the published programs ask. Profiles under 31 m are refused:
/// 11 m for the start and 20 m in which the car's memory of it falls to a tenth. It matters still on 100 m; long sections average it away.
/// </remarks>
public sealed record Iri
{
    private const double MovingAverage = 0.25;
    private const double StartLength = 11.0;
    private const double Shortest = 31.0;
    private const double Rounding = 1e-9;

    private Iri(double slope, IReadOnlyList<IriSegment> segments) => (Slope, Segments) = (slope, segments);

    /// <summary>The index of the whole profile (–), m per m.</summary>
    public double Slope { get; }

    /// <summary>The index as it is always written, m/km.</summary>
    public double MetresPerKilometre => 1000.0 * Slope;

    /// <summary>The index of each part, in one pass of the car over all.</summary>
    public IReadOnlyList<IriSegment> Segments { get; }

    /// <summary>The index of equally spaced heights.</summary>
    /// <param name="heights">Heights, m, finite, over at least 31 m.</param>
    /// <param name="spacing">Distance between them, 1 to 250 mm.</param>
    /// <param name="segment">Length of the parts, 1 m to 10 km; 100 m if left out.</param>
    public static Iri Of(IReadOnlyList<double> heights, Amount<Length> spacing, Amount<Length>? segment = null) =>
        Of([.. heights], spacing, segment, CancellationToken.None);

    internal static Iri Of(double[] heights, Amount<Length> spacing, Amount<Length>? segment, CancellationToken stop)
    {
        var dx = Checked.Within(
            spacing, 1e-3, MovingAverage, "The index needs heights at most 250 mm apart: measure more closely.", "SpacingOfTheHeights").Si;
        var part = Checked.Within(segment ?? new(100.0), 1.0, 1e4, "Give the length of the parts, usually 100 m.", "SegmentLength").Si;
        var length = (heights.Length - 1) * dx;
        if (length < Shortest - Rounding)
        {
            throw new RefusedValueException(
                "length of the profile",
                string.Create(CultureInfo.InvariantCulture, $"{length:G4} m"),
                FormattableString.Invariant($"at least {Shortest} m"),
                "The index needs 11 m to start and 20 m to forget the start: measure a longer road, 100 m or more.");
        }

        foreach (var height in heights)
        {
            _ = Checked.Within(height, -double.MaxValue, double.MaxValue, "Give finite heights.", "Height");
        }

        var steps = (int)Math.Floor(((length - MovingAverage) / dx) + Rounding) + 1;
        var motion = Motion(heights, dx, steps, stop);
        return new Iri(motion.Average(), Parts(motion, dx, part));
    }

    /// <summary>The index of a profile read at a spacing, from its start to its end.</summary>
    /// <param name="profile">A profile at least 31 m long. Between measured heights it is interpolated.</param>
    /// <param name="spacing">Distance between the heights read, 1 to 250 mm.</param>
    /// <param name="segment">Length of the parts; 100 m if left out.</param>
    public static Iri Of(Profile profile, Amount<Length> spacing, Amount<Length>? segment = null) =>
        Of(EqualSamples.Of(profile, spacing), spacing, segment, CancellationToken.None);

    /// <summary>
    /// The index to expect of a Gaussian road of a given spectrum (–), m per m: √(2/π) times the root mean square of the suspension motion,
    /// ∫ gain²·sinc²(0.25 n)·(2πn)²·G_d dn over the spectrum's band.
    /// </summary>
    /// <param name="spectrum">Spectrum of the heights.</param>
    public static double Expected(RoadSpectrum spectrum)
    {
        // Simpson's rule over ln n, even steps; 400 per factor e follow the gain's peaks and the average's lobes to 1e-7 of the result.
        var (from, to) = (Math.Log(spectrum.Band.Low), Math.Log(spectrum.Band.High));
        var steps = 2 * (int)Math.Ceiling(200.0 * (to - from));
        var width = (to - from) / steps;
        var sum = 0.0;
        for (var i = 0; i <= steps; i++)
        {
            // The ends themselves, not their rounded exponentials, which may lie just outside the band.
            var n = i == 0 ? spectrum.Band.Low : i == steps ? spectrum.Band.High : Math.Exp(from + (i * width));
            var gain = GoldenCar.Gain(n) * Math.Sin(Math.PI * MovingAverage * n) / (Math.PI * MovingAverage * n);
            sum += (i == 0 || i == steps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0) * gain * gain * spectrum.SlopesAt(n) * n;
        }

        return Math.Sqrt(2.0 / Math.PI * sum * width / 3.0);
    }

    // |sprung − unsprung slope| after each step.
    private static double[] Motion(double[] heights, double dx, int steps, CancellationToken stop)
    {
        var (s, p) = GoldenCar.Step(dx);
        var start = (At(heights, StartLength / dx) - heights[0]) / StartLength;
        var (a, b, c, d) = (start, 0.0, start, 0.0);
        var motion = new double[steps];
        for (var i = 0; i < steps; i++)
        {
            Pause.At(i, stop);
            var slope = (At(heights, i + (MovingAverage / dx)) - heights[i]) / MovingAverage;
            (a, b, c, d) = (
                (s[0, 0] * a) + (s[0, 1] * b) + (s[0, 2] * c) + (s[0, 3] * d) + (p[0] * slope),
                (s[1, 0] * a) + (s[1, 1] * b) + (s[1, 2] * c) + (s[1, 3] * d) + (p[1] * slope),
                (s[2, 0] * a) + (s[2, 1] * b) + (s[2, 2] * c) + (s[2, 3] * d) + (p[2] * slope),
                (s[3, 0] * a) + (s[3, 1] * b) + (s[3, 2] * c) + (s[3, 3] * d) + (p[3] * slope));
            motion[i] = Math.Abs(c - a);
        }

        return motion;
    }

    // Height at a place counted in spacings, straight between two heights.
    private static double At(double[] heights, double place)
    {
        var i = Math.Min((int)(place + Rounding), heights.Length - 1);
        var share = place - i;
        return share < Rounding || i + 1 == heights.Length ? heights[i] : heights[i] + (share * (heights[i + 1] - heights[i]));
    }

    private static List<IriSegment> Parts(double[] motion, double dx, double part)
    {
        var parts = new List<IriSegment>();
        for (var from = 0; from < motion.Length;)
        {
            var to = Math.Min(motion.Length, (int)Math.Ceiling(((parts.Count + 1) * part / dx) - Rounding));
            parts.Add(new IriSegment(from * dx, (to - from) * dx, new ArraySegment<double>(motion, from, to - from).Average()));
            from = to;
        }

        return parts;
    }
}
