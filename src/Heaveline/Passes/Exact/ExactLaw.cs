using Heaveline.Elements;

namespace Heaveline.Passes.Exact;

/// <summary>
/// A piecewise straight law as its pieces, in changes from where it stands at trim: force = slope·x + constant between two borders. The piece at trim
/// has constant zero, so a car at rest stays exactly at rest.
/// </summary>
internal sealed class ExactLaw
{
    private ExactLaw(double[] borders, double[] slopes, double[] constants, int atTrim)
    {
        Borders = borders;
        Slopes = slopes;
        Constants = constants;
        AtTrim = atTrim;
    }

    /// <summary>Where the slope changes, rising, shape (n).</summary>
    public double[] Borders { get; }

    /// <summary>Slope of each piece, shape (n + 1).</summary>
    public double[] Slopes { get; }

    /// <summary>Constant of each piece, N, shape (n + 1).</summary>
    public double[] Constants { get; }

    /// <summary>The piece in which the law stands at trim.</summary>
    public int AtTrim { get; }

    /// <summary>A law of straight pieces about x = <paramref name="trim"/>.</summary>
    /// <param name="law">The law.</param>
    /// <param name="trim">x at trim.</param>
    public static ExactLaw From(StraightLaw law, double trim)
    {
        var bends = new SortedDictionary<double, double>();
        var below = law.Slope;
        foreach (var (at, bend) in law.Opening)
        {
            Add(bends, at - trim, bend);
        }

        foreach (var (at, bend) in law.Closing)
        {
            // b·min(x, xⱼ) is b·x below its hinge and constant above.
            below += bend;
            Add(bends, at - trim, -bend);
        }

        var borders = bends.Keys.ToArray();
        var slopes = new double[borders.Length + 1];
        slopes[0] = below;
        for (var j = 0; j < borders.Length; j++)
        {
            slopes[j + 1] = slopes[j] + bends[borders[j]];
        }

        return new ExactLaw(borders, slopes, Joined(borders, slopes, out var atTrim), atTrim);
    }

    // A hinge of no weight is none.
    private static void Add(SortedDictionary<double, double> bends, double at, double bend)
    {
        if (bend != 0.0)
        {
            bends[at] = bends.GetValueOrDefault(at) + bend;
        }
    }

    // Constants that make the pieces meet, outwards from the piece at x = 0.
    private static double[] Joined(double[] borders, double[] slopes, out int atTrim)
    {
        var constants = new double[slopes.Length];
        atTrim = borders.Count(border => border <= 0.0);
        for (var j = atTrim; j < borders.Length; j++)
        {
            constants[j + 1] = constants[j] + ((slopes[j] - slopes[j + 1]) * borders[j]);
        }

        for (var j = atTrim - 1; j >= 0; j--)
        {
            constants[j] = constants[j + 1] + ((slopes[j + 1] - slopes[j]) * borders[j]);
        }

        return constants;
    }
}
