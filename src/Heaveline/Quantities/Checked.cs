using System.Globalization;
using System.Runtime.CompilerServices;

namespace Heaveline.Quantities;

/// <summary>
/// The checks that stand in the <c>init</c> accessors of records. Each returns its argument or throws <see cref="RefusedValueException"/>.
/// </summary>
public static class Checked
{
    /// <summary>Finite and above zero.</summary>
    public static Amount<TDimension> Positive<TDimension>(Amount<TDimension> value, string advice, [CallerMemberName] string what = "")
        where TDimension : struct, IDimension =>
        value.Si > 0.0 && double.IsFinite(value.Si)
            ? value
            : throw Refusal(what, Said(value), $"above 0 {TDimension.Symbol}".TrimEnd(), advice, least: 0.0, isOpenBelow: true);

    /// <summary>Finite, zero or above.</summary>
    public static Amount<TDimension> NotNegative<TDimension>(Amount<TDimension> value, string advice, [CallerMemberName] string what = "")
        where TDimension : struct, IDimension =>
        value.Si >= 0.0 && double.IsFinite(value.Si)
            ? value
            : throw Refusal(what, Said(value), $"0 {TDimension.Symbol}".TrimEnd() + " or above", advice, least: 0.0);

    /// <summary>Finite.</summary>
    public static Amount<TDimension> Finite<TDimension>(Amount<TDimension> value, string advice, [CallerMemberName] string what = "")
        where TDimension : struct, IDimension =>
        double.IsFinite(value.Si)
            ? value
            : throw Refusal(what, Said(value), "a finite number", advice, least: double.NegativeInfinity);

    /// <summary>Inside a closed range given in SI units.</summary>
    public static Amount<TDimension> Within<TDimension>(
        Amount<TDimension> value, double low, double high, string advice, [CallerMemberName] string what = "")
        where TDimension : struct, IDimension =>
        value.Si >= low && value.Si <= high
            ? value
            : throw Refusal(
                what, Said(value), $"between {Plain(low)} and {Plain(high)} {TDimension.Symbol}".TrimEnd(), advice, low, high);

    /// <summary>A plain number inside a closed range.</summary>
    public static double Within(
        double value, double low, double high, string advice = "Give a number inside the limits.", [CallerMemberName] string what = "") =>
        value >= low && value <= high
            ? value
            : throw Refusal(what, Plain(value), $"between {Plain(low)} and {Plain(high)}", advice, low, high);

    /// <summary>A text that is not blank.</summary>
    public static string NotBlank(string value, string advice, [CallerMemberName] string what = "") =>
        string.IsNullOrWhiteSpace(value) ? throw Refusal(what, "blank", "some text", advice) : value;

    private static RefusedValueException Refusal(
        string property, string value, string limit, string advice, double? least = null, double? most = null, bool isOpenBelow = false) =>
        new(Words(property), value, limit, advice) { Property = property, Least = least, Most = most, IsOpenBelow = isOpenBelow };

    // A refused value's doubt tells nothing. What was too large for a number when it was turned into SI units has no size to be told.
    private static string Said<TDimension>(Amount<TDimension> value)
        where TDimension : struct, IDimension =>
        double.IsFinite(value.Si) ? value.WithDoubt(0.0).ToString() : "beyond the numbers that can be computed with";

    private static string Plain(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    // "UnsprungMass" → "unsprung mass": the record's own property names the value for the reader.
    private static string Words(string member)
    {
        var text = new System.Text.StringBuilder(member.Length + 4);
        foreach (var c in member)
        {
            if (char.IsUpper(c) && text.Length > 0)
            {
                text.Append(' ');
            }

            text.Append(char.ToLowerInvariant(c));
        }

        return text.ToString();
    }
}
