namespace Heaveline.Worksheets;

/// <summary>
/// Doubt of a result from the doubts of independent inputs: each input moved by its half-width both ways, the parts added in squares (GUM, JCGM
/// 100:2008, 5.1.3 note 2).
/// </summary>
internal static class DoubtBudget
{
    /// <summary>Half-width of the result that each input's half-width makes.</summary>
    public static double[] Parts(Func<double[], double> of, double[] inputs, double[] halfWidths) =>
        [.. inputs.Select(
            (_, k) => halfWidths[k] > 0.0 ? 0.5 * Math.Abs(of(Moved(inputs, k, halfWidths[k])) - of(Moved(inputs, k, -halfWidths[k]))) : 0.0)];

    /// <summary>All parts together.</summary>
    public static double Of(Func<double[], double> of, double[] inputs, double[] halfWidths) =>
        Math.Sqrt(Parts(of, inputs, halfWidths).Sum(p => p * p));

    private static double[] Moved(double[] inputs, int k, double by)
    {
        double[] moved = [.. inputs];
        moved[k] += by;
        return moved;
    }
}
