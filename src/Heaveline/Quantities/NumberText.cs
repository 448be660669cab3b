using System.Globalization;

namespace Heaveline.Quantities;

/// <summary>
/// A decimal number: digits, a decimal point, an exponent; no grouping, no hexadecimal, no NaN. A comma is taken for the point unless it may as well
/// mark thousands.
/// </summary>
internal static class NumberText
{
    /// <summary>Reads a number, or leaves a refusal on the cursor and returns null.</summary>
    public static double? Read(TextCursor cursor)
    {
        cursor.SkipBlanks();
        var start = cursor.At;
        var negative = cursor.Next is '-' or '−';
        if (cursor.Next is '-' or '−' or '+')
        {
            cursor.At++;
        }

        var digits = cursor.At;
        cursor.At = cursor.RunEnd(digits, char.IsAsciiDigit);
        var whole = cursor.At - digits;
        var fraction = 0;
        if (cursor.Next == '.' || IsDecimalComma(cursor, digits))
        {
            var end = cursor.RunEnd(cursor.At + 1, char.IsAsciiDigit);
            fraction = end - cursor.At - 1;
            cursor.At = fraction > 0 ? end : cursor.At;
        }

        if (whole + fraction == 0)
        {
            return NoNumber(cursor, start);
        }

        TakeExponent(cursor);
        if (IsGroupedOrStrange(cursor, start, digits))
        {
            return null;
        }

        var text = cursor.Between(digits, cursor.At).Replace(',', '.');
        var value = double.Parse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture);
        if (!double.IsFinite(value) || (value == 0.0 && text.Split('e', 'E')[0].AsSpan().ContainsAnyInRange('1', '9')))
        {
            cursor.Refuse(start, cursor.At, $"{cursor.Since(start)} is beyond what a number can hold here.", "Check the exponent.");
            return null;
        }

        return negative ? -value : value;
    }

    /// <summary>What one unit in the last digit of a number that <see cref="Read"/> takes is worth: 0.1 of 12.5, 1000 of 3e3.</summary>
    public static double LastPlace(string digits)
    {
        var parts = digits.Split('e', 'E');
        var point = parts[0].IndexOfAny(['.', ',']);
        var exponent = parts.Length > 1 ? int.Parse(parts[1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture) : 0;
        return Math.Pow(10.0, exponent - (point < 0 ? 0 : parts[0].Length - point - 1));
    }

    // 0,64 and 24,5 are decimals; 1,320 may be thousands, and 1,320.5 or 1,2,3 are something else: those are refused with advice.
    private static bool IsDecimalComma(TextCursor cursor, int digits)
    {
        var whole = cursor.Between(digits, cursor.At);
        var end = cursor.RunEnd(cursor.At + 1, char.IsAsciiDigit);
        var count = end - cursor.At - 1;
        return cursor.Next == ',' && whole.Length > 0 && count > 0 && (count != 3 || whole == "0")
            && cursor.RunEnd(end, c => c is ',' or '.' or '_') == end;
    }

    private static double? NoNumber(TextCursor cursor, int start)
    {
        var end = Math.Max(cursor.RunEnd(start, c => !char.IsWhiteSpace(c)), cursor.At);
        var word = cursor.Between(start, end);
        var bare = word.TrimStart('+', '-', '−', '.').ToUpperInvariant();
        var message = word.Length == 0 ? "there is no number."
            : bare is "NAN" or "INF" or "INFINITY" or "∞" ? $"{word} is not a finite number."
            : $"\"{word}\" is not a number.";
        cursor.Refuse(start, end, message, "Begin with a number in digits, with a decimal point if it needs one: 24.5.");
        return null;
    }

    // Exponent only when a digit follows, so that a unit may begin with the letter e.
    private static void TakeExponent(TextCursor cursor)
    {
        if (cursor.Next is not ('e' or 'E'))
        {
            return;
        }

        var from = cursor.At + 1;
        var first = cursor.Rest.Length > 1 && cursor.Rest[1] is '+' or '-' ? from + 1 : from;
        var end = cursor.RunEnd(first, char.IsAsciiDigit);
        cursor.At = end > first ? end : cursor.At;
    }

    private static bool IsGroupedOrStrange(TextCursor cursor, int start, int digits)
    {
        var read = cursor.Between(digits, cursor.At);
        if (cursor.Next is ',' or '_' or '.')
        {
            var end = cursor.RunEnd(cursor.At, c => char.IsAsciiDigit(c) || c is ',' or '_' or '.');
            var all = cursor.Between(start, end);
            cursor.Refuse(start, end, $"{all} is not a number here.", cursor.Next switch
            {
                ',' when all.Count(c => c is ',' or '.') > 1 => "Write one decimal point and no other mark in the number.",
                ',' when cursor.RunEnd(cursor.At + 1, char.IsAsciiDigit) - cursor.At == 4 =>
                    $"A comma before three digits may be a decimal point or mark thousands: "
                    + $"write {all.Replace(",", "", StringComparison.Ordinal)} or "
                    + $"{all.Replace(',', '.')}.",
                ',' => $"Write the decimal point as a point: {all.Replace(',', '.').TrimEnd('.')}.",
                '_' => $"Write the digits together: {all.Replace("_", "", StringComparison.Ordinal)}.",
                _ => "Use one decimal point, with a digit after it.",
            });
            return true;
        }

        if (read == "0" && cursor.Next is 'x' or 'X')
        {
            var end = cursor.RunEnd(cursor.At, char.IsLetterOrDigit);
            cursor.Refuse(start, end, $"{cursor.Between(start, end)} is not a decimal number.", "Write the number in decimal digits.");
            return true;
        }

        return IsSplit(cursor, start);
    }

    // "1 320" and "1 1/2" and "1/2" read as one number by a person; "0.5 1/m" is a number and a unit.
    private static bool IsSplit(TextCursor cursor, int start)
    {
        var next = cursor.RunEnd(cursor.At, char.IsWhiteSpace);
        var end = cursor.RunEnd(next, char.IsAsciiDigit);
        var slash = cursor.RunEnd(end, char.IsWhiteSpace);
        var over = cursor.RunEnd(slash, c => c == '/');
        if (over > slash)
        {
            var below = cursor.RunEnd(over, char.IsWhiteSpace);
            var last = cursor.RunEnd(below, char.IsAsciiDigit);
            if (last > below)
            {
                cursor.Refuse(start, last, $"{cursor.Between(start, last)} is a fraction.", "Write it as a decimal number, 1.5 for one and a half.");
                return true;
            }

            if (cursor.Between(next, end) == "1")
            {
                return false;
            }
        }

        if (end == next)
        {
            return false;
        }

        var all = cursor.Between(start, cursor.RunEnd(next, c => char.IsAsciiDigit(c) || char.IsWhiteSpace(c))).TrimEnd();
        cursor.Refuse(
            start,
            start + all.Length,
            $"{all} has a gap in it.",
            $"Write the digits together: {string.Concat(all.Where(c => !char.IsWhiteSpace(c)))}.");
        return true;
    }
}
