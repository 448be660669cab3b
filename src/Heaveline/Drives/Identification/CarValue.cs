using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Drives.Identification;

/// <summary>Bounds of what is known before a car is identified.</summary>
internal static class CarValue
{
    /// <summary>The value, finite and above a bound.</summary>
    /// <exception cref="RefusedValueException">It is not.</exception>
    public static double Above(double value, double bound, string name) => value > bound && double.IsFinite(value)
        ? value
        : throw new RefusedValueException(
            name, value.ToString("G6", CultureInfo.InvariantCulture), string.Create(CultureInfo.InvariantCulture, $"above {bound:G6}"), "");
}
