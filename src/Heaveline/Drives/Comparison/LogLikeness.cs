using System.Collections.Immutable;

namespace Heaveline.Drives.Comparison;

/// <summary>Whether two logs are of one drive: one cut out of the other, or exported again with other digits or another start.</summary>
/// <remarks>
/// Blocks of successive samples, spread evenly over the shorter log, are sought in the longer. No two drives shake a phone alike to a hundredth of a
/// m/s² for a third of a second. The share, the tolerance and the number of blocks are proposals of this program.
/// </remarks>
internal static class LogLikeness
{
    private const double Share = 0.9;
    private const int Blocks = 40;
    private const int Rows = 32;

    // Digits are cut off in an export, and standard gravity is written as 9.81, m/s².
    private const double Tolerance = 0.008;

    // What shakes less may be like any other standstill, m/s².
    private const double LeastRange = 0.3;

    /// <summary>Whether the samples of one are those of the other for nine tenths of the time or more.</summary>
    /// <param name="one">A log.</param>
    /// <param name="other">Another.</param>
    public static bool IsOneDrive(Log one, Log other)
    {
        if (Force(one) is not { } a || Force(other) is not { } b || a.Kind != b.Kind || a.Values.Length != b.Values.Length)
        {
            return false;
        }

        var (few, many) = a.Values[0].Length <= b.Values[0].Length ? (a.Values, b.Values) : (b.Values, a.Values);
        var (found, sought) = (0, 0);
        var starts = few[0].Length - Rows;
        foreach (var from in Enumerable.Range(0, Blocks).Select(k => (int)((long)k * starts / (Blocks - 1))).Where(i => i >= 0).Distinct())
        {
            if (!few.Any(column => Range(column.AsSpan(from, Rows)) > LeastRange))
            {
                continue;
            }

            sought++;
            found += IsIn(few, from, many) ? 1 : 0;
        }

        return (sought > 0 && found > Share * sought) || IsShakenAlike(a, b);
    }

    // Exported at another rate, or smoothed.
    private static bool IsShakenAlike(SensorTrack a, SensorTrack b) =>
        TimedTrack.Of(a) is { } one && TimedTrack.Of(b) is { } other && ShakenLike.Of(one.Times, one.Values) is { } first
        && ShakenLike.Of(other.Times, other.Values) is { } second && ShakenLike.IsOneDrive(first, second);

    private static SensorTrack? Force(Log log) => log.Of(SensorKind.Acceleration) ?? log.Of(SensorKind.AccelerationWithoutGravity);

    private static double Range(ReadOnlySpan<double> values)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var value in values)
        {
            (low, high) = (Math.Min(low, value), Math.Max(high, value));
        }

        return high - low;
    }

    private static bool IsIn(ImmutableArray<ImmutableArray<double>> few, int from, ImmutableArray<ImmutableArray<double>> many)
    {
        for (var at = 0; at + Rows <= many[0].Length; at++)
        {
            var row = 0;
            while (row < Rows && IsLike(few, from + row, many, at + row))
            {
                row++;
            }

            if (row == Rows)
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsLike(ImmutableArray<ImmutableArray<double>> few, int i, ImmutableArray<ImmutableArray<double>> many, int j)
    {
        for (var k = 0; k < few.Length; k++)
        {
            if (!(Math.Abs(few[k][i] - many[k][j]) <= Tolerance))
            {
                return false;
            }
        }

        return true;
    }
}
