using Heaveline.Files.Cars;
using Heaveline.Files.Forms;
using Heaveline.Quantities;

namespace Heaveline.Web.Pages.Cars;

/// <summary>
/// A quantity while it is typed: number, unit, doubt and the doubt's unit. A whole quantity may be typed where the number stands ("160 lbf/in",
/// "2 3/4 in ± 1/16"): it counts with the unit typed, and is taken apart when the hand leaves the field. What is typed stays as typed, sound or
/// not; only another text in the file takes its place. No choice of a unit converts a number: that is an act of its own.
/// </summary>
/// <param name="key">What is known of the key.</param>
/// <param name="reader">The units that the reader reads in; null: metric.</param>
public sealed class QuantityEntry(FormField key, ReaderUnits? reader = null)
{
    private readonly QuantityForm form = key.Quantity ?? throw new ArgumentException("The field holds no quantity.", nameof(key));
    private string? taken;
    private string number = "";
    private string doubt = "";
    private QuantityParts? before;

    /// <summary>The number as typed, or a whole quantity while it is typed.</summary>
    public string Number
    {
        get => number;
        set
        {
            (number, before) = (value, null);
            if (form.Split(Fraction.ToDecimal(value)) is { Refusal: null, Unit.Length: > 0 } whole)
            {
                // A doubt without a unit of its own was one of the unit before.
                DoubtUnit = DoubtUnit.Length == 0 && Unit != "%" && whole.Unit != Unit && doubt.Trim().Length > 0 ? Unit : DoubtUnit;
                Unit = whole.Unit;
            }
        }
    }

    /// <summary>The unit; empty for a plain number.</summary>
    public string Unit { get; private set; } = "";

    /// <summary>The doubt as typed, with a unit of its own or without; empty for none.</summary>
    public string Doubt
    {
        get => doubt;
        set => (doubt, before) = (value, null);
    }

    /// <summary>The doubt's own unit; empty when it has the number's.</summary>
    public string DoubtUnit { get; set; } = "";

    /// <summary>Units to choose from, the one that stands there among them.</summary>
    public IReadOnlyList<string> Units => [.. form.Units.Select(unit => unit.Symbol).Append(Unit).Distinct()];

    /// <summary>Units of the doubt to choose from; empty for the number's.</summary>
    public IReadOnlyList<string> DoubtUnits => [.. new[] { "", Unit == "%" ? "" : "%" }
        .Concat(form.Units.Select(unit => unit.Symbol).Where(symbol => symbol != Unit && symbol != "%")).Append(DoubtUnit).Distinct()];

    /// <summary>All of it as a file holds it; empty without a number.</summary>
    public string Text
    {
        get
        {
            var value = QuantityText.Whole(number, Unit);
            var width = Fraction.ToDecimal(doubt).Trim();
            width = QuantityForm.DoubtMarks.FirstOrDefault(mark => width.StartsWith(mark, StringComparison.Ordinal)) is { } sign
                ? width[sign.Length..].Trim()
                : width;
            return width.Length == 0 || HasDoubt(value) ? value
                : $"{(value.Length == 0 ? Unit : value)} ± {(QuantityText.IsBare(width) ? $"{width} {DoubtUnit}" : width)}".TrimEnd();
        }
    }

    /// <summary>
    /// What the quantity is in another unit, where that may be wanted: after a unit was chosen beside a number that stood there with another one, and
    /// where a reader of imperial units meets a metric one. Null where nothing is to be said.
    /// </summary>
    public QuantityParts? Elsewhere => Offered is var (from, unit) ? form.Convert(from, unit) : null;

    /// <summary>The quantity that <see cref="Elsewhere"/> is equal to.</summary>
    public QuantityParts? Here => Offered?.From;

    private (QuantityParts From, string Unit)? Offered => before is { } former && Unit != former.Unit ? (former, Unit)
        : before is null && Number.Length > 0 && Counterpart(Unit) is { } own && own != Unit && form.Split(Text) is { Refusal: null } parts
            ? (parts, own)
        : null;

    /// <summary>Takes over what stands in the file, unless it is what was typed here.</summary>
    public void Take(string text)
    {
        if (text == taken || (taken is not null && text == Text))
        {
            taken = text;
            return;
        }

        taken = text;
        before = null;
        var isBlank = text.Trim().Length == 0 || text == CarFile.Blank;
        var parts = form.Split(text);
        number = isBlank ? "" : parts.Number;
        Unit = isBlank || (parts.Refusal is not null) ? Usual : parts.Unit;
        (doubt, DoubtUnit) = (parts.DoubtNumber, parts.DoubtUnit);
    }

    /// <summary>Takes a whole quantity apart that was typed where its number or its doubt stands, once the hand has left the field.</summary>
    public void Rest()
    {
        if (form.Split(Text) is not { Refusal: null } parts
            || (QuantityText.IsBare(number) && (doubt.Trim().Length == 0 || QuantityText.IsBare(doubt))))
        {
            return;
        }

        (number, Unit, doubt, DoubtUnit) = (parts.Number, parts.Unit, parts.DoubtNumber, parts.DoubtUnit);
    }

    /// <summary>Another unit beside the same number, which keeps its digits.</summary>
    public void ChooseUnit(string unit)
    {
        before ??= form.Split(Text) is { Refusal: null } parts ? parts : null;
        before = before?.Unit == unit ? null : before;
        Unit = unit;
    }

    /// <summary>Puts the quantity into the unit that <see cref="Elsewhere"/> is in.</summary>
    public void Convert()
    {
        if (Elsewhere is { } converted)
        {
            (number, Unit, doubt, DoubtUnit, before) = (converted.Number, converted.Unit, converted.DoubtNumber, converted.DoubtUnit, null);
        }
    }

    private static bool HasDoubt(string value) => QuantityForm.DoubtMarks.Any(mark => value.Contains(mark, StringComparison.Ordinal));

    /// <summary>The unit that an empty field begins with: that of the example, or what readers of imperial units write in its place.</summary>
    public string Usual
    {
        get
        {
            var metric = key.Example.Length > 0 && form.Split(key.Example) is { Refusal: null } example ? example.Unit
                : form.Units is [var first, ..] ? first.Symbol : "";
            return Counterpart(metric) ?? metric;
        }
    }

    // Lengths of a car are in inches, all others as the trade has them.
    private string? Counterpart(string unit)
    {
        if (reader is not { IsImperial: true })
        {
            return null;
        }

        var metric = unit.Replace("m2", "m²", StringComparison.Ordinal);
        var own = ImperialUnits.For(metric) is not { } known ? null : form.Dimension == Length.Name ? "in" : known.Symbol;
        return own is not null && form.Split($"1 {own}").Refusal is null ? own : null;
    }
}
