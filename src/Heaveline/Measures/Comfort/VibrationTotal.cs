using Heaveline.Quantities;

namespace Heaveline.Measures.Comfort;

/// <summary>
/// Vibration total value, ISO 2631-1 equation (10): a_v = √(Σ k_j² a_wj²) at each point; the points are joined by root sum of squares (after a
/// public transcription). It says which of the twelve axes were not given, since a total over fewer axes is smaller.
/// </summary>
public sealed record VibrationTotal
{
    private VibrationTotal(double value, IReadOnlyList<AxisRms> axes, IReadOnlyList<PointTotal> points, IReadOnlyList<PointAxis> absent)
    {
        Value = value;
        Axes = axes;
        Points = points;
        Absent = absent;
    }

    /// <summary>The total over everything given, m/s².</summary>
    public double Value { get; }

    /// <summary>What it was made of.</summary>
    public IReadOnlyList<AxisRms> Axes { get; }

    /// <summary>Total of each point given, in the order of <see cref="PointAxis.All"/>.</summary>
    public IReadOnlyList<PointTotal> Points { get; }

    /// <summary>The axes that were not given.</summary>
    public IReadOnlyList<PointAxis> Absent { get; }

    /// <summary>Total for comfort over any of the twelve axes (k = 1, 1, 1 at the seat).</summary>
    /// <param name="axes">Each axis at most once, at least one.</param>
    public static VibrationTotal ForComfort(IReadOnlyList<AxisRms> axes)
    {
        CheckOnce(axes);
        List<PointTotal> points = [];
        foreach (var group in PointAxis.All.Select(at => (at.Point, at.IsRotation)).Distinct())
        {
            var members = axes.Where(axis => (axis.At.Point, axis.At.IsRotation) == group).ToList();
            if (members.Count > 0)
            {
                points.Add(new(group.Point, group.IsRotation, RootSumOfSquares(members.Select(axis => axis.ForComfort))));
            }
        }

        return new(RootSumOfSquares(points.Select(point => point.Value)), [.. axes], points, Without(axes, PointAxis.All));
    }

    private static void CheckOnce(IReadOnlyList<AxisRms> axes)
    {
        if (axes.Count == 0)
        {
            throw new RefusedValueException("number of axes", "0", "at least 1", "Give the weighted r.m.s. of an axis.");
        }

        var seen = new HashSet<PointAxis>();
        foreach (var axis in axes)
        {
            if (!seen.Add(axis.At))
            {
                throw new RefusedValueException("axis", axis.At.Words + ", given twice", "given once", "Give each axis once.");
            }
        }
    }

    private static double RootSumOfSquares(IEnumerable<double> values) => Math.Sqrt(values.Sum(value => value * value));

    private static PointAxis[] Without(IReadOnlyList<AxisRms> axes, IEnumerable<PointAxis> wanted) =>
        [.. wanted.Where(at => axes.All(axis => axis.At != at))];
}
