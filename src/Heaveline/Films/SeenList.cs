using System.Collections.Immutable;

namespace Heaveline.Films;

/// <summary>Cars seen at one bump, the one that pitches least after it first.</summary>
public sealed record SeenList
{
    /// <summary>Speeds that lie farther apart than by this share are not the same pass: the order is then one of speeds too. A proposal.</summary>
    public const double SpeedsApart = 0.15;

    private SeenList(ImmutableArray<SeenCar> cars) => Cars = cars;

    /// <summary>The cars in order.</summary>
    public ImmutableArray<SeenCar> Cars { get; }

    /// <summary>Whether the speeds lie so near that the order is one of cars.</summary>
    public bool IsOneSpeed => Speeds.Max() <= (1.0 + SpeedsApart) * Speeds.Min();

    /// <summary>Speeds of the films that gave the order, m/s.</summary>
    public IEnumerable<double> Speeds => Cars.SelectMany(c => c.Films.Select(f => c.Passes[f].Speed));

    /// <summary>Neighbours in the order whose intervals meet: the films do not tell which pitches less.</summary>
    public IEnumerable<(SeenCar First, SeenCar Second)> NotTold =>
        Cars.Zip(Cars.Skip(1)).Where(pair => pair.First.PitchPerLift.Meets(pair.Second.PitchPerLift));

    /// <summary>Puts cars in order; those whose settling was not seen come last.</summary>
    /// <param name="cars">The cars.</param>
    public static SeenList Of(IEnumerable<SeenCar> cars)
    {
        SeenCar[] all = [.. cars];
        return new([
            .. AtOneSpeed(all).OrderBy(c => double.IsFinite(c.PitchPerLift.Value) ? c.PitchPerLift.Value : double.MaxValue)
                .ThenBy(c => c.Name, StringComparer.Ordinal),
        ]);
    }

    // Each car by its films round the speed at which most cars were filmed: pitch after a bump changes with the speed.
    private static SeenCar[] AtOneSpeed(SeenCar[] cars)
    {
        if (cars.Length < 2)
        {
            return cars;
        }

        double Spread(double speed) => cars.Select(c => Math.Abs(Math.Log(c.At(speed).Speed / speed))).Sum(a => Math.Min(a, SpeedsApart));
        var speed = cars.SelectMany(c => c.Passes.Select(p => p.Speed)).Order().MinBy(Spread);
        return [.. cars.Select(c => c.At(speed))];
    }
}
