using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A number of a standing car in each load state, with its doubt by slopes.</summary>
/// <param name="Measure">What the number is.</param>
/// <param name="Cells">One per load state; null where it does not exist.</param>
public sealed record DoubtedRow(Measure<CarAtRest> Measure, IReadOnlyList<DoubtedNumber?> Cells)
{
    /// <summary>A number and its doubt as printed; no doubt where it is below the last digit.</summary>
    public (string Value, string? Doubt) Print(DoubtedNumber? cell) => Numeral.Of(cell?.Value ?? double.NaN, cell?.HalfWidth ?? 0.0, Measure.Digits);

    /// <summary>The least and the most that any load state's band reaches, with a little room.</summary>
    public (double From, double To) Span
    {
        get
        {
            var all = Cells.OfType<DoubtedNumber>().ToList();
            var (low, high) = (all.Min(cell => cell.Value - cell.HalfWidth), all.Max(cell => cell.Value + cell.HalfWidth));
            var room = high > low ? 0.06 * (high - low) : 1.0;
            return (low - room, high + room);
        }
    }
}
