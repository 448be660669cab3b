using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>What a number is: how it is called, shown and judged. How it is computed stands in <see cref="Measure{TSubject}"/>.</summary>
/// <param name="Key">Name for machines, kebab-case, never changed; one for each measure of a subject.</param>
/// <param name="Label">Name for people, in a table.</param>
/// <param name="Unit">Unit that it is shown in.</param>
/// <param name="Digits">Digits behind the point.</param>
/// <param name="Says">What it is, in one sentence.</param>
public abstract record Measure(string Key, string Label, ShownUnit Unit, int Digits, string Says)
{
    /// <summary>Name in a sentence.</summary>
    public string Name { get => field ?? Label; init; }

    /// <summary>Name on an axis.</summary>
    public string ShortLabel { get => field ?? Label; init; }

    /// <summary>Name at the head of a caption's numbers.</summary>
    public string CaptionLabel { get => field ?? Name; init; }

    /// <summary>Name at the head of a narrow column.</summary>
    public string Heading { get => field ?? Label; init; }

    /// <summary>Digits behind the point in a narrow column.</summary>
    public int HeadingDigits { get => field < 0 ? Digits : field; init; } = -1;

    /// <summary>Which way it is better.</summary>
    public Better Better { get; init; }

    /// <summary>The page of its definition.</summary>
    public string Page { get; init; } = "theory/measures.md";

    /// <summary>A row of numbers none of which is above this, SI, either way, says nothing and is left out.</summary>
    public double Nothing { get; init; } = -1.0;

    /// <summary>Above this, SI, it is not looked for: a car without the number lies above. Null: a car without it has none.</summary>
    public double? NoneAbove { get; init; }

    /// <summary>Whether it goes from one side to the other through infinity, as a centre of motion does where the motion turns parallel.</summary>
    public bool PassesInfinity { get; init; }

    /// <summary>Where it is taken up.</summary>
    public MeasureUse Uses { get; init; } = MeasureUse.Table;

    /// <summary>Its word on a command line, where a rule can be judged by it; null for none.</summary>
    public string? Word { get; init; }

    /// <summary>.NET number format of a value as shown.</summary>
    public string Format { get => field ?? "F" + Digits.ToString(CultureInfo.InvariantCulture); init; }

    /// <summary>A value as shown; null where it does not exist.</summary>
    /// <param name="si">SI; not finite where it does not exist.</param>
    public double? Shown(double si) => double.IsFinite(si) ? Unit.Of(si) : null;

    /// <summary>A value as printed, without its unit.</summary>
    /// <param name="shown">In the unit that it is shown in.</param>
    public string Print(double shown) => Numeral.Of(shown, Format);

    /// <summary>A value as printed, as a number in the unit that it is shown in; one that does not exist stays so.</summary>
    /// <param name="si">SI.</param>
    internal double Printed(double si) => Printed(si, Digits);

    /// <summary>The same with other digits. Halves go where they go in print: rounding to even would hide what print tells.</summary>
    /// <param name="si">SI.</param>
    /// <param name="digits">Digits behind the point.</param>
    internal double Printed(double si, int digits) => double.IsFinite(si)
        ? double.Parse(
            Unit.Of(si).ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
        : si;

    /// <summary>Whether a value, SI, is printed as zero.</summary>
    internal bool IsShownAsNothing(double si) => Math.Round(Unit.Of(si), Digits) == 0.0;

    /// <summary>Whether a row of values, SI, says nothing.</summary>
    public bool IsNothing(IEnumerable<double> si) => !si.Any(v => double.IsFinite(v) && Math.Abs(v) > Nothing);
}
