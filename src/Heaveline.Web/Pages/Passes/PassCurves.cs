using System.Collections.Immutable;
using Heaveline.Figures;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// The page's curves: those of the crossing as in its printed figure, and behind each panel those of the former state, dotted and pale.
/// </summary>
internal static class PassCurves
{
    private static readonly Pen Ghost = new() { Ink = Ink.Fourth, Dash = Dash.Dashed, Width = 0.9 };

    /// <summary>The figure, thinned to what a screen shows.</summary>
    /// <param name="now">The crossing.</param>
    /// <param name="former">What it is set against; null for nothing.</param>
    public static Figure Of(PassAnswer now, PassAnswer? former)
    {
        var figure = PassFigure.Of(now.Pass, now.Measures);
        var behind = former is { Pass.Count: > 1 } ? PassPanels.Of(former.Pass, former.Measures) : [];
        var axis = former is { Pass.Count: > 1 } ? EventBands.TimeOf(now.Pass, former.Pass) : figure.SharedX!;
        var to = axis.To!.Value;
        return figure with { SharedX = axis, Panels = [.. figure.Panels.OfType<ChartPanel>().Select(panel => Panel(panel, behind, to))] };
    }

    private static ChartPanel Panel(ChartPanel panel, ImmutableArray<Panel> behind, double to)
    {
        var ghosts = behind.OfType<ChartPanel>().Where(other => other.Id == panel.Id).SelectMany(other => other.Traces);
        return panel with
        {
            Traces =
            [
                .. ghosts.Select(trace => ThinCurve.Of(trace with { Name = "", Pen = Ghost }, to)),
                .. panel.Traces.Select(trace => ThinCurve.Of(trace, to)),
            ],
        };
    }
}
