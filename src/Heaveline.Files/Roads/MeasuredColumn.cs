namespace Heaveline.Files.Roads;

/// <summary>One column of a measured profile while it is read.</summary>
internal sealed class MeasuredColumn(string name, string unit, double metres)
{
    internal string Name { get; } = name;

    internal string Unit { get; } = unit;

    /// <summary>Metres in one of its units.</summary>
    internal double Metres { get; } = metres;

    /// <summary>Values, m, one a point; NaN where the cell is refused.</summary>
    internal List<double> Values { get; } = [];

    /// <summary>A length in this column's unit.</summary>
    internal string Write(double length) => FormattableString.Invariant($"{length / Metres:0.######} {Unit}");
}
