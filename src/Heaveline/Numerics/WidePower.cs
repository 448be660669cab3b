using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>
/// a to the power b by the library's own vector logarithm and exponential: the same bits in lanes of four and of eight, whatever stands beside. In a
/// lane of one or two it is <see cref="Math.Pow"/>, from which it differs by no more than 1e-13 of itself.
/// </summary>
internal static class WidePower
{
    // Where any exponent lies further out the library takes another way, whose last bits differ, for all places: these are worked out apart.
    private const double Most = 700.0;

    /// <summary>The power, place by place.</summary>
    public static Vector256<double> Of(Vector256<double> a, Vector256<double> b)
    {
        var y = b * Vector256.Log(a);
        var within = Vector256.LessThanOrEqual(Vector256.Abs(y), Vector256.Create(Most));
        var power = Vector256.Exp(Vector256.ConditionalSelect(within, y, Vector256<double>.Zero));
        var beyond = Vector256.ConditionalSelect(Vector256.LessThan(y, Vector256<double>.Zero), Vector256<double>.Zero, y * double.PositiveInfinity);
        return Vector256.ConditionalSelect(within, power, beyond);
    }

    /// <summary>The power, place by place.</summary>
    public static Vector512<double> Of(Vector512<double> a, Vector512<double> b)
    {
        var y = b * Vector512.Log(a);
        var within = Vector512.LessThanOrEqual(Vector512.Abs(y), Vector512.Create(Most));
        var power = Vector512.Exp(Vector512.ConditionalSelect(within, y, Vector512<double>.Zero));
        var beyond = Vector512.ConditionalSelect(Vector512.LessThan(y, Vector512<double>.Zero), Vector512<double>.Zero, y * double.PositiveInfinity);
        return Vector512.ConditionalSelect(within, power, beyond);
    }
}
