using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// Waves of one length: left track a sin(2πx/λ), right track a sin(2πx/λ − φ). With the lead-in the amplitude grows as (1 − cos(πx/λ))/2 over
/// the first wavelength, so that the road begins level. Without it the road begins at a slope, and the right track at height −a sin φ.
/// </summary>
public sealed record SineRoad
{
    // As long as a random road may be, m.
    private const double Longest = 1e5;

    /// <summary>a, half the height from trough to crest, above 0, at most 1 m.</summary>
    public required Amount<Length> Amplitude
    {
        get;
        init => field = Checked.Within(
            Checked.Positive(value, "Give half the height from trough to crest."), 0.0, 1.0, "Give half the height from trough to crest.");
    }

    /// <summary>λ, from crest to crest, above 0, at most 1 km.</summary>
    public required Amount<Length> Wavelength
    {
        get;
        init => field = Checked.Within(
            Checked.Positive(value, "Give the distance from crest to crest."), 0.0, 1000.0, "Give the distance from crest to crest.");
    }

    /// <summary>Number of waves at full amplitude (–), 0.25 to 10 000, need not be whole.</summary>
    public required double Waves { get; init => field = Checked.Within(value, 0.25, 10_000.0, "Give the number of waves at full amplitude."); }

    /// <summary>Whether one more wavelength before them lets the amplitude grow. Default true.</summary>
    public bool LeadIn { get; init; } = true;

    /// <summary>
    /// φ, how far the right track lags behind the left: 0 pitches and heaves the car, half a turn rolls it. Within two turns either way.
    /// </summary>
    public Amount<Angle> RightLag
    {
        get;
        init => field = Checked.Within(value, -4.0 * Math.PI, 4.0 * Math.PI, "Give the lag of the right track as an angle, 180° for opposite waves.");
    }

    /// <summary>Length with the lead-in, m.</summary>
    public double OverallLength => Wavelength.Si * (Waves + (LeadIn ? 1.0 : 0.0));

    /// <summary>Waves over a given distance at full amplitude.</summary>
    public static SineRoad Over(Amount<Length> distance, Amount<Length> amplitude, Amount<Length> wavelength) =>
        new() { Amplitude = amplitude, Wavelength = wavelength, Waves = distance.Si / wavelength.Si };

    /// <summary>The left track.</summary>
    public Profile DrawLeft() => Draw(0.0);

    /// <summary>The right track.</summary>
    public Profile DrawRight() => Draw(RightLag.Si);

    /// <exception cref="RefusedValueException">The waves together are longer than a road.</exception>
    private Profile Draw(double lag)
    {
        if (OverallLength > Longest)
        {
            throw new RefusedValueException(
                "length of the waves",
                FormattableString.Invariant($"{OverallLength:G6} m"),
                FormattableString.Invariant($"at most {Longest:0} m"),
                "Give fewer waves, or shorter ones.");
        }

        var a = Amplitude.Si;
        var k = 2.0 * Math.PI / Wavelength.Si;
        var fourth = a * k * k * k * k;
        double Wave(double x) => a * Math.Sin((k * x) - lag);
        double WaveSlope(double x) => a * k * Math.Cos((k * x) - lag);
        double Share(double x) => 0.5 * (1.0 - Math.Cos(0.5 * k * x));
        double ShareSlope(double x) => 0.25 * k * Math.Sin(0.5 * k * x);
        var outline = new Outline(0.0, LeadIn ? 0.0 : Wave(0.0));
        if (LeadIn)
        {
            // Share times wave is ½ sin(kx) − ¼ sin(3kx/2) − ¼ sin(kx/2) but for the lag: the fourth derivatives
            // add to at most (½ + ¼·81/16 + ¼/16) a k⁴.
            outline.CurveTo(
                Wavelength.Si,
                Wave(Wavelength.Si),
                x => Share(x) * Wave(x),
                x => (ShareSlope(x) * Wave(x)) + (Share(x) * WaveSlope(x)),
                1.79 * fourth);
        }

        return outline.CurveTo(OverallLength, Wave(OverallLength), Wave, WaveSlope, fourth).Close();
    }
}
