using Heaveline.Quantities;

namespace Heaveline.Files.Forms;

/// <summary>What may have been meant by a number that no vehicle has in its unit: the same number in another one.</summary>
/// <param name="Text">The quantity as it would stand in the file.</param>
/// <param name="Words">The same, as it is asked about.</param>
public sealed record UnitMend(string Text, string Words)
{
    /// <summary>The travel of the wheel that a motion ratio is told over, m.</summary>
    private const double Jacked = 0.050;

    /// <summary>What may have been meant; null where the number is a usual one, or no unit makes it one.</summary>
    /// <param name="field">The field.</param>
    /// <param name="text">The quantity as it is typed, with its unit.</param>
    public static UnitMend? Of(FormField field, string text)
    {
        ArgumentNullException.ThrowIfNull(field);
        if (field.Quantity is not { } quantity)
        {
            return field.Name == "moves" ? Moves(text) : null;
        }

        if ((field.UsualLow ?? field.Least) is not { } low || (field.UsualHigh ?? field.Most) is not { } high
            || quantity.Split(text) is not { Refusal: null } parts || IsUsual(parts.Si)
            || quantity.Units.FirstOrDefault(unit => unit.Symbol == parts.Unit) is not { } own)
        {
            return null;
        }

        var number = parts.Si / own.Factor;
        // 45 read where a ratio is asked: 45 mm for 50 mm at the wheel.
        if (field.Name.EndsWith("-per-wheel", StringComparison.Ordinal) && IsUsual(In.Millimetres.ToSi(number) / Jacked))
        {
            var ratio = Digits(In.Millimetres.ToSi(number) / Jacked);
            return new(ratio, $"{ratio}, which is {parts.Number} mm for 50 mm at the wheel");
        }

        if (quantity.Units.FirstOrDefault(unit => unit.Symbol != own.Symbol && IsUsual(number * unit.Factor)) is { } meant)
        {
            var mended = parts with { Unit = meant.Symbol };
            return new(mended.Text, $"{parts.Number} {meant.Symbol}".TrimEnd());
        }

        return null;

        bool IsUsual(double si) => si >= low && si <= high;
    }

    /// <summary>What may have been meant by a travel for 50 mm at the wheel that was typed as a ratio; null where it is no ratio.</summary>
    /// <param name="field">The field of the travel.</param>
    /// <param name="text">The travel as it is typed.</param>
    public static UnitMend? OfTravel(FormField field, string text)
    {
        ArgumentNullException.ThrowIfNull(field);
        return field.Quantity?.Split(text) is { Refusal: null, Unit: "mm", Doubt: "" } parts && AsRatio(In.Millimetres.Of(parts.Si)) is { } travel
            ? new(travel, $"{travel}, a ratio of {parts.Number}")
            : Of(field, text);
    }

    // A phrase that says one of two travels, or their ratio.
    private static UnitMend? Moves(string text)
    {
        const string Behind = " for 50 mm at the wheel";
        if (text.Contains(" for ", StringComparison.Ordinal) || text.Trim().Length == 0)
        {
            return null;
        }

        var travel = QuantityText.Parse<Plain>(text) is { IsRead: true, Unit: null, Amount.Si: var number }
            ? AsRatio(number) ?? (number is >= 10.0 and <= 65.0 ? $"{text.Trim()} mm" : null)
            : QuantityText.Parse<Length>(text).IsRead ? text.Trim() : null;
        return travel is null ? null : new(travel + Behind, travel + Behind);
    }

    // Usual ratios of springs and dampers, as the file's own slips have them.
    private static string? AsRatio(double number) => number is >= 0.2 and <= 1.3 ? $"{Digits(In.Millimetres.Of(Jacked * number))} mm" : null;

    private static string Digits(double value) => QuantityText.Format(new Amount<Plain>(value), "");
}
