namespace Heaveline.Numerics;

/// <summary>A polynomial as its coefficients in rising powers, evaluated by Horner's rule.</summary>
internal static class Polynomial
{
    /// <summary>p(t).</summary>
    public static double Value(ReadOnlySpan<double> p, double t)
    {
        var value = p[^1];
        for (var k = p.Length - 2; k >= 0; k--)
        {
            value = (value * t) + p[k];
        }

        return value;
    }

    /// <summary>p′(t).</summary>
    public static double Slope(ReadOnlySpan<double> p, double t)
    {
        var slope = 0.0;
        for (var k = p.Length - 1; k >= 1; k--)
        {
            slope = (slope * t) + (k * p[k]);
        }

        return slope;
    }
}
