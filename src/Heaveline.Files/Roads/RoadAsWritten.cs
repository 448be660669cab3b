using Heaveline.Roads;

namespace Heaveline.Files.Roads;

/// <summary>A road file before its measured profile is fetched.</summary>
/// <param name="Name">Name of the road.</param>
/// <param name="Drawn">The road; null when it is a measured one.</param>
/// <param name="Profile">Name of the measured profile's file, as written; null when it is drawn.</param>
/// <param name="Obstacle">Where the measured road's obstacle lies; null where it is not said.</param>
internal sealed record RoadAsWritten(string Name, Road? Drawn, string? Profile, MeasuredObstacle? Obstacle);
