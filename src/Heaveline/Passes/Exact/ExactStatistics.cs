namespace Heaveline.Passes.Exact;

/// <summary>What an exact run took.</summary>
/// <param name="Pieces">Pieces in which everything was straight, from one moment to the next.</param>
/// <param name="Events">Kinks passed, lift-offs and landings.</param>
/// <param name="Evaluations">Taylor series computed.</param>
internal readonly record struct ExactStatistics(long Pieces, long Events, long Evaluations);
