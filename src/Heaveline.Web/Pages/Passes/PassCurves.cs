using System.Collections.Immutable;
using Heaveline.Figures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// The page's curves: those of the crossing as in its printed figure, pitch first and large with its nods labelled, and behind each panel those of
/// the former state, as a wide tint.
/// </summary>
internal static class PassCurves
{
    private const string Pitch = "pitch";
    private const string Road = "road";
    private const double Larger = 1.25;

    // Nods of two states that lie further apart are not the same nod, s.
    private const double SameNod = 0.35;

    // The page's script draws this ink as a wide tint.
    private static readonly Pen Ghost = new() { Ink = Ink.Fourth };

    /// <summary>The figure, thinned to what a screen shows.</summary>
    /// <param name="now">The crossing.</param>
    /// <param name="former">What it is set against; null for nothing.</param>
    /// <param name="isTurned">Whether what it is set against is the car after the change.</param>
    public static Figure Of(PassAnswer now, PassAnswer? former, bool isTurned = false)
    {
        var figure = PassFigure.Of(now.Pass, now.Measures);
        var behind = former is { Pass.Count: > 1 } ? PassPanels.Of(former.Pass, former.Measures) : [];
        var axis = former is { Pass.Count: > 1 } ? EventBands.TimeOf(now.Pass, former.Pass) : figure.SharedX!;
        var to = axis.To!.Value;
        return figure with
        {
            SharedX = axis,
            Panels = [.. figure.Panels.OfType<ChartPanel>().OrderBy(panel => panel.Id == Pitch ? 0 : 1)
            .Select(panel => panel.Id != Pitch ? panel
                : panel with { Height = Larger * panel.Height, Marks = Nods(now.Pass, former?.Pass, isTurned) })
            .Select(panel => Panel(panel, behind, to))]
        };
    }

    private static ImmutableArray<Mark> Nods(Pass now, Pass? former, bool isTurned)
    {
        var (nods, others) = (PassPhase.Nods(now), former is { Count: > 1 } behind ? PassPhase.Nods(behind) : []);
        string Degrees(double pitch) => Numeral.Of(In.Degrees.Of(Math.Abs(pitch)), 1);
        string Label(double time, double pitch)
        {
            var same = others.Where(nod => Math.Sign(nod.Pitch) == Math.Sign(pitch) && Math.Abs(nod.Time - time) < SameNod).ToArray();
            if (same.Length == 0)
            {
                return $"{Degrees(pitch)}°";
            }

            var other = same.MinBy(nod => Math.Abs(nod.Time - time)).Pitch;
            var (from, to) = isTurned ? (pitch, other) : (other, pitch);
            return $"{Degrees(from)} → {Degrees(to)}°";
        }

        return
        [
            .. nods.Zip(ReaderSigns.NoseUpDegrees([.. nods.Select(nod => nod.Pitch)]), (nod, up) =>
                new Mark { X = nod.Time, Y = up, Label = Label(nod.Time, nod.Pitch) }),
        ];
    }

    private static ChartPanel Panel(ChartPanel panel, ImmutableArray<Panel> behind, double to)
    {
        // Both meet the same road.
        var ghosts = behind.OfType<ChartPanel>().Where(other => other.Id == panel.Id && panel.Id != Road).SelectMany(other => other.Traces);
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
