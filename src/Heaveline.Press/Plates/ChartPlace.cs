using Heaveline.Figures;

namespace Heaveline.Press.Plates;

/// <summary>What a chart panel takes from the figure it stands in.</summary>
/// <param name="PlotHeight">Height of its plot, points.</param>
/// <param name="WidestName">Width a name right of the plot may take before it wraps, points.</param>
/// <param name="ShowsXNumbers">Whether its x axis carries numbers and heading; of panels on the shared axis only the lowest does.</param>
/// <param name="SharedBands">Bands of the shared axis; empty for a panel with its own.</param>
/// <param name="NamesSharedBands">Whether it prints the names of those bands; only the topmost does.</param>
internal sealed record ChartPlace(double PlotHeight, double WidestName, bool ShowsXNumbers, IReadOnlyList<Band> SharedBands, bool NamesSharedBands);
