using Heaveline.Cars;

namespace Heaveline.Doubts;

/// <summary>One amount of a car whose doubt is stated.</summary>
/// <param name="Path">What it is, in words ("front spring rate").</param>
/// <param name="Value">As stated, SI; 1 for the factor of a table.</param>
/// <param name="StandardDeviation">Half of the stated half-width, SI.</param>
/// <param name="Symbol">SI unit, empty for a plain number.</param>
public sealed record DoubtfulAmount(string Path, double Value, double StandardDeviation, string Symbol)
{
    /// <summary>The table whose forces it moves, all together; null for a single amount.</summary>
    public ForceTable? Table { get; init; }
}
