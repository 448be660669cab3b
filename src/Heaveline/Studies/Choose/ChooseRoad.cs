using System.Collections.Immutable;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>An obstacle that is driven over at some speeds.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Road">The road, with an obstacle on it.</param>
/// <param name="Speeds">Speeds, m/s, rising.</param>
public sealed record ChooseRoad(string Name, Road Road, ImmutableArray<double> Speeds)
{
    /// <summary>The loads with which it counts, by name; empty for all that count. With the others it is looked at all the same.</summary>
    public ImmutableArray<string> Loads { get; init; } = [];

    /// <summary>What it weighs beside the others (–).</summary>
    public double Weight { get; init; } = 1.0;
}
