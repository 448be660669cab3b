using Heaveline.Quantities;

namespace Heaveline.Files.Forms;

/// <summary>The form of one dimension.</summary>
internal sealed class QuantityForm<TDimension> : QuantityForm
    where TDimension : struct, IDimension
{
    private const int FewestDigits = 4;
    private const int MostDigits = 15;

    private QuantityForm()
        : base(TDimension.Name, [.. Quantities.Units.Fitting<TDimension>()
            .Select(symbol => new FormUnit(symbol, symbol.Length == 0 ? 1.0 : Quantities.Units.Of<TDimension>(symbol).Factor))])
    {
    }

    /// <summary>The only one.</summary>
    public static QuantityForm<TDimension> Only { get; } = new();

    /// <inheritdoc/>
    public override QuantityParts Split(string text)
    {
        var parsed = QuantityText.Parse<TDimension>(text);
        if (parsed.Refusal is { } refusal)
        {
            return new QuantityParts { Number = text.Trim(), Unit = "", Refusal = refusal };
        }

        var unit = parsed.Unit?.Symbol ?? "";
        var mark = DoubtMarks.Select(sign => (At: text.IndexOf(sign, StringComparison.Ordinal), sign.Length))
            .Where(found => found.At >= 0).OrderBy(found => found.At).FirstOrDefault((text.Length, 0));
        var value = text[..mark.Item1].Trim();
        var doubt = text[(mark.Item1 + mark.Item2)..].Trim();
        var length = QuantityText.NumberOf(value).Length;
        var own = value[length..].Trim();
        if (own.Length == 0 && unit.Length > 0 && doubt.EndsWith(unit, StringComparison.Ordinal))
        {
            // 24.5 ± 0.5 N/mm: the unit at the end serves both.
            doubt = doubt[..^unit.Length].TrimEnd();
        }

        // Feet with inches are two numbers; as one number they are feet.
        var number = own.Length > 0 && own != unit ? Digits(parsed.Unit!.FromSi(parsed.Amount.Si), MostDigits) : value[..length];
        return new QuantityParts { Number = number, Unit = unit, Doubt = doubt, Si = parsed.Amount.Si, HalfWidth = parsed.Amount.Doubt.HalfWidth };
    }

    /// <inheritdoc/>
    public override QuantityParts Convert(QuantityParts parts, string unit)
    {
        if (parts.Refusal is not null || parts.Unit == unit)
        {
            return parts;
        }

        var to = unit.Length == 0 && TDimension.Exponents == default ? null : Quantities.Units.Of<TDimension>(unit);
        var digits = Math.Max(FewestDigits, Significant(parts.Number) + 1);

        // A per cent beside a number in per cent could be read in two ways, so that doubt becomes points; one with its own unit holds anywhere.
        var width = QuantityText.NumberOf(parts.Doubt).Length;
        var isShared = parts.Doubt.Length > 0 && (width == parts.Doubt.Length || (unit == "%" && parts.Doubt.EndsWith('%')));
        var doubt = isShared ? Digits(From(parts.HalfWidth), Math.Max(2, Significant(parts.Doubt[..width]) + 1)) : parts.Doubt;
        return parts with { Number = Digits(From(parts.Si), digits), Unit = unit, Doubt = doubt };

        double From(double si) => to?.FromSi(si) ?? si;
    }

    private static string Digits(double value, int digits) => QuantityText.Format(new Amount<Plain>(value), "", Math.Min(digits, MostDigits));

    private static int Significant(string number)
    {
        var mantissa = number.Split('e', 'E')[0];
        return mantissa.Where(char.IsAsciiDigit).SkipWhile(c => c == '0').Count();
    }
}
