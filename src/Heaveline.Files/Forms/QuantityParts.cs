using Heaveline.Quantities;

namespace Heaveline.Files.Forms;

/// <summary>A quantity as it is written, in the parts that a form shows, or the reason why the text is none.</summary>
public sealed record QuantityParts
{
    /// <summary>The number as typed ("24.50"); feet and inches become feet.</summary>
    public required string Number { get; init; }

    /// <summary>The unit as typed; empty for a plain number.</summary>
    public required string Unit { get; init; }

    /// <summary>
    /// The doubt as typed, without its mark ("5 %", "1", "5 mm"); empty when none is stated. Without a unit of its own it has the value's.
    /// </summary>
    public string Doubt { get; init; } = "";

    /// <summary>The number of the doubt as typed; empty when none is stated.</summary>
    public string DoubtNumber => QuantityText.NumberOf(Doubt);

    /// <summary>The doubt's own unit as typed; empty when it has the value's.</summary>
    public string DoubtUnit => Doubt[DoubtNumber.Length..].Trim();

    /// <summary>The value, SI units; 0 when refused.</summary>
    public double Si { get; init; }

    /// <summary>Half-width of the doubt, SI units; 0 when none is stated or when refused.</summary>
    public double HalfWidth { get; init; }

    /// <summary>Why the text is no such quantity; null when it is.</summary>
    public QuantityRefusal? Refusal { get; init; }

    /// <summary>The parts put together again, as a file holds them.</summary>
    public string Text => $"{$"{Number} {Unit}".TrimEnd()}{(Doubt.Length == 0 ? "" : $" ± {Doubt}")}";
}
