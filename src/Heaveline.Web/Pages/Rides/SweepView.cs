using Heaveline.Answers;
using Heaveline.Figures;

namespace Heaveline.Web.Pages.Rides;

/// <summary>What the page shows of a sweep over speed. Made of figures and tables alone, so that it may be kept.</summary>
/// <param name="Sweep">Comfort and pitch against speed.</param>
/// <param name="Count">What the trade minds and the standard counts, of the first car; null where it has no seat.</param>
/// <param name="Tables">A table a car.</param>
/// <param name="Cautions">Where the numbers must be doubted.</param>
/// <param name="InTime">Whether the passes in time are in it.</param>
public sealed record SweepView(Figure Sweep, Figure? Count, IReadOnlyList<FactTable> Tables, IReadOnlyList<string> Cautions, bool InTime);
