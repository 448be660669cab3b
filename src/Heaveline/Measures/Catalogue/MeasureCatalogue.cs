namespace Heaveline.Measures;

/// <summary>Every measure of a pass, of a car at rest and of a car on a random road.</summary>
public static class MeasureCatalogue
{
    private static readonly SeatPlace Seat = SeatPlace.Of("seat");
    private static readonly WheelPlace Wheel = new("wheel", "wheel", HasSides: true, [0]);

    // Travels of a wheel stand among the side effects.
    private static IEnumerable<Measure> Details =>
        RestDetailCatalogue.Of([Wheel]).ExceptBy(SideEffectCatalogue.Of(Wheel).Select(m => m.Key), m => m.Key);

    /// <summary>Subjects in words, each with its measures; a measure of each seat or wheel stands once, at a place called seat or wheel.</summary>
    public static IReadOnlyList<(string Subject, IReadOnlyList<Measure> Measures)> Subjects { get; } =
    [
        ("a pass", PassCatalogue.Of([Seat], [Wheel])),
        ("a car at rest", [.. RestCatalogue.All.Union(SideEffectCatalogue.Of([Wheel])).Concat(Details)]),
        ("a car on a random road", [.. RideCatalogue.Of([Seat]), RideCatalogue.WorstLoadVariation]),
    ];
}
