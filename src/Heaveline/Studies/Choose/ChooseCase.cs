using Heaveline.Cars;

namespace Heaveline.Studies;

/// <summary>One use case: a load, an obstacle or the random road, a speed, and what it weighs.</summary>
/// <param name="Load">The load.</param>
/// <param name="Road">The obstacle; null for the random road.</param>
/// <param name="Speed">Speed, m/s.</param>
/// <param name="Weight">What it weighs (–): even over loads, then roads, then speeds.</param>
/// <param name="Name">What it is called.</param>
internal sealed record ChooseCase(LoadState Load, ChooseRoad? Road, double Speed, double Weight, string Name);
