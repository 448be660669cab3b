namespace Heaveline.Files.Forms;

/// <summary>A dimension as a form needs it: its name, its units, and how a written quantity is taken apart and put into another unit.</summary>
public abstract class QuantityForm
{
    private protected QuantityForm(string dimension, IReadOnlyList<FormUnit> units)
    {
        Dimension = dimension;
        Units = units;
    }

    /// <summary>The signs that a doubt stands behind.</summary>
    public static IReadOnlyList<string> DoubtMarks { get; } = ["±", "+/-", "+-", "+/−"];

    /// <summary>Name in words ("spring rate").</summary>
    public string Dimension { get; }

    /// <summary>Units that people of the trade write for it, the usual one first. A file may use others that fit.</summary>
    public IReadOnlyList<FormUnit> Units { get; }

    /// <summary>Takes a written quantity apart.</summary>
    public abstract QuantityParts Split(string text);

    /// <summary>
    /// The same quantity in another unit: one digit more than were written, four at least, so that no digit is lost; zeros at the end are left
    /// out. A doubt in per cent or with a unit of its own stays as it is; one in the value's unit is converted too.
    /// </summary>
    /// <param name="parts">A quantity that was read.</param>
    /// <param name="unit">A unit of the dimension; empty for a plain number.</param>
    /// <returns>The parts in the new unit; the same ones when they carry a refusal.</returns>
    /// <exception cref="ArgumentException">The unit is none of this dimension.</exception>
    public abstract QuantityParts Convert(QuantityParts parts, string unit);
}
