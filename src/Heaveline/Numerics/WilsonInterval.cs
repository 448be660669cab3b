namespace Heaveline.Numerics;

/// <summary>
/// Between which shares a share lies that was counted in draws [Wilson, Probable inference, the law of succession, and statistical inference, 1927].
/// It never leaves 0 to 1, and holds for few draws and for shares near an end.
/// </summary>
/// <param name="Low">Lower end (–).</param>
/// <param name="High">Upper end (–).</param>
internal readonly record struct WilsonInterval(double Low, double High)
{
    // The normal number that 95 % lie below: the interval holds the share 9 times out of 10.
    private const double Normal95 = 1.6448536269514722;

    /// <summary>The interval that holds the share 9 times out of 10.</summary>
    /// <param name="count">In how many draws it was so.</param>
    /// <param name="draws">Of how many, at least 1.</param>
    public static WilsonInterval Of(int count, int draws)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, draws);
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        var (share, z2) = (count / (double)draws, Normal95 * Normal95);
        var middle = (share + (z2 / (2.0 * draws))) / (1.0 + (z2 / draws));
        var half = Normal95 / (1.0 + (z2 / draws)) * Math.Sqrt((share * (1.0 - share) / draws) + (z2 / (4.0 * draws * (double)draws)));
        return new(count == 0 ? 0.0 : middle - half, count == draws ? 1.0 : middle + half);
    }
}
