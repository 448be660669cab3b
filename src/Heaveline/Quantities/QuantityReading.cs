namespace Heaveline.Quantities;

/// <summary>Reads value, unit and doubt for a wanted dimension. One use per text.</summary>
internal sealed class QuantityReading(TextCursor cursor, WantedDimension wanted)
{
    // SI units: doubts are squared and summed. Times the value: they are put in per cent of it.
    private const double WidestDoubt = 1e150;
    private const double WidestPart = 1e300;

    private static readonly string[] DoubtMarks = ["±", "+/-", "+-", "+/−"];

    /// <summary>Value and doubt in SI units with the unit as written, or null with the refusal on the cursor.</summary>
    public (double Si, double HalfWidth, Unit? Unit)? Read()
    {
        cursor.SkipBlanks();
        var start = cursor.At;
        if (NumberText.Read(cursor) is not { } number)
        {
            return null;
        }

        var digits = cursor.Since(start);
        if (UnitText.Read(cursor, wanted.Exponents) is not { } product)
        {
            return null;
        }

        var inches = 0.0;
        if (product.Text is "ft" or "'" or "′" && char.IsAsciiDigit(cursor.Next) && !Inches(start, number, out inches))
        {
            return null;
        }

        var end = start + cursor.Since(start).Length;
        var hasDoubt = DoubtMarks.Any(cursor.Take);
        if (!hasDoubt && !cursor.AtEnd)
        {
            var rest = cursor.Rest.ToString().TrimEnd();
            cursor.Refuse(
                cursor.At,
                cursor.At + rest.Length,
                $"\"{rest}\" is not understood after {cursor.Since(start)}.",
                "Write a number, its unit and, if it has one, its doubt: 24.5 N/mm ± 5 %.");
            return null;
        }

        return hasDoubt ? WithDoubt(start, end, number, digits, product, inches) : Finish(start, end, number + inches, digits, product, null, false);
    }

    // 5 ft 3 in: the one place where two numbers make one value. The number becomes feet with the inches added.
    private bool Inches(int start, double feet, out double extra)
    {
        extra = 0.0;
        var at = cursor.At;
        if (NumberText.Read(cursor) is not { } inches || UnitText.Read(cursor) is not { } unit)
        {
            return false;
        }

        if (unit.Text is not ("in" or "\"" or "″" or "inch" or "inches") || inches >= 12.0 || feet != Math.Truncate(feet))
        {
            cursor.Refuse(at, cursor.At, $"{cursor.Since(at)} is not understood after whole feet.", "After feet write inches below 12: 5 ft 3 in.");
            return false;
        }

        var negative = cursor.Between(start, start + 1) is "-" or "−";
        extra = (negative ? -inches : inches) / 12.0;
        return true;
    }

    private (double, double, Unit?)? WithDoubt(int start, int end, double number, string digits, UnitProduct product, double inches)
    {
        var mark = cursor.At;
        if (NumberText.Read(cursor) is not { } doubt || UnitText.Read(cursor) is not { } doubtUnit)
        {
            return null;
        }

        var width = cursor.Since(mark).Trim();
        var from = cursor.RunEnd(mark, char.IsWhiteSpace);
        if (!cursor.AtEnd)
        {
            var rest = cursor.Rest.ToString().TrimEnd();
            cursor.Refuse(
                cursor.At,
                cursor.At + rest.Length,
                $"\"{rest}\" is not understood after the doubt.",
                "End the text after the doubt: 24.5 N/mm ± 5 %.");
            return null;
        }

        if (doubt < 0.0)
        {
            cursor.Refuse(from, cursor.At, $"the doubt is {width}; it must be 0 or above.", "Give the doubt as a positive half-width.");
            return null;
        }

        var relative = doubtUnit.Text == "%";
        if (relative && wanted.IsPlain && product.Text == "%")
        {
            cursor.Refuse(
                from,
                cursor.At,
                $"± {width} can be read as points or as a part of the value.",
                "Write the points without the sign (25 % ± 2), or the value as a number (0.25 ± 8 %).");
            return null;
        }

        if (relative)
        {
            return RelativeDoubt(start, end, number + inches, digits, product, doubt, from);
        }

        // 24.5 ± 0.5 N/mm: the unit at the end serves both.
        var shared = product.Parts.Count == 0 && doubtUnit.Parts.Count > 0;
        if (Finish(start, shared ? cursor.At : end, number + inches, digits, shared ? doubtUnit : product, null, shared) is not var (si, _, unit))
        {
            return null;
        }

        var own = doubtUnit.Parts.Count == 0 ? unit : doubtUnit.Resolve(wanted.Exponents);
        if (doubtUnit.Parts.Count > 0 && own is null)
        {
            var found = KnownDimensions.WithArticle(doubtUnit.First.Exponents);
            cursor.Refuse(
                from,
                cursor.At,
                $"the doubt {width} is {found}; the value is {KnownDimensions.WithArticle(wanted.Name)}.",
                "Give the doubt in a unit of the value or in per cent.");
            return null;
        }

        return IsWritable(si, own?.ToSi(doubt) ?? doubt, from) ? (si, own?.ToSi(doubt) ?? doubt, unit) : null;
    }

    private (double, double, Unit?)? RelativeDoubt(int start, int end, double number, string digits, UnitProduct product, double percent, int from)
    {
        if (Finish(start, end, number, digits, product, null, false) is not var (si, _, unit))
        {
            return null;
        }

        if (si == 0.0 && percent > 0.0)
        {
            cursor.Refuse(
                from, cursor.At, "a per cent of zero is zero.", $"Give the doubt in {(wanted.IsPlain ? "the unit of the value" : wanted.Usual)}.");
            return null;
        }

        var part = percent / 100.0;
        return IsWritable(si, Math.Abs(si) * part, from) ? (si, Math.Abs(si) * part, unit) : null;
    }

    private bool IsWritable(double si, double doubt, int from)
    {
        if (doubt <= WidestDoubt && (si == 0.0 || doubt / Math.Abs(si) <= WidestPart))
        {
            return true;
        }

        var width = cursor.Between(from, cursor.At).Trim();
        cursor.Refuse(from, cursor.At, $"the doubt {width} is beyond what a number can hold here.", "Check the exponent.");
        return false;
    }

    private (double Si, double HalfWidth, Unit? Unit)? Finish(
        int start, int end, double number, string digits, UnitProduct product, Unit? unit, bool shared)
    {
        if (product.Parts.Count == 0)
        {
            if (wanted.IsPlain)
            {
                return (number, 0.0, null);
            }

            cursor.Refuse(start, end, $"{digits} has no unit; {wanted.Wish(digits)}.", wanted.Fits);
            return null;
        }

        unit = product.Resolve(wanted.Exponents);
        if (unit is null)
        {
            var found = product.First.Exponents;
            var given = shared ? $"{digits} {product.Text}" : cursor.Between(start, end);
            cursor.Refuse(
                start,
                end,
                $"{given} is {KnownDimensions.WithArticle(found)}; {wanted.WishAgainst(digits, found, number * product.First.Factor)}.",
                wanted.AdviceAgainst(found));
            return null;
        }

        var si = unit.ToSi(number);
        if (!double.IsFinite(si))
        {
            cursor.Refuse(start, end, $"{cursor.Between(start, end)} is beyond what a number can hold here.", "Check the exponent.");
            return null;
        }

        return (si, 0.0, unit);
    }
}
