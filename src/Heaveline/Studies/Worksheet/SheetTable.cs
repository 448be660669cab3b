using System.Globalization;
using Heaveline.Answers;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A worked sheet's values beside their doubts.</summary>
internal sealed class SheetTable(string title)
{
    // A doubt below the last place that is written is the rounding of none.
    private const double Least = 1e-9;

    /// <summary>The table so far.</summary>
    public FactTable Facts { get; } = new(title, ["value", "±"]);

    /// <summary>
    /// An amount as a car file takes it: the doubt to two digits, the value to the doubt's last place; without a doubt the value to four digits,
    /// and to a tenth at least.
    /// </summary>
    /// <param name="amount">The amount.</param>
    /// <param name="unit">Its unit; blank for a plain number.</param>
    public static string Text<T>(Amount<T> amount, string unit)
        where T : struct, IDimension
    {
        var own = unit.Length > 0 ? Units.Of<T>(unit) : null;
        var (value, doubt) = (own?.FromSi(amount.Si) ?? amount.Si, own?.FromSi(amount.Doubt.HalfWidth) ?? amount.Doubt.HalfWidth);
        if (doubt < Least)
        {
            var places = value == 0.0 ? 1 : (int)Math.Clamp(3.0 - Math.Floor(Math.Log10(Math.Abs(value))), 1.0, 4.0);
            return $"{Math.Round(value, places).ToString("0.####", CultureInfo.InvariantCulture)} {unit}".TrimEnd();
        }

        string Written(double number) => number.ToString($"F{Numeral.Decimals(doubt, 9)}", CultureInfo.InvariantCulture);
        return $"{$"{Written(value)} {unit}".TrimEnd()} ± {Written(doubt)}";
    }

    /// <summary>Adds an amount in a unit.</summary>
    public SheetTable Add<T>(string key, string label, string unit, string format, Amount<T> amount)
        where T : struct, IDimension
    {
        var own = unit.Length > 0 ? Units.Of<T>(unit) : null;
        double Shown(double si) => own?.FromSi(si) ?? si;
        Facts.Add(key, label, own is null ? "–" : unit, format, [Shown(amount.Si), amount.Doubt.IsStated ? Shown(amount.Doubt.HalfWidth) : null]);
        return this;
    }

    /// <summary>Adds a number without a doubt.</summary>
    public SheetTable Add(string key, string label, string unit, string format, double? value)
    {
        Facts.Add(key, label, unit, format, [value, null]);
        return this;
    }
}
