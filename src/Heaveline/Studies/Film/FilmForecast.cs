using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Films;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>A car file's own pass over the bump that was filmed, at the film's speed.</summary>
public sealed record FilmForecast
{
    /// <summary>The car.</summary>
    public required LoadedCar Car { get; init; }

    /// <summary>Its numbers at rest.</summary>
    public required CarBeside Beside { get; init; }

    /// <summary>Its numbers at rest under its other loads that it can stand under.</summary>
    public ImmutableArray<CarBeside> Others { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>The pass; null where no bump was named.</summary>
    public Pass? Pass { get; init; }

    /// <summary>The film's first touch less the pass's, s: what is added to the pass's time.</summary>
    public double Shift { get; init; }

    /// <summary>Drives it.</summary>
    /// <param name="car">The car.</param>
    /// <param name="road">The bump; null: it is not driven.</param>
    /// <param name="seen">The film.</param>
    /// <param name="stop">Stops it.</param>
    public static FilmForecast Of(LoadedCar car, Road? road, SeenPass seen, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(seen);
        var pass = road?.Event is null ? null : Passes.Pass.Of(
            car.Model, road, seen.Speed, new PassOptions { Record = new PassRecord { LeadTime = 0.8 } }, stop);
        return new FilmForecast
        {
            Car = car,
            Beside = CarBeside.Of(car),
            Others = [.. OthersOf(car)],
            Pass = pass,
            Shift = pass is null ? 0.0 : seen.FirstTouch - PitchHit.Of(pass).Window.From,
        };
    }

    private static IEnumerable<CarBeside> OthersOf(LoadedCar car)
    {
        foreach (var load in car.Car.LoadStates.Prepend(LoadState.Reference).Where(l => l.Name != car.Load.Name))
        {
            CarBeside? beside = null;
            try
            {
                beside = CarBeside.Of(car with { Load = load });
            }
            catch (RefusedValueException)
            {
                // It cannot stand so: no load that was filmed.
            }

            if (beside is not null)
            {
                yield return beside;
            }
        }
    }

    /// <summary>A number of the pass by the key of its measure; not a number where there is none.</summary>
    internal double Of(string key) => Pass is null ? double.NaN
        : HitCatalogue.All.Concat(SettlingCatalogue.All).FirstOrDefault(m => m.Key == key)?.Of(Pass) ?? double.NaN;
}
