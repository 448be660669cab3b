using System.Collections.Immutable;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>An obstacle that is driven over at some speeds.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Road">The road, with an obstacle on it.</param>
/// <param name="Speeds">Speeds, m/s, rising.</param>
public sealed record ChooseRoad(string Name, Road Road, ImmutableArray<double> Speeds);
