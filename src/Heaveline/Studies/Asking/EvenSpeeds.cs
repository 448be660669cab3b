namespace Heaveline.Studies;

/// <summary>Speeds at even distances.</summary>
public static class EvenSpeeds
{
    /// <summary>The speeds, m/s, rising.</summary>
    /// <param name="slowest">The first, m/s.</param>
    /// <param name="fastest">The last, m/s.</param>
    /// <param name="count">How many, at least 2.</param>
    public static IReadOnlyList<double> Of(double slowest, double fastest, int count) =>
        [.. Enumerable.Range(0, count).Select(i => slowest + ((fastest - slowest) * i / (count - 1)))];
}
