namespace Heaveline.Measures;

/// <summary>Measures that stand together in a table.</summary>
/// <typeparam name="TSubject">What they are of.</typeparam>
/// <param name="Title">What the group is of, to head a table.</param>
/// <param name="Measures">The measures, in order.</param>
public sealed record MeasureGroup<TSubject>(string Title, IReadOnlyList<Measure<TSubject>> Measures);
