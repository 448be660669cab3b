using System.Globalization;

namespace Heaveline.Web.Tuning;

/// <summary>
/// Numbers as a person writes them into a file, and the same numbers to compute with: page and file must not differ by what was rounded away.
/// </summary>
internal static class Rounded
{
    /// <summary>A number with so many significant digits.</summary>
    public static double Significant(double value, int digits)
    {
        if (value == 0.0 || !double.IsFinite(value))
        {
            return value;
        }

        var decimals = digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return decimals >= 0 ? Math.Round(value, Math.Min(decimals, 15)) : Math.Round(value / Math.Pow(10.0, -decimals)) * Math.Pow(10.0, -decimals);
    }

    /// <summary>A number in SI units, rounded in a unit so many times as large.</summary>
    /// <param name="si">The number.</param>
    /// <param name="unit">The unit in SI units: 0.001 for mm.</param>
    /// <param name="decimals">Decimals kept in that unit.</param>
    public static double In(double si, double unit, int decimals) => Math.Round(si / unit, decimals) * unit;

    /// <summary>A number without an exponent and without zeros that say nothing.</summary>
    public static string Text(double value) => (value == 0.0 ? 0.0 : value).ToString("0.##########", CultureInfo.InvariantCulture);
}
