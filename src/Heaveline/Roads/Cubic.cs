namespace Heaveline.Roads;

/// <summary>
/// The pieces a <see cref="Profile"/> is made of: c0 + c1 d + c2 d² + c3 d³, four coefficients in a row, d from the piece's own knot.
/// </summary>
internal static class Cubic
{
    /// <summary>Coefficients per piece.</summary>
    internal const int Order = 4;

    /// <summary>Appends the cubic that meets heights and slopes at both ends of a piece (cubic Hermite interpolation).</summary>
    /// <param name="coefficients">Receives c0, c1, c2, c3.</param>
    /// <param name="width">Width of the piece, m, above zero.</param>
    /// <param name="h0">Height at its start, m.</param>
    /// <param name="s0">Slope at its start (–).</param>
    /// <param name="h1">Height at its end, m.</param>
    /// <param name="s1">Slope at its end (–).</param>
    internal static void Append(List<double> coefficients, double width, double h0, double s0, double h1, double s1)
    {
        Span<double> c = stackalloc double[Order];
        Write(c, width, h0, s0, h1, s1);
        coefficients.AddRange(c);
    }

    /// <summary>The same, written over four coefficients.</summary>
    internal static void Write(Span<double> coefficients, double width, double h0, double s0, double h1, double s1)
    {
        var secant = (h1 - h0) / width;
        coefficients[0] = h0;
        coefficients[1] = s0;
        coefficients[2] = ((3.0 * secant) - (2.0 * s0) - s1) / width;
        coefficients[3] = (s0 + s1 - (2.0 * secant)) / (width * width);
    }

    /// <summary>Last piece that begins at or before <paramref name="x"/>; −1 before the first.</summary>
    internal static int PieceAt(ReadOnlySpan<double> knots, double x)
    {
        var low = 0;
        var high = knots.Length;
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            (low, high) = knots[middle] <= x ? (middle + 1, high) : (low, middle);
        }

        return low - 1;
    }

    /// <summary>Height of piece <paramref name="i"/> at <paramref name="d"/> metres past its knot.</summary>
    internal static double Height(ReadOnlySpan<double> coefficients, int i, double d)
    {
        var c = coefficients.Slice(Order * i, Order);
        return c[0] + (d * (c[1] + (d * (c[2] + (d * c[3])))));
    }

    /// <summary>Slope of piece <paramref name="i"/> at <paramref name="d"/> metres past its knot.</summary>
    internal static double Slope(ReadOnlySpan<double> coefficients, int i, double d)
    {
        var c = coefficients.Slice(Order * i, Order);
        return c[1] + (d * ((2.0 * c[2]) + (d * 3.0 * c[3])));
    }

    /// <summary>Integral of piece <paramref name="i"/> from its knot to <paramref name="d"/> metres past it, m².</summary>
    internal static double Area(ReadOnlySpan<double> coefficients, int i, double d)
    {
        var c = coefficients.Slice(Order * i, Order);
        return d * (c[0] + (d * ((c[1] / 2.0) + (d * ((c[2] / 3.0) + (d * c[3] / 4.0))))));
    }

    /// <summary>
    /// How many Hermite pieces keep a curve within <paramref name="tolerance"/>: the error of one of width w is at most
    /// w⁴ max|f⁗| / 384 [de Boor, A Practical Guide to Splines, ch. IV].
    /// </summary>
    internal static int Pieces(double width, double fourthDerivative, double tolerance) =>
        Math.Max(1, (int)Math.Ceiling(width * Math.Pow(Math.Abs(fourthDerivative) / (384.0 * tolerance), 0.25)));
}
