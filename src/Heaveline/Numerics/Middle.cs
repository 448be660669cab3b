namespace Heaveline.Numerics;

/// <summary>The median.</summary>
internal static class Middle
{
    /// <summary>The middle value, or the mean of the middle two.</summary>
    /// <param name="values">At least one.</param>
    public static double Of(IReadOnlyCollection<double> values)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        return 0.5 * (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]);
    }
}
