using Heaveline.Files.Forms;

namespace Heaveline.Web.Pages.Cars;

/// <summary>
/// A quantity while it is typed: number, unit, doubt and the doubt's unit. What is typed stays as it is typed, sound or not; only another text in the
/// file takes its place.
/// </summary>
public sealed class QuantityEntry(FormField key)
{
    private readonly QuantityForm form = key.Quantity ?? throw new ArgumentException("The field holds no quantity.", nameof(key));
    private string? taken;

    /// <summary>The number as typed.</summary>
    public string Number { get; set; } = "";

    /// <summary>The unit; empty for a plain number.</summary>
    public string Unit { get; private set; } = "";

    /// <summary>The doubt as typed, without its unit; empty for none.</summary>
    public string Doubt { get; set; } = "";

    /// <summary>The doubt's own unit; empty when it has the number's.</summary>
    public string DoubtUnit { get; set; } = "";

    /// <summary>Units to choose from, the one that stands there among them.</summary>
    public IReadOnlyList<string> Units => [.. form.Units.Select(unit => unit.Symbol).Append(Unit).Distinct()];

    /// <summary>Units of the doubt to choose from; empty for the number's.</summary>
    public IReadOnlyList<string> DoubtUnits => [.. new[] { "", Unit == "%" ? "" : "%" }
        .Concat(form.Units.Select(unit => unit.Symbol).Where(symbol => symbol != Unit && symbol != "%")).Append(DoubtUnit).Distinct()];

    /// <summary>All of it as a file holds it; empty without a number.</summary>
    public string Text => Number.Trim().Length == 0 && Doubt.Trim().Length == 0 ? "" : Parts.Text;

    private QuantityParts Parts =>
        new() { Number = Number.Trim(), Unit = Unit, Doubt = Doubt.Trim().Length == 0 ? "" : $"{Doubt.Trim()} {DoubtUnit}".TrimEnd() };

    /// <summary>Takes over what stands in the file, unless it is what was typed here.</summary>
    public void Take(string text)
    {
        if (text == taken || (taken is not null && text == Text))
        {
            taken = text;
            return;
        }

        taken = text;
        var parts = form.Split(text);
        Number = parts.Number;
        Unit = text.Trim().Length > 0 ? parts.Unit : Usual;
        (Doubt, DoubtUnit) = (parts.DoubtNumber, parts.DoubtUnit);
    }

    /// <summary>Puts the same quantity into another unit; a number that cannot be read keeps its digits.</summary>
    public void ChangeUnit(string unit)
    {
        var parts = form.Split(Text);
        if (parts.Refusal is not null)
        {
            Unit = unit;
            return;
        }

        var converted = form.Convert(parts, unit);
        Number = converted.Number;
        Unit = converted.Unit;
        (Doubt, DoubtUnit) = (converted.DoubtNumber, converted.DoubtUnit);
    }

    // The unit of the example, which is what people of the trade write here.
    private string Usual => key.Example.Length > 0 && form.Split(key.Example) is { Refusal: null } example
        ? example.Unit
        : form.Units is [var first, ..] ? first.Symbol : "";
}
