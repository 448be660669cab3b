using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Answers;

/// <summary>One quantity over several columns (load states, cars, speeds), already in the unit it is shown in.</summary>
/// <param name="Key">Name for machines, kebab-case, never changed.</param>
/// <param name="Label">Name for people.</param>
/// <param name="Unit">Unit as shown, "–" for a plain number.</param>
/// <param name="Format">.NET number format.</param>
/// <param name="Values">One per column; null where it does not exist.</param>
public sealed record FactRow(string Key, string Label, string Unit, string Format, IReadOnlyList<double?> Values)
{
    // Enough for any number that is printed as it needs.
    private const string AsItNeeds = "0.#########";

    /// <summary>The row in the units of a reader, each number turned as it is printed, so that sentences and figures of one number agree.</summary>
    /// <param name="units">The reader's units.</param>
    /// <param name="unitOf">The metric unit of the value in a column.</param>
    internal FactRow In(ReaderUnits units, Func<int, string> unitOf) => this with
    {
        Label = units.Text(Label),
        Unit = units.Unit(Unit),
        Format = units.For(Unit) is not { } unit ? Format
            : Format is ['F', .. var decimals] ? string.Create(CultureInfo.InvariantCulture, $"F{unit.Decimals(Whole(decimals))}")
            : AsItNeeds,
        Values = [.. Values.Select((value, column) => value is { } metric && units.For(unitOf(column)) is { } own ? Turned(metric, own) : value)],
    };

    // A speed is what was asked in the reader's own units: rounded to whole km/h first, 20 mph would come back as 19.9 mph.
    private double Turned(double metric, ImperialUnit unit) =>
        unit.IsSpeed ? metric * unit.Factor : Read(ImperialText.Of(Numeral.Of(metric, Format), unit));

    private static int Whole(string digits) => int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);

    private static double Read(string printed) => double.Parse(printed.Replace('−', '-'), NumberStyles.Float, CultureInfo.InvariantCulture);
}
