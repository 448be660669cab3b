using System.Globalization;

namespace Heaveline.Quantities;

/// <summary>
/// Unit symbols as text: factors side by side, with a blank, · or *, with whole exponents (m2, m^2, m²); one slash at most, with one unit
/// or a bracket after it, as the SI Brochure (9th edition, 5.4.6) and ISO 80000-1 ask, so that N/m s cannot be read in two ways.
/// </summary>
internal static class UnitText
{
    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";
    private const int MostFactors = 8;

    private static readonly Dictionary<string, string> Slips = new(StringComparer.OrdinalIgnoreCase)
    {
        ["sec"] = "s", ["secs"] = "s", ["second"] = "s", ["seconds"] = "s", ["hr"] = "h", ["hour"] = "h", ["kgs"] = "kg", ["kilo"] = "kg",
        ["newton"] = "N", ["newtons"] = "N", ["pound"] = "lb", ["pounds"] = "lb", ["percent"] = "%", ["per"] = "/", ["degree"] = "deg",
        ["degrees"] = "deg", ["metre"] = "m", ["metres"] = "m", ["meter"] = "m", ["meters"] = "m", ["gram"] = "g", ["grams"] = "g", ["kgm"] = "kg m",
        ["tonne"] = "t", ["tonnes"] = "t", ["litre"] = "L", ["litres"] = "L", ["liter"] = "L", ["kp"] = "kgf", ["hertz"] = "Hz", ["psig"] = "psi",
        ["Ns"] = "N s",
    };

    /// <summary>Reads a unit. A product without parts when none stands here; null with a refusal on the cursor when it is not understood.</summary>
    /// <param name="cursor">The text.</param>
    /// <param name="wanted">What should stand there; null: anything. A slip in a single symbol is never guessed to be of another dimension.</param>
    public static UnitProduct? Read(TextCursor cursor, Exponents? wanted = null)
    {
        cursor.SkipBlanks();
        var start = cursor.At;
        var parts = new List<(Unit[], int)>();
        _ = cursor.Rest is ['1', ' ' or '/', ..] && cursor.Take("1");
        if (!Product(cursor, parts, 1, wanted) || !Slash(cursor, parts))
        {
            return null;
        }

        if (parts.Count <= MostFactors)
        {
            return new UnitProduct(cursor.Since(start), parts);
        }

        cursor.Refuse(start, cursor.At, $"{cursor.Since(start)} has too many factors.", "Write the unit with fewer symbols.");
        return null;
    }

    private static bool Slash(TextCursor cursor, List<(Unit[], int)> parts)
    {
        if (!cursor.Take("/"))
        {
            return true;
        }

        cursor.SkipBlanks();
        var start = cursor.At;
        var before = parts.Count;
        var bracket = cursor.Take("(");
        if (!(bracket ? Product(cursor, parts, -1) : Factor(cursor, parts, -1)))
        {
            return false;
        }

        if (parts.Count == before || (bracket && !cursor.Take(")")))
        {
            cursor.Refuse(start, cursor.At + 1, "a unit should follow the slash.", "Write for instance N/mm or N/(m s).");
            return false;
        }

        cursor.SkipBlanks();
        var word = cursor.Between(cursor.At, cursor.RunEnd(cursor.At, char.IsLetter));
        if (UnitTable.Meanings.ContainsKey(word) || cursor.Next is '/' or '·' or '*' or '⋅' or '°')
        {
            var end = cursor.RunEnd(cursor.At, c => !char.IsWhiteSpace(c));
            cursor.Refuse(
                start,
                end,
                "only one unit may follow the slash.",
                "Put the units under the slash in brackets, N/(m s), or write those above it first, N s/m.");
            return false;
        }

        return true;
    }

    private static bool Product(TextCursor cursor, List<(Unit[], int)> parts, int sign, Exponents? wanted = null)
    {
        var dotted = false;
        while (true)
        {
            cursor.SkipBlanks();
            var before = parts.Count;
            if (!Factor(cursor, parts, sign, wanted))
            {
                return false;
            }

            var isUnit = parts.Count > before;
            cursor.SkipBlanks();
            var at = cursor.At;
            var dot = cursor.Take("·") || cursor.Take("*") || cursor.Take("⋅");
            if (!isUnit && (dot || dotted))
            {
                cursor.Refuse(dot ? at : at - 1, at + 1, "a unit should stand on both sides of a product sign.", "Write for instance N·s/m.");
                return false;
            }

            if (!isUnit)
            {
                return true;
            }

            dotted = dot;
        }
    }

    // No symbol here: true, and nothing added.
    private static bool Factor(TextCursor cursor, List<(Unit[], int)> parts, int sign, Exponents? wanted = null)
    {
        var start = cursor.At;
        var end = cursor.RunEnd(start, c => char.IsLetter(c) || c is '°' or '"' or '\'' or '%' or '″' or '′');
        // Marks stand alone: 5'3" has no blank in it, and 3" is followed by nothing.
        end = end > start && !char.IsLetter(cursor.Next) ? start + 1 : cursor.RunEnd(start, char.IsLetter);
        if (end == start)
        {
            return true;
        }

        cursor.At = end;
        var symbol = cursor.Between(start, end);
        if (UnitTable.Meanings.TryGetValue(symbol, out var meanings))
        {
            // The 3 of 5'3" is no exponent.
            var power = 1;
            if (char.IsLetter(symbol[^1]) && !Power(cursor, out power))
            {
                return false;
            }

            parts.Add((meanings, sign * power));
            return true;
        }

        var near = Slips.GetValueOrDefault(symbol)
            ?? UnitTable.Meanings.Keys.FirstOrDefault(known => known.Equals(symbol, StringComparison.OrdinalIgnoreCase))
            ?? (symbol.Length > 2 ? NearestWord.Of(symbol, UnitTable.Meanings.Keys) : null);
        if (near is not null && parts.Count == 0 && cursor.Next is '\0' or ' ' or '±' && wanted is { } dimension
            && UnitTable.Meanings.TryGetValue(near, out var guessed) && !guessed.Any(unit => unit.Exponents == dimension))
        {
            near = null;
        }

        cursor.Refuse(
            start,
            end,
            $"{symbol} is not a unit known here.",
            near is null ? "Use unit symbols such as mm, kg, N/mm, N s/m, lbf/in." : $"Did you mean {near}?");
        return false;
    }

    private static bool Power(TextCursor cursor, out int power)
    {
        var start = cursor.At;
        power = 1;
        var raised = cursor.Take("^");
        var negative = cursor.Take("⁻") || (raised && (cursor.Take("-") || cursor.Take("−")));
        var end = cursor.RunEnd(cursor.At, c => char.IsAsciiDigit(c) || Superscripts.Contains(c, StringComparison.Ordinal));
        var digits = cursor.Between(cursor.At, end);
        cursor.At = end;
        if (digits.Length == 0 && !raised && !negative)
        {
            return true;
        }

        var plain = string.Concat(digits.Select(c => char.IsAsciiDigit(c) ? c : (char)('0' + Superscripts.IndexOf(c, StringComparison.Ordinal))));
        if (plain.Length == 1 && plain != "0")
        {
            power = int.Parse(plain, CultureInfo.InvariantCulture) * (negative ? -1 : 1);
            return true;
        }

        cursor.Refuse(
            start,
            Math.Max(end, start + 1),
            $"{cursor.Between(start, end)} is not an exponent.",
            "Write a whole exponent from 1 to 9, for instance kg m^2.");
        return false;
    }
}
