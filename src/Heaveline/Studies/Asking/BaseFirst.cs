using Heaveline.Answers;

namespace Heaveline.Studies;

/// <summary>
/// Which of two cars is the one before a change: a variant is built on its base, so the base is, whoever is named first. Known from the texts that a
/// car was read from: its own, its base's, and so on down to the car file.
/// </summary>
public static class BaseFirst
{
    /// <summary>Whether a car is a variant of another, or of a variant of it.</summary>
    /// <param name="car">The texts of the car, its own first.</param>
    /// <param name="other">Those of the other.</param>
    public static bool IsVariantOf(IReadOnlyList<InputText> car, IReadOnlyList<InputText> other)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(other);
        return StepsTo(car, other) > 0;
    }

    /// <summary>The place of the car that the others are held against: the first one named, or the oldest of those that it is built on.</summary>
    /// <param name="cars">The texts of each car, its own first.</param>
    public static int PlaceIn(IReadOnlyList<IReadOnlyList<InputText>> cars)
    {
        ArgumentNullException.ThrowIfNull(cars);
        return cars.Count == 0 ? 0 : Enumerable.Range(0, cars.Count).MaxBy(i => i == 0 ? 0 : StepsTo(cars[0], cars[i]));
    }

    /// <summary>The cars asked for, the one before the change in front; where that is not the first named, a sentence on it, else blank.</summary>
    /// <param name="reader">What is asked.</param>
    /// <param name="cars">The cars' choice.</param>
    /// <param name="load">The load's choice.</param>
    internal static (IReadOnlyList<LoadedCar> Cars, string Turned) Read(AskedReader reader, Choice cars, Choice load)
    {
        var loaded = reader.Loaded(cars, load);
        var place = PlaceIn([.. loaded.Select(one => one.Inputs)]);
        LoadedCar[] named = [.. loaded.Select(one => one.Car)];
        return place == 0
            ? (named, "")
            : ([named[place], .. named.Where((_, i) => i != place)], Words(named[0].Name, named[place].Name));
    }

    /// <summary>That the order was turned round, in a sentence.</summary>
    /// <param name="variant">Name of the variant that was named first.</param>
    /// <param name="before">Name of its base.</param>
    public static string Words(string variant, string before) =>
        $"Turned round: {variant} is built on {before}, so {before} is the car before the change.";

    // The same text is the same car, by whatever path it is found.
    private static int StepsTo(IReadOnlyList<InputText> car, IReadOnlyList<InputText> other) =>
        other.Count == 0 ? 0 : Math.Max(0, car.Select(text => text.Sha256).ToList().IndexOf(other[0].Sha256));
}
