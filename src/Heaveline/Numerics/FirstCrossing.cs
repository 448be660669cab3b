namespace Heaveline.Numerics;

/// <summary>
/// The first time at which a polynomial falls below zero. Nothing is overlooked: an interval is dropped only when a bound of the second derivative
/// proves that no root lies in it, else it is halved (the bounds of a chord and of a slope by the mean value theorem).
/// </summary>
internal static class FirstCrossing
{
    // An interval halved this often is narrower than the doubles around it.
    private const int Deepest = 60;

    /// <summary>Earliest t in [0, end] with p(t) below zero, s; 0 when p(0) is below zero already, infinite when there is none.</summary>
    /// <param name="p">Coefficients p₀, p₁, …, rising powers.</param>
    /// <param name="end">End of the interval, 0 or above.</param>
    /// <exception cref="ArgumentException">A coefficient that is not a finite number.</exception>
    public static double Below(ReadOnlySpan<double> p, double end)
    {
        if (p[0] < 0.0)
        {
            return 0.0;
        }

        var reach = 0.0;
        var curvature = 0.0;
        for (var k = p.Length - 1; k >= 1; k--)
        {
            reach = (reach + Math.Abs(p[k])) * end;
            if (k >= 2)
            {
                curvature = (curvature * end) + (k * (k - 1) * Math.Abs(p[k]));
            }
        }

        if (!double.IsFinite(p[0] + reach + curvature))
        {
            throw new ArgumentException("The polynomial must have finite coefficients.", nameof(p));
        }

        return p[0] > reach ? double.PositiveInfinity : Search(p, 0.0, p[0], end, Polynomial.Value(p, end), curvature, 0);
    }

    // p(a) is not below zero.
    private static double Search(ReadOnlySpan<double> p, double a, double atA, double b, double atB, double curvature, int depth)
    {
        var width = b - a;
        if (Math.Min(atA, atB) >= curvature * width * width / 8.0)
        {
            return double.PositiveInfinity;
        }

        var middle = a + (0.5 * width);
        var isMonotone = Math.Abs(Polynomial.Slope(p, middle)) > 0.5 * curvature * width;
        if (isMonotone || depth == Deepest)
        {
            return atB < 0.0 ? Root(p, a, b) : double.PositiveInfinity;
        }

        var atMiddle = Polynomial.Value(p, middle);
        var left = Search(p, a, atA, middle, atMiddle, curvature, depth + 1);
        return atMiddle < 0.0 || double.IsFinite(left) ? left : Search(p, middle, atMiddle, b, atB, curvature, depth + 1);
    }

    // Newton's method kept inside a shrinking bracket with p(a) ≥ 0 > p(b).
    private static double Root(ReadOnlySpan<double> p, double a, double b)
    {
        var x = 0.5 * (a + b);
        for (var pass = 0; pass < 200; pass++)
        {
            var value = Polynomial.Value(p, x);
            (a, b) = value < 0.0 ? (a, x) : (x, b);
            var next = x - (value / Polynomial.Slope(p, x));
            if (!(next > a && next < b))
            {
                next = 0.5 * (a + b);
            }

            if (next == x || next <= a || next >= b)
            {
                break;
            }

            var settled = Math.Abs(next - x) <= 1e-16;
            x = next;
            if (settled)
            {
                break;
            }
        }

        return x;
    }
}
