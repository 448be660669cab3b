using System.Globalization;

namespace Heaveline.Quantities;

/// <summary>
/// Quantities as text: number, unit and doubt. <c>24.5 N/mm ± 5 %</c>, <c>318 kg +/- 1</c>, <c>24.5 ± 0.5 N/mm</c>, <c>5 ft 3 in</c>, <c>25 %</c>.
/// The decimal point is a point;
/// a comma is taken for one unless three digits follow it, which may be thousands. Grouping, hexadecimal and NaN are refused. A
/// symbol with two meanings is taken as the wanted dimension asks: <c>140 lb/in</c> is a spring rate with the pound as a force, <c>140 lb</c> a mass
/// with the pound as a mass.
/// A doubt without unit has the unit of the value; a doubt in per cent is a part of the value; a doubt of 0 is one not stated.
/// </summary>
public static class QuantityText
{
    private static readonly string[] DoubtMarks = ["±", "+/-", "+-", "+/−"];

    /// <summary>Reads an amount. A bad text gives a refusal, never an exception.</summary>
    public static Parsed<TDimension> Parse<TDimension>(string text)
        where TDimension : struct, IDimension => Parse<TDimension>(text, TDimension.Usual);

    /// <summary>
    /// Reads an amount of which one unit is the likely one: what is written without a unit, or in one that does not fit, is refused with an example
    /// in that unit ("1.45 has no unit; a length is wanted, e.g. 1.45 m."). What is read does not depend on it.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="likelyUnit">Symbol of the likely unit, one of the dimension; empty for a plain number.</param>
    public static Parsed<TDimension> Parse<TDimension>(string text, string likelyUnit)
        where TDimension : struct, IDimension
    {
        var cursor = new TextCursor(text);
        return new QuantityReading(cursor, WantedDimension.Of<TDimension>() with { Likely = likelyUnit }).Read() is var (si, halfWidth, unit)
            ? new Parsed<TDimension>(new Amount<TDimension>(si, new Doubt(halfWidth)), unit, null)
            : new Parsed<TDimension>(default, null, cursor.Refusal);
    }

    /// <summary>Half of the last digit that a text gives its value to, SI units ("12.5 mm": 0.05 mm); null when it is no such quantity.</summary>
    /// <param name="text">The quantity; of feet and inches the inches' last digit.</param>
    public static double? HalfLastDigit<TDimension>(string text)
        where TDimension : struct, IDimension
    {
        if (Parse<TDimension>(text) is not { IsRead: true, Unit: var unit })
        {
            return null;
        }

        var cursor = new TextCursor(text);
        cursor.SkipBlanks();
        var (start, factor) = (cursor.At, unit?.Factor ?? 1.0);
        _ = NumberText.Read(cursor);
        var digits = cursor.Since(start);
        _ = UnitText.Read(cursor);
        cursor.SkipBlanks();
        if (char.IsAsciiDigit(cursor.Next))
        {
            (start, factor) = (cursor.At, Units.Of<Length>("in").Factor);
            _ = NumberText.Read(cursor);
            digits = cursor.Since(start);
        }

        return 0.5 * factor * NumberText.LastPlace(digits);
    }

    /// <summary>The number that a text begins with, as it stands there ("100,4" of "100,4 in"); empty where it begins with none.</summary>
    /// <param name="text">A quantity or a part of one.</param>
    public static string NumberOf(string text)
    {
        var cursor = new TextCursor(text);
        cursor.SkipBlanks();
        var start = cursor.At;
        return NumberText.Read(cursor) is null ? "" : cursor.Since(start);
    }

    /// <summary>
    /// What was typed into a box with a unit beside it, as a file holds it: fractions as decimal numbers, and the unit behind a bare number. What has
    /// a unit of its own, or is no number, stays as it was typed, so that what is said of it is said of that.
    /// </summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="unitSymbol">The unit beside the box; empty for a plain number.</param>
    internal static string Whole(string typed, string unitSymbol)
    {
        var text = Fraction.ToDecimal(typed).Trim();
        if (IsBare(text))
        {
            return $"{text} {unitSymbol}".TrimEnd();
        }

        // 310 ± 1 is one of both; 24.5 ± 0.5 N/mm says its unit at the end.
        var mark = DoubtMarks.Select(sign => (At: text.IndexOf(sign, StringComparison.Ordinal), sign.Length)).Where(found => found.At > 0)
            .OrderBy(found => found.At).FirstOrDefault();
        var (value, width) = (text[..mark.At].Trim(), text[(mark.At + mark.Length)..].Trim());
        return unitSymbol is not ("" or "%") && IsBare(value) && (IsBare(width) || (width.EndsWith('%') && IsBare(width[..^1])))
            ? $"{value} {unitSymbol} ± {width}" : text;
    }

    /// <summary>Whether a text is a number and nothing else.</summary>
    internal static bool IsBare(string text) => text.Trim() is { Length: > 0 } bare && NumberOf(bare).Length == bare.Length;

    /// <summary>
    /// What stands in a box with a unit beside it: a bare number is in that unit, one with a unit of its own is turned into it; null, with the
    /// refusal, when it is neither, or has a doubt.
    /// </summary>
    /// <param name="text">What stands in the box.</param>
    /// <param name="unitSymbol">The unit beside it; a word that is no unit, or none, stands beside plain numbers.</param>
    internal static (double? Value, QuantityRefusal? Refusal) InBox(string text, string unitSymbol)
    {
        text = Fraction.ToDecimal(text);
        var cursor = new TextCursor(text);
        var number = NumberText.Read(cursor);
        if (number is null || cursor.AtEnd)
        {
            return (number, cursor.Refusal);
        }

        var after = cursor.At;
        var beside = UnitText.Read(new TextCursor(unitSymbol)) is { Parts.Count: > 0 } product ? product.First : null;
        if (beside is null || KnownDimensions.Naming(unitSymbol, beside.Exponents) is not { } known)
        {
            var rest = $"\"{cursor.Rest.Trim()}\" is not understood after {text[..after].Trim()}.";
            cursor.Refuse(after, text.Length, rest, "Write a number alone, like 21.5.");
            return (null, cursor.Refusal);
        }

        cursor = new TextCursor(text);
        var read = new QuantityReading(cursor, new WantedDimension(known.Exponents, known.Name, known.Symbols[0])).Read();
        if (read is not { HalfWidth: > 0.0 })
        {
            return (read is { } whole ? beside.FromSi(whole.Si) : null, cursor.Refusal);
        }

        cursor.Refuse(after, text.Length, "a doubt has no place here.", "Write the value alone; doubts stand in the car's file.");
        return (null, cursor.Refusal);
    }

    /// <summary>A bare number that fills the text; null when it is none.</summary>
    internal static double? Number(string text)
    {
        var cursor = new TextCursor(text);
        var number = NumberText.Read(cursor);
        return cursor.AtEnd ? number : null;
    }

    /// <summary>
    /// Writes an amount in a unit so that <see cref="Parse{TDimension}(string)"/> reads it back: value and doubt to the digits asked for,
    /// 17 for every digit. The name of a shared doubt is not written.
    /// </summary>
    /// <param name="amount">A finite amount.</param>
    /// <param name="unitSymbol">A unit of its dimension; empty for a plain number.</param>
    /// <param name="significant">Significant digits, 1 to 17.</param>
    /// <exception cref="ArgumentException">The unit does not fit, or the amount is not finite.</exception>
    public static string Format<TDimension>(Amount<TDimension> amount, string unitSymbol, int significant = 4)
        where TDimension : struct, IDimension
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(significant, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(significant, 17);
        var unit = unitSymbol.Length == 0 && TDimension.Exponents == default ? null : Units.Of<TDimension>(unitSymbol);
        var value = unit?.FromSi(amount.Si) ?? amount.Si;
        var doubt = unit?.FromSi(amount.Doubt.HalfWidth) ?? amount.Doubt.HalfWidth;
        if (!double.IsFinite(value) || !double.IsFinite(doubt))
        {
            throw new ArgumentException("Only a finite amount can be written.", nameof(amount));
        }

        var number = Digits(value, significant);
        if (!amount.Doubt.IsStated)
        {
            return $"{number} {unitSymbol}".TrimEnd();
        }

        // After a number with % a doubt with % would be a part of the value, so the points go without the sign.
        var width = Digits(doubt, significant);
        return unitSymbol == "%" ? $"{number} % ± {width}" : $"{number} ± {width} {unitSymbol}".TrimEnd();
    }

    /// <summary>A number to some significant digits, positional from 0.00001 to 10^15 and with an exponent outside.</summary>
    private static string Digits(double value, int significant)
    {
        if (value == 0.0)
        {
            return "0";
        }

        // "-1.2345E+003": sign, digits, exponent.
        var scientific = value.ToString("E" + (significant - 1).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        var mark = scientific.IndexOf('E', StringComparison.Ordinal);
        var exponent = int.Parse(scientific[(mark + 1)..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        var sign = value < 0.0 ? "-" : "";
        var digits = scientific[sign.Length..mark].Replace(".", "", StringComparison.Ordinal).TrimEnd('0');
        return sign + exponent switch
        {
            < -5 or > 14 => digits[..1] + (digits.Length > 1 ? "." + digits[1..] : "") + "e" + exponent.ToString(CultureInfo.InvariantCulture),
            < 0 => "0." + new string('0', -exponent - 1) + digits,
            _ when digits.Length <= exponent + 1 => digits.PadRight(exponent + 1, '0'),
            _ => digits[..(exponent + 1)] + "." + digits[(exponent + 1)..],
        };
    }
}
