using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// A profile through measured heights: cubic pieces with the slope at each sample taken from the parabola through it and its neighbours
/// [de Boor, A Practical Guide to Splines, ch. IV, "cubic Bessel interpolation"].
/// </summary>
/// <remarks>
/// Why this and not straight lines: a corner at every sample is a step in the rate of tyre compression, which the sampling never saw and tyre
/// damping turns into force. Why not a spline through all: one wrong height would ring along the whole road. Why not monotone slopes: they
/// flatten every crest that falls between samples. The price is a possible overshoot beside a sharp edge, within the next sample. Across a piece much
/// longer than its neighbour a slope seen on the short one says nothing: there the slopes are held to what keeps the piece between its two samples
/// [Fritsch, Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17, 1980: at most three times the secant, of its sign].
/// </remarks>
internal static class SampledHeights
{
    /// <summary>The fewest samples that say more than one parabola.</summary>
    internal const int Fewest = 4;

    /// <summary>How far a height may lie from the first one, m.</summary>
    internal const double Highest = 10.0;

    /// <summary>How far the last sample may lie from the first one, m: further apart are distances in the wrong unit.</summary>
    internal const double Longest = 1e6;

    // From this many times its neighbour's length on a piece is held between its samples. Common practice, no source.
    private const double Longer = 2.0;

    /// <summary>Where the pieces of a measured road begin, m from its first point.</summary>
    internal static double[] Knots(IReadOnlyList<double> distances)
    {
        var knots = new double[distances.Count];
        for (var i = 0; i < knots.Length; i++)
        {
            knots[i] = distances[i] - distances[0];
        }

        return knots;
    }

    /// <param name="knots">As <see cref="Knots"/> gives them; the profile keeps the array.</param>
    /// <param name="distances">Distances as measured, m.</param>
    /// <param name="heights">Heights, m.</param>
    /// <param name="datum">Taken off every height, m.</param>
    /// <param name="stop">Stops it.</param>
    internal static Profile Draw(
        double[] knots, IReadOnlyList<double> distances, IReadOnlyList<double> heights, double datum, CancellationToken stop)
    {
        Check(distances, heights, stop);
        var last = distances.Count - 1;
        var slopes = Slopes(distances, heights, stop);
        var coefficients = new double[Cubic.Order * (last + 1)];
        for (var i = 0; i < last; i++)
        {
            Pause.At(i, stop);
            Cubic.Write(
                coefficients.AsSpan(Cubic.Order * i, Cubic.Order),
                distances[i + 1] - distances[i],
                heights[i] - datum,
                slopes[i],
                heights[i + 1] - datum,
                slopes[i + 1]);
        }

        coefficients[Cubic.Order * last] = heights[last] - datum;
        return Profile.FromOwnCubics(knots, coefficients);
    }

    private static double[] Slopes(IReadOnlyList<double> x, IReadOnlyList<double> h, CancellationToken stop)
    {
        var slopes = new double[x.Count];
        for (var i = 0; i < slopes.Length; i++)
        {
            Pause.At(i, stop);
            slopes[i] = SlopeAt(x, h, i);
        }

        for (var i = 0; i < slopes.Length - 1; i++)
        {
            var width = x[i + 1] - x[i];
            var shorter = Math.Min(i > 0 ? x[i] - x[i - 1] : width, i + 2 < x.Count ? x[i + 2] - x[i + 1] : width);
            if (width > Longer * shorter)
            {
                var most = 3.0 * (h[i + 1] - h[i]) / width;
                slopes[i] = Math.Clamp(slopes[i], Math.Min(0.0, most), Math.Max(0.0, most));
                slopes[i + 1] = Math.Clamp(slopes[i + 1], Math.Min(0.0, most), Math.Max(0.0, most));
            }
        }

        return slopes;
    }

    // Slope at sample i of the parabola through samples m−1, m, m+1, m being i moved off the ends.
    private static double SlopeAt(IReadOnlyList<double> x, IReadOnlyList<double> h, int i)
    {
        var m = Math.Clamp(i, 1, x.Count - 2);
        var before = (h[m] - h[m - 1]) / (x[m] - x[m - 1]);
        var after = (h[m + 1] - h[m]) / (x[m + 1] - x[m]);
        var curvature = (after - before) / (x[m + 1] - x[m - 1]);
        return before + (curvature * ((2.0 * x[i]) - x[m - 1] - x[m]));
    }

    private static void Check(IReadOnlyList<double> distances, IReadOnlyList<double> heights, CancellationToken stop)
    {
        if (distances.Count < Fewest)
        {
            throw new RefusedValueException(
                "number of measured points", FormattableString.Invariant($"{distances.Count}"), "at least 4", "Measure more points.");
        }

        if (heights.Count != distances.Count)
        {
            throw new RefusedValueException(
                "number of measured heights",
                string.Create(CultureInfo.InvariantCulture, $"{heights.Count}"),
                FormattableString.Invariant($"{distances.Count}, as many as distances"),
                "Give one height for each distance.");
        }

        for (var i = 0; i < distances.Count; i++)
        {
            Pause.At(i, stop);
            var least = i == 0 ? -double.MaxValue : Math.BitIncrement(distances[i - 1]);
            _ = Checked.Within(distances[i], least, double.MaxValue, "Sort the points by distance and keep one of each.", "MeasuredDistance");
            _ = Checked.Within(
                heights[i],
                heights[0] - Highest,
                heights[0] + Highest,
                "Check the unit of the heights, or cut the road into shorter ones.",
                "MeasuredHeight");
        }

        _ = Checked.Within(
            distances[^1] - distances[0], 0.0, Longest, "Check the unit of the distances, or cut the road into shorter ones.", "MeasuredLength");
        if (RoadGap.Among(distances).FirstOrDefault(gap => gap.IsTooWide) is { } gap)
        {
            throw gap.Refusal();
        }
    }
}
