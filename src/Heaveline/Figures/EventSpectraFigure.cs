using Heaveline.Drives;
using Heaveline.Drives.Events;

namespace Heaveline.Figures;

/// <summary>Spectra of a drive's motion, over its bumps and on the road between.</summary>
public static class EventSpectraFigure
{
    private const double From = 0.4;
    private const double To = 25.0;

    /// <summary>The figure, page wide.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="events">Its bumps.</param>
    public static Figure Of(Drive drive, DriveEvents events)
    {
        var spectra = EventSpectra.Of(drive, events);
        var panels = new List<Panel> { Panel(spectra, spectra.VerticalOfBumps, spectra.VerticalBetween, "vertical acceleration", "m²/s³") };
        if (!drive.PitchRate.IsEmpty)
        {
            panels.Add(Panel(spectra, spectra.RateOfBumps, spectra.RateBetween, "pitch rate", "rad²/s"));
        }

        return new Figure
        {
            Title = "How strong the motion is at each frequency",
            AltText = "Charts against frequency: spectral density of the floor's vertical acceleration, and of the pitch rate, "
                + "over bumps and on the road between.",
            Caption = "Bumps that count: the mean over 5 s about each. Between: the median of windows of 5 s in "
                + "which the car moves and no bump lies. "
                + "Peaks are those of car and road together: they are not the car's frequencies.",
            Size = FigureSize.Page,
            SharedX = new Axis
            {
                Label = "frequency", Unit = "Hz", Scale = AxisScale.Logarithmic, From = From, To = Math.Min(To, 0.4 * drive.Rate),
            },
            Panels = [.. panels],
        };
    }

    private static ChartPanel Panel(EventSpectra spectra, IReadOnlyList<double> bumps, IReadOnlyList<double> between, string label, string unit)
    {
        int[] shown = [.. Enumerable.Range(0, spectra.Frequencies.Length).Where(k => spectra.Frequencies[k] is >= From and <= To)];
        return new ChartPanel
        {
            Y = new Axis { Label = label, Unit = unit, Scale = AxisScale.Logarithmic },
            Traces = [.. new[] { ("bumps", bumps, Pen.Of(Ink.First)), ("between", between, Pen.Of(Ink.Second, Dash.Dashed)) }
                .Where(t => t.Item2.Count > 0)
                .Select(t => Trace.From(
                    t.Item1,
                    [.. shown.Select(k => spectra.Frequencies[k])],
                    [.. shown.Select(k => Math.Max(t.Item2[k], double.Epsilon) is var y && y > 1e-12 ? y : double.NaN)],
                    t.Item3))],
        };
    }
}
