namespace Heaveline.Drives.Recovery;

/// <summary>A value with the ends between which it lies nine times in ten.</summary>
/// <param name="Value">The value.</param>
/// <param name="Low">The lower end.</param>
/// <param name="High">The upper end.</param>
public readonly record struct Bracket(double Value, double Low, double High)
{
    /// <summary>Half of its width.</summary>
    public double HalfWidth => 0.5 * (High - Low);

    /// <summary>Whether a number lies within it.</summary>
    public bool Holds(double number) => number >= Low && number <= High;

    /// <summary>A value with the 5th and the 95th of a hundred draws; the value alone where there are none.</summary>
    /// <param name="value">The value.</param>
    /// <param name="draws">Draws of it, in any order, none of them not a number.</param>
    public static Bracket Of(double value, IReadOnlyList<double> draws)
    {
        ArgumentNullException.ThrowIfNull(draws);
        if (draws.Count == 0)
        {
            return new(value, value, value);
        }

        double[] sorted = [.. draws.Order()];
        return new(value, Share(0.05), Share(0.95));

        double Share(double share)
        {
            var at = share * (sorted.Length - 1);
            var below = (int)Math.Floor(at);
            var above = Math.Min(below + 1, sorted.Length - 1);
            return sorted[below] + ((at - below) * (sorted[above] - sorted[below]));
        }
    }
}
