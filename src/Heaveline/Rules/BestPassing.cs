namespace Heaveline.Rules;

/// <summary>Where over speed the best value of a map passes or touches a given value.</summary>
/// <param name="From">The speed before, m/s.</param>
/// <param name="To">The speed after, m/s; the same one where the best value is the given one there.</param>
/// <param name="Near">Between them, straight between the best values, m/s; null where one of these lies at the edge of the values computed.</param>
public sealed record BestPassing(double From, double To, double? Near)
{
    /// <summary>The best value touches a value where the two are no further apart (–, of the value).</summary>
    internal const double Touch = 0.005;

    internal static IEnumerable<BestPassing> Of(IReadOnlyList<double> speeds, IReadOnlyList<BestValue?> best, double value)
    {
        // What lies within rounding of the value is on it: neither above nor below.
        int? SideAt(int i) => best[i] switch
        {
            null => null,
            { AtEdge: false } b when Math.Abs(b.Value - value) <= Touch * Math.Abs(value) => 0,
            { } b => Math.Sign(b.Value - value),
        };
        for (var i = 0; i < speeds.Count; i++)
        {
            if (SideAt(i) == 0)
            {
                yield return new BestPassing(speeds[i], speeds[i], speeds[i]);
            }
            else if (i > 0 && SideAt(i) * SideAt(i - 1) < 0)
            {
                var (a, b) = (best[i - 1]!, best[i]!);
                var near = speeds[i - 1] + ((speeds[i] - speeds[i - 1]) * (value - a.Value) / (b.Value - a.Value));
                yield return new BestPassing(speeds[i - 1], speeds[i], a.AtEdge || b.AtEdge ? null : near);
            }
        }
    }
}
