namespace Heaveline.Doubts;

/// <summary>How much of a number's variance one source of error makes.</summary>
/// <param name="Source">The source.</param>
/// <param name="Share">Its share of the variance (–), 0 to 1.</param>
/// <param name="PerDeviation">Change of the number per standard deviation of the source, signed.</param>
public sealed record VarianceShare(DoubtSource Source, double Share, double PerDeviation);
