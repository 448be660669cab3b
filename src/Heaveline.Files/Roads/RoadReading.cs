using Heaveline.Roads;

namespace Heaveline.Files.Roads;

/// <summary>What came of reading a road: the road, or everything that is wrong with the file.</summary>
/// <param name="Road">The road; null when anything was refused.</param>
/// <param name="Refusals">All refusals, in the order of the file; empty when the road was read.</param>
public sealed record RoadReading(Road? Road, IReadOnlyList<Refusal> Refusals);
