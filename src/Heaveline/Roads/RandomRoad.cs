using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// A random road of a given spectrum in two tracks: Gaussian, the tracks as alike as an isotropic surface makes them
/// (<see cref="TrackCoherence"/>), a function of the seed alone. A longer road of the same seed begins with the shorter one. Beyond the ends of
/// the spectrum's band there are no waves. Any finite piece shows the spectrum only as well as chance allows
/// (<see cref="RoadSpectrum.DegreesOfFreedom"/>).
/// </summary>
public sealed record RandomRoad
{
    // One track of 2 million knots holds 80 MB.
    private const double MostPoints = 2e6;

    /// <summary>Spectral density of heights, of each track.</summary>
    public required RoadSpectrum Spectrum { get; init; }

    /// <summary>Distance between the wheel tracks, 0 (one track) to 10 m.</summary>
    public required Amount<Length> Track
    {
        get;
        init => field = Checked.Within(value, 0.0, 10.0, "Give the distance between the wheel tracks, 0 for one track.");
    }

    /// <summary>Length, 1 m to 100 km; rounded up to whole spacings.</summary>
    public required Amount<Length> Length { get; init => field = Checked.Within(value, 1.0, 1e5, "Give the length of the road."); }

    /// <summary>
    /// Distance between knots, 1 mm to 1 m, and at most a quarter of the shortest wave: the cubic pieces carry exact heights and slopes at the
    /// knots and miss a wave of four spacings by at most 1.6 % between them, one of eight by 0.1 %. Default 0.05 m.
    /// </summary>
    public Amount<Length> Spacing
    {
        get;
        init => field = Checked.Within(value, 1e-3, 1.0, "Give the distance between knots, usually 50 mm.");
    } = new(0.05);

    /// <summary>Which of the roads of this spectrum: any number.</summary>
    public required ulong Seed { get; init; }

    /// <summary>
    /// Distance over which the heights grow from 0 as (1 − cos(πx/l))/2, so that the road begins level and a car can start at rest; 0 to 1 km.
    /// Default 0: waves of full size from x = 0. The stated spectrum holds after it.
    /// </summary>
    public Amount<Length> LeadIn
    {
        get;
        init => field = Checked.Within(value, 0.0, 1000.0, "Give the distance over which the road grows from level, or 0.");
    }

    /// <summary>How many knots each track has.</summary>
    public int Points => (int)Math.Ceiling((Length.Si / Spacing.Si) - 1e-9) + 1;

    /// <summary>Both tracks; the same profile twice for one track.</summary>
    public (Profile Left, Profile Right) Draw() => Draw(CancellationToken.None);

    internal (Profile Left, Profile Right) Draw(CancellationToken stop)
    {
        var shortest = 1.0 / Spectrum.Band.High;
        if (Spacing.Si > 0.25 * shortest)
        {
            throw new RefusedValueException(
                "spacing of the random road",
                Spacing.ToString(),
                string.Create(CultureInfo.InvariantCulture, $"at most {0.25 * shortest:G3} m, a quarter of its shortest wave"),
                "Give a smaller spacing or a lower highest spatial frequency.");
        }

        if (Length.Si / Spacing.Si > MostPoints)
        {
            throw new RefusedValueException(
                "length of the random road",
                Length.ToString(),
                FormattableString.Invariant($"at most {MostPoints * Spacing.Si:G3} m at this spacing"),
                "Give a shorter road or a wider spacing.");
        }

        var waves = RoadWaves.Of(this);
        var (left, right) = waves.Sum(Points, Spacing.Si, stop);
        var profile = Join(left);
        return (profile, Track.Si == 0.0 ? profile : Join(right));
    }

    private Profile Join((double[] Heights, double[] Slopes) track)
    {
        var (heights, slopes) = track;
        var knots = new double[heights.Length];
        var coefficients = new List<double>(Cubic.Order * heights.Length);
        for (var i = 0; i < knots.Length; i++)
        {
            knots[i] = i * Spacing.Si;
            var (share, grows) = Share(knots[i]);
            (heights[i], slopes[i]) = (share * heights[i], (share * slopes[i]) + (grows * heights[i]));
        }

        for (var i = 0; i + 1 < knots.Length; i++)
        {
            Cubic.Append(coefficients, knots[i + 1] - knots[i], heights[i], slopes[i], heights[i + 1], slopes[i + 1]);
        }

        coefficients.AddRange([heights[^1], 0.0, 0.0, 0.0]);
        return Profile.FromCubics(knots, [.. coefficients]);
    }

    // The lead-in's factor and its derivative.
    private (double Share, double Grows) Share(double x)
    {
        var k = Math.PI / LeadIn.Si;
        return x >= LeadIn.Si ? (1.0, 0.0) : (0.5 * (1.0 - Math.Cos(k * x)), 0.5 * k * Math.Sin(k * x));
    }
}
