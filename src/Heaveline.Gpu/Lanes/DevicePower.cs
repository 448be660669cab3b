using ILGPU;

namespace Heaveline.Gpu.Lanes;

/// <summary>
/// a to the power b for a above zero by arithmetic alone, since a device has no such instruction of double precision: eᵇ ˡⁿ ᵃ, with
/// ln a = n·ln 2 + 2·artanh((m − 1)/(m + 1)), m from √½ to √2, and e from its series about the nearest multiple of ln 2. Both series end where
/// their next term is below the last bit.
/// </summary>
internal static class DevicePower
{
    // ln 2 in two parts, the first of so few digits that its multiples are exact (Cody, Waite, Software Manual for the Elementary Functions, 1980).
    private const double Ln2 = 0.693359375;
    private const double Ln2Rest = -2.121944400546905827679e-4;
    private const double PerLn2 = 1.4426950408889634074;
    private const double RootOfHalf = 0.70710678118654752440;
    private const int Bias = 1023;
    private const int Mantissa = 52;
    private const double Least = -708.0;
    private const double Most = 709.0;

    /// <summary>aᵇ.</summary>
    public static double Of(double a, double b)
    {
        var bits = (long)Interop.FloatAsInt(a);
        var n = (int)(bits >> Mantissa) - Bias;
        var m = Interop.IntAsFloat((ulong)((bits & ((1L << Mantissa) - 1)) | ((long)Bias << Mantissa)));
        if (m > 2.0 * RootOfHalf)
        {
            m *= 0.5;
            n++;
        }

        var x = (m - 1.0) / (m + 1.0);
        var xx = x * x;
        var sum = 1.0 / 21.0;
        sum = (sum * xx) + (1.0 / 19.0);
        sum = (sum * xx) + (1.0 / 17.0);
        sum = (sum * xx) + (1.0 / 15.0);
        sum = (sum * xx) + (1.0 / 13.0);
        sum = (sum * xx) + (1.0 / 11.0);
        sum = (sum * xx) + (1.0 / 9.0);
        sum = (sum * xx) + (1.0 / 7.0);
        sum = (sum * xx) + (1.0 / 5.0);
        sum = (sum * xx) + (1.0 / 3.0);
        var log = (n * Ln2) + ((n * Ln2Rest) + (2.0 * (x + (x * xx * sum))));
        return Exponential(b * log);
    }

    private static double Exponential(double x)
    {
        // Far beyond what any law reaches.
        x = x < Least ? Least : x > Most ? Most : x;
        var n = (int)((x * PerLn2) + (x < 0.0 ? -0.5 : 0.5));
        var r = (x - (n * Ln2)) - (n * Ln2Rest);
        var sum = 1.0 / 6227020800.0;
        sum = (sum * r) + (1.0 / 479001600.0);
        sum = (sum * r) + (1.0 / 39916800.0);
        sum = (sum * r) + (1.0 / 3628800.0);
        sum = (sum * r) + (1.0 / 362880.0);
        sum = (sum * r) + (1.0 / 40320.0);
        sum = (sum * r) + (1.0 / 5040.0);
        sum = (sum * r) + (1.0 / 720.0);
        sum = (sum * r) + (1.0 / 120.0);
        sum = (sum * r) + (1.0 / 24.0);
        sum = (sum * r) + (1.0 / 6.0);
        sum = (sum * r) + 0.5;
        return Interop.IntAsFloat((ulong)((long)(n + Bias) << Mantissa)) * (1.0 + (r + (r * r * sum)));
    }
}
