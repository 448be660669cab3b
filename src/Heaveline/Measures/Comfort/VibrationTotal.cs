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

    /// <summary>
    /// Total for health, seat translations only (k = 1.4, 1.4, 1). Clause 7.2.2 judges the largest of the axes; see <see cref="WorstForHealth"/>.
    /// </summary>
    /// <param name="axes">Seat x, y, z, each at most once, at least one.</param>
    public static VibrationTotal ForHealth(IReadOnlyList<AxisRms> axes)
    {
        CheckHealth(axes);
        var value = RootSumOfSquares(axes.Select(axis => axis.At.HealthFactor!.Value * axis.Rms));
        return new(value, [.. axes], [new(MeasuringPoint.Seat, false, value)], Without(axes, PointAxis.All.Where(at => at.HealthFactor is not null)));
    }

    /// <summary>The largest k·a_w of the seat's axes for health, and its axis (7.2 and annex B, after a public transcription).</summary>
    /// <param name="axes">Seat x, y, z, each at most once, at least one.</param>
    public static (PointAxis At, double Value) WorstForHealth(IReadOnlyList<AxisRms> axes)
    {
        CheckHealth(axes);
        var worst = axes.MaxBy(axis => axis.At.HealthFactor!.Value * axis.Rms)!;
        return (worst.At, worst.At.HealthFactor!.Value * worst.Rms);
    }

    private static void CheckHealth(IReadOnlyList<AxisRms> axes)
    {
        CheckOnce(axes);
        foreach (var axis in axes)
        {
            if (axis.At.HealthFactor is null)
            {
                throw new RefusedValueException(
                    "axis for health", axis.At.Words, "seat x, y or z", "The health evaluation takes the seat's translations only.");
            }
        }
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
