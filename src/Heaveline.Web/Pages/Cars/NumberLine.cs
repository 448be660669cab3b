using Heaveline.Measures;

namespace Heaveline.Web.Pages.Cars;

/// <summary>A row with its value in each load state.</summary>
/// <param name="Measure">What the number is.</param>
/// <param name="Cells">One per load state; null where it does not exist.</param>
public sealed record NumberLine(Measure<CarAtRest> Measure, IReadOnlyList<NumberCell?> Cells)
{
    /// <summary>A doubt as printed; null when it rounds to nothing.</summary>
    public string? Doubt(NumberCell cell) => Measure.Print(cell.HalfWidth) is var text && text != Measure.Print(0.0) ? text : null;

    /// <summary>The least and the most that any load state's band reaches, with a little room.</summary>
    public (double From, double To) Span
    {
        get
        {
            var all = Cells.OfType<NumberCell>().ToList();
            var (low, high) = (all.Min(cell => cell.Value - cell.HalfWidth), all.Max(cell => cell.Value + cell.HalfWidth));
            var room = high > low ? 0.06 * (high - low) : 1.0;
            return (low - room, high + room);
        }
    }
}
