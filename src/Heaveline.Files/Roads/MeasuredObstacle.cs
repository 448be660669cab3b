namespace Heaveline.Files.Roads;

/// <summary>Where the obstacle of a measured road lies, as written.</summary>
/// <param name="From">Its beginning, m from the first point.</param>
/// <param name="To">Its end, m from the first point.</param>
internal sealed record MeasuredObstacle(double From, double To);
