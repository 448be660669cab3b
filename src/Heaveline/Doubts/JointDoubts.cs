using Heaveline.Cars;

namespace Heaveline.Doubts;

/// <summary>
/// The doubts of several cars together, so that what they have in common is drawn once: a change is surer than the two cars it lies between. Common
/// are a named instrument (a scale, a spring tester) and, of cars of one wheelbase, which count as states of one vehicle, every measurement that
/// stands in both with the same value and doubt. A part that was changed has an error of its own.
/// </summary>
public sealed class JointDoubts
{
    private readonly int[][] places;

    private JointDoubts(IReadOnlyList<CarDoubts> cars, IReadOnlyList<DoubtSource> sources, int[][] places)
    {
        Cars = cars;
        Sources = sources;
        this.places = places;
    }

    /// <summary>Each car's own doubts.</summary>
    public IReadOnlyList<CarDoubts> Cars { get; }

    /// <summary>The independent errors of all cars: the first car's in its order, then what the next brings in addition.</summary>
    public IReadOnlyList<DoubtSource> Sources { get; }

    /// <summary>The doubts of several cars, each under its load.</summary>
    public static JointDoubts Of(IReadOnlyList<CarDoubts> cars)
    {
        ArgumentNullException.ThrowIfNull(cars);
        var all = new List<(CarDoubts Car, DoubtSource Source)>();
        var places = new List<int[]>();
        foreach (var car in cars)
        {
            var known = all.Count;
            places.Add([.. car.Sources.Select(source =>
            {
                var at = all.FindIndex(0, known, one => AreOne(one.Car, one.Source, car, source));
                if (at < 0)
                {
                    at = all.Count;
                    var isNew = all.All(one => one.Source.Name != source.Name);
                    all.Add((car, isNew ? source : source with { Name = $"{source.Name} of {car.Car.Name}" }));
                }

                return at;
            })]);
        }

        return new JointDoubts(cars, [.. all.Select(one => one.Source)], [.. places]);
    }

    /// <summary>One of the cars with errors in it.</summary>
    /// <param name="car">Which, from 0.</param>
    /// <param name="errors">Error of each of <see cref="Sources"/> in standard deviations, shape (sources).</param>
    /// <exception cref="Quantities.RefusedValueException">A value that such a car cannot have.</exception>
    public (Car Car, LoadState Load) At(int car, IReadOnlyList<double> errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        return errors.Count == Sources.Count
            ? Cars[car].At([.. places[car].Select(at => errors[at])])
            : throw new ArgumentException($"{errors.Count} errors for {Sources.Count} sources.", nameof(errors));
    }

    private static bool AreOne(CarDoubts first, DoubtSource one, CarDoubts second, DoubtSource other) =>
        one.IsInstrument || other.IsInstrument
            ? one.IsInstrument && other.IsInstrument && one.Name == other.Name
            : first.Car.Wheelbase == second.Car.Wheelbase && one.Amounts.SequenceEqual(other.Amounts);
}
