using Heaveline.Numerics;

namespace Heaveline.Measures;

/// <summary>One piece of a <see cref="Curve"/>, between two samples: the cubic c₀ + c₁s + c₂s² + c₃s³, s from 0 to 1.</summary>
internal readonly record struct CurvePiece(double C0, double C1, double C2, double C3)
{
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
        var piece = LanePiece<ScalarLane>.Of(new(value), new(next), new(second), new(secondNext));
        return new(piece.C0.Value, piece.C1.Value, piece.C2.Value, piece.C3.Value);
    }

    /// <summary>The value at s.</summary>
    public double At(double s) => C0 + (s * (C1 + (s * (C2 + (s * C3)))));

    /// <summary>∫x² ds over the piece.</summary>
    public double SquareIntegral() => new LanePiece<ScalarLane>(new(C0), new(C1), new(C2), new(C3)).SquareIntegral().Value;

    /// <summary>∫x² ds from 0 to s.</summary>
    public double SquareIntegral(double s) => s * new CurvePiece(C0, C1 * s, C2 * s * s, C3 * s * s * s).SquareIntegral();
}
