using Heaveline.Quantities;

namespace Heaveline;

/// <summary>One number of a reply, in the unit and with the digits that it is shown in everywhere.</summary>
public sealed class Number
{
    internal Number(string table, string column, string key, string label, double value, string unit, string format) =>
        (Table, Column, Key, Label, Value, Unit, Format) = (table, column, key, label, value, unit, format);

    /// <summary>What its table is of.</summary>
    public string Table { get; }

    /// <summary>Heading of its column: a load state, a car, a speed.</summary>
    public string Column { get; }

    /// <summary>Name for machines, kebab-case, never changed; the glossary lists those of the measures.</summary>
    public string Key { get; }

    /// <summary>Name for people.</summary>
    public string Label { get; }

    /// <summary>The value in <see cref="Unit"/>, not rounded. Finite.</summary>
    public double Value { get; }

    /// <summary>The unit, "–" for a plain number.</summary>
    public string Unit { get; }

    /// <summary>.NET number format of the value as shown ("F3").</summary>
    public string Format { get; }

    /// <summary>The value as shown, with its unit ("0.861°").</summary>
    public override string ToString() => Numeral.Of(Value, Format) + new ShownUnit("", Unit, 1.0).Suffix;
}
