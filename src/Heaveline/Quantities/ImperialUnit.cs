namespace Heaveline.Quantities;

/// <summary>What a reader of imperial units reads in place of a metric unit.</summary>
/// <param name="Metric">The metric unit as shown.</param>
/// <param name="Symbol">The unit that stands in its place.</param>
/// <param name="Factor">Of these in one metric unit.</param>
public sealed record ImperialUnit(string Metric, string Symbol, double Factor)
{
    /// <summary>
    /// How many decimals say as much as so many in the metric unit: the fewest whose step is no wider, so that the metric number can be had back
    /// to its last digit.
    /// </summary>
    /// <param name="decimals">Decimals of the metric number.</param>
    public int Decimals(int decimals) => Math.Clamp(decimals + (int)Math.Ceiling(-Math.Log10(Factor)), 0, Most);

    /// <summary>
    /// Whether it is of a speed, which is told as finely as it was asked and no finer than a speedometer is read: 20 mph is 32.187 km/h, printed as
    /// 32.2 km/h, and is 20 mph again.
    /// </summary>
    internal bool IsSpeed => Metric == "km/h";

    private int Most => IsSpeed ? 1 : int.MaxValue;
}
