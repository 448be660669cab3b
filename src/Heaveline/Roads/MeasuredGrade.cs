namespace Heaveline.Roads;

/// <summary>
/// The hill under a measured road: a straight line from its first point to its last, midway between the tracks. A car stands and rides level with the
/// hill; driven as unevenness it would be a kink at either end of the road, which nobody measured.
/// </summary>
/// <param name="Slope">Rise per distance (–); 0 where nothing is taken off.</param>
public sealed record MeasuredGrade(double Slope)
{
    // What rises over less is an obstacle, whose change of level is driven; so flat a hill turns a car by less than 0.03°. Common practice, no
    // source.
    private const double ShortestHill = 50.0;
    private const double FlattestHill = 5e-4;

    /// <summary>Whether a slope is taken off at all.</summary>
    public bool IsHill => Slope != 0.0;

    /// <summary>The hill of a road: none under 50 m of length or below 0.05 %.</summary>
    /// <param name="distances">Distance of each point, m, growing, shape (n).</param>
    /// <param name="left">Heights of the left track, m, shape (n).</param>
    /// <param name="right">Heights of the right track, m, shape (n); null when both wheels run in one track.</param>
    public static MeasuredGrade Of(IReadOnlyList<double> distances, IReadOnlyList<double> left, IReadOnlyList<double>? right)
    {
        ArgumentNullException.ThrowIfNull(distances);
        ArgumentNullException.ThrowIfNull(left);
        if (distances.Count < 2 || distances[^1] - distances[0] is var length && !(length >= ShortestHill))
        {
            return new MeasuredGrade(0.0);
        }

        var rise = left[^1] - left[0];
        rise = right is null ? rise : 0.5 * (rise + right[^1] - right[0]);
        var slope = rise / (distances[^1] - distances[0]);
        return new MeasuredGrade(Math.Abs(slope) >= FlattestHill && double.IsFinite(slope) ? slope : 0.0);
    }

    /// <summary>A height less the hill's, m.</summary>
    /// <param name="height">The height, m.</param>
    /// <param name="along">Distance from the road's first point, m.</param>
    public double Without(double height, double along) => height - (Slope * along);
}
