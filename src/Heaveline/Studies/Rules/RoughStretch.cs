using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>
/// A bump says little of tyre load: damping is judged on a rough road as well. 400 m of a random road of class C, both tracks alike.
/// </summary>
/// <param name="Road">The road.</param>
/// <param name="Speed">Speed, m/s.</param>
/// <param name="Words">Road and speed in words.</param>
public sealed record RoughStretch(Road Road, double Speed, string Words)
{
    /// <summary>The stretch at the middle of some speeds.</summary>
    /// <param name="slowest">Slowest speed, m/s.</param>
    /// <param name="fastest">Fastest speed, m/s.</param>
    public static RoughStretch Between(double slowest, double fastest)
    {
        var speed = 0.5 * (slowest + fastest);
        return new RoughStretch(
            Road.From(new RandomRoad { Spectrum = RoadSpectrum.Of(RoadClass.C), Track = new Amount<Length>(0.0), Length = new Amount<Length>(400.0), LeadIn = new Amount<Length>(20.0), Seed = 1 }),
            speed,
            FormattableString.Invariant($"400 m of a random road of class C (seed 1) at {3.6 * speed:F0} km/h"));
    }
}
