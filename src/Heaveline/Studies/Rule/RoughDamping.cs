using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>
/// A bump says little of tyre load: damping is judged on a rough road as well. 400 m of a random road of class C, both tracks alike, at the middle of
/// the map's speeds.
/// </summary>
/// <param name="Optima">Which damping suits what there.</param>
/// <param name="Road">Road and speed in words.</param>
public sealed record RoughDamping(DampingOptima Optima, string Road)
{
    internal static RoughDamping Of(RideModel model, double slowest, double fastest, IReadOnlyList<double> ratios, StudyRun run)
    {
        var speed = 0.5 * (slowest + fastest);
        var road = Roads.Road.From(new RandomRoad
        {
            Spectrum = RoadSpectrum.Of(RoadClass.C),
            Track = new Amount<Length>(0.0),
            Length = new Amount<Length>(400.0),
            LeadIn = new Amount<Length>(20.0),
            Seed = 1,
        });
        return new RoughDamping(
            DampingOptima.Of(model, road, speed, ratios, degree: run.Degree, cancellation: run.Cancellation),
            FormattableString.Invariant($"400 m of a random road of class C (seed 1) at {In.KilometresPerHour.Of(speed):F0} km/h"));
    }
}
