namespace Heaveline.Quantities;

/// <summary>A product of unit symbols as read, before it is known which meaning of each symbol is wanted.</summary>
/// <param name="Text">The product as written.</param>
/// <param name="Parts">The symbols' meanings with their powers.</param>
internal sealed record UnitProduct(string Text, IReadOnlyList<(Unit[] Meanings, int Power)> Parts)
{
    private static readonly Unit One = new("", 1.0, 0, default);

    /// <summary>The unit with every symbol in its first meaning.</summary>
    public Unit First => All().First();

    /// <summary>The first combination of meanings that has the wanted exponents; null when none has.</summary>
    public Unit? Resolve(Exponents wanted) => All().FirstOrDefault(unit => unit.Exponents == wanted);

    private IEnumerable<Unit> All() => Parts.Aggregate(
        Enumerable.Repeat(One, 1),
        (units, part) => units.SelectMany(unit => part.Meanings.Select(meaning => unit.Times(meaning, part.Power, Text))));
}
