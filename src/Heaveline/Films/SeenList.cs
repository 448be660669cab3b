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
    public bool IsOneSpeed => Cars.Max(c => c.Speed) <= (1.0 + SpeedsApart) * Cars.Min(c => c.Speed);

    /// <summary>Neighbours in the order whose intervals meet: the films do not tell which pitches less.</summary>
    public IEnumerable<(SeenCar First, SeenCar Second)> NotTold =>
        Cars.Zip(Cars.Skip(1)).Where(pair => pair.First.PitchPerLift.Meets(pair.Second.PitchPerLift));

    /// <summary>Puts cars in order; those whose settling was not seen come last.</summary>
    /// <param name="cars">The cars.</param>
    public static SeenList Of(IEnumerable<SeenCar> cars) =>
        new([
            .. cars.OrderBy(c => double.IsFinite(c.PitchPerLift.Value) ? c.PitchPerLift.Value : double.MaxValue)
                .ThenBy(c => c.Name, StringComparer.Ordinal),
        ]);
}
