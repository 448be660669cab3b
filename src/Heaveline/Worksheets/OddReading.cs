using Heaveline.Numerics;

namespace Heaveline.Worksheets;

/// <summary>The one reading that a straight fit cannot bear while it holds all others: a misread one.</summary>
internal static class OddReading
{
    // A twentieth of the squares left without it, and a miss of a quarter of what the others span: far from any scatter. Our choice.
    private const double Fall = 20.0;
    private const double Part = 0.25;

    /// <summary>Its place; null where there is none, or where too few readings are left to tell which.</summary>
    /// <param name="rows">One row per reading.</param>
    /// <param name="force">The forces, N.</param>
    /// <param name="reading">Standard deviation of reading one of them, N.</param>
    /// <param name="squares">Squares that the chosen shape leaves with all readings, N².</param>
    public static int? Of(IReadOnlyList<double[]> rows, IReadOnlyList<double> force, double reading, double squares)
    {
        if (rows.Count - 1 <= rows[0].Length)
        {
            return null;
        }

        var without = Enumerable.Range(0, rows.Count)
            .Select(k => (Place: k, Fit: new LeastSquares([.. rows.Where((_, i) => i != k)], [.. force.Where((_, i) => i != k)])))
            .MinBy(w => w.Fit.SumOfSquares);
        double[] others = [.. force.Where((_, i) => i != without.Place)];
        var miss = Math.Abs(force[without.Place] - rows[without.Place].Zip(without.Fit.Coefficients, (a, c) => a * c).Sum());
        return squares > Fall * Math.Max(without.Fit.SumOfSquares, without.Fit.Freedom * reading * reading)
            && miss > Part * (others.Max() - others.Min())
            ? without.Place
            : null;
    }
}
