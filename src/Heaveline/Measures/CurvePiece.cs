namespace Heaveline.Measures;

/// <summary>One piece of a <see cref="Curve"/>, between two samples: the cubic c₀ + c₁s + c₂s² + c₃s³, s from 0 to 1.</summary>
internal readonly record struct CurvePiece(double C0, double C1, double C2, double C3)
{
    // A division costs as much as all the rest of a piece.
    private const double Third = 1.0 / 3.0;
    private const double Fifth = 1.0 / 5.0;
    private const double Sixth = 1.0 / 6.0;
    private const double Seventh = 1.0 / 7.0;

    /// <summary>Where the slope changes its sign, 0 to 1; null when it does not.</summary>
    public double? Turn
    {
        get
        {
            var after = C1 + (2.0 * C2) + (3.0 * C3);
            if (!((C1 > 0.0 && after <= 0.0) || (C1 < 0.0 && after >= 0.0)))
            {
                return null;
            }

            // c₁ + 2c₂s + 3c₃s² = 0, by the form that loses no digits when c₃ is small: between slopes of two signs there is one root.
            var root = Math.Sqrt(Math.Max(0.0, (C2 * C2) - (3.0 * C1 * C3)));
            return Math.Clamp(C1 / (Math.CopySign(root, C1) - C2), 0.0, 1.0);
        }
    }

    /// <summary>Through two values with the second differences there: with both of one smooth curve it is the cubic through four samples.</summary>
    public static CurvePiece Of(double value, double next, double second, double secondNext)
    {
        // The larger is so changed that the mean of both is their harmonic mean, or nothing where they bend opposite ways.
        var harmonic = second * secondNext > 0.0 ? 4.0 * second * secondNext / (second + secondNext) : 0.0;
        var begins = Math.Abs(second) <= Math.Abs(secondNext);
        var (p, q) = (begins ? second : harmonic - secondNext, begins ? harmonic - second : secondNext);
        return new(value, next - value - (Sixth * ((2.0 * p) + q)), 0.5 * p, Sixth * (q - p));
    }

    /// <summary>The value at s.</summary>
    public double At(double s) => C0 + (s * (C1 + (s * (C2 + (s * C3)))));

    /// <summary>∫x² ds over the piece.</summary>
    public double SquareIntegral() =>
        (C0 * (C0 + C1)) + (Third * ((C1 * C1) + (2.0 * C0 * C2) + (C2 * C3))) + (0.5 * ((C0 * C3) + (C1 * C2)))
        + (Fifth * ((C2 * C2) + (2.0 * C1 * C3))) + (Seventh * C3 * C3);

    /// <summary>∫x² ds from 0 to s.</summary>
    public double SquareIntegral(double s) => s * new CurvePiece(C0, C1 * s, C2 * s * s, C3 * s * s * s).SquareIntegral();
}
