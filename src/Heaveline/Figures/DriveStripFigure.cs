using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>A drive at a glance over time: speed, knock, swing; what nothing is read from is grey.</summary>
public static class DriveStripFigure
{
    private const int Points = 900;
    private const int MostBands = 60;
    private const int MostNumbered = 30;

    /// <summary>The figure, page wide.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="trust">What is read of it.</param>
    /// <param name="events">Its bumps; null: none were looked for.</param>
    public static Figure Of(Drive drive, Trust trust, DriveEvents? events = null)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(trust);
        var strip = DriveStrip.Of(drive);
        var panels = new List<Panel>();
        if (!drive.Speed.IsEmpty)
        {
            panels.Add(Panel(drive, drive.Speed, "speed", In.KilometresPerHour, isEverywhere: true));
        }

        panels.Add(Panel(drive, strip.Knock, "knock", In.MetresPerSecondSquared) with { Marks = [.. Marks(drive, strip, events)] });
        if (!strip.Swing.IsEmpty)
        {
            panels.Add(Panel(drive, strip.Swing, "swing", In.DegreesPerSecond));
        }

        return new Figure
        {
            Title = "The drive at a glance",
            AltText = $"Over time: {(drive.Speed.IsEmpty ? "" : "speed, ")}how hard the floor is knocked"
                + $"{(strip.Swing.IsEmpty ? "" : " and how fast the body swings in pitch")}. Grey where nothing is read.",
            Caption = "Knock: vertical acceleration of the floor between 2 and 15 Hz, RMS over 0.12 s"
                + (strip.Swing.IsEmpty ? "." : "; swing: pitch rate between 0.7 and 6 Hz, RMS over 0.4 s.")
                + " The greatest value of each short stretch is drawn."
                + (trust.Dropped.IsEmpty ? "" : " Grey: nothing is read there.")
                + (events is not { Events.IsEmpty: false } ? ""
                    : " Dots: bumps that count, by their number" + (events.Events.All(e => e.IsKept) ? "." : "; crosses: bumps that do not.")),
            Size = FigureSize.Page,
            SharedX = new Axis { Label = "time", Unit = "s", From = drive.Start, To = drive.Time(drive.Vertical.Length - 1) },
            SharedBands = [.. Merged(trust).Take(MostBands).Select(p => new Band { From = p.From, To = p.To, Shade = BandShade.Grey })],
            Panels = [.. panels],
        };
    }

    // A number at each where there is room.
    private static IEnumerable<Mark> Marks(Drive drive, DriveStrip strip, DriveEvents? events)
    {
        var all = events?.Events ?? [];
        foreach (var e in all)
        {
            // At the hardest knock of the hit.
            var (first, last) = (Place(e.Onset), Place(e.HitUntil + 0.2));
            var i = first;
            for (var k = first; k <= last; k++)
            {
                i = strip.Knock[k] > strip.Knock[i] ? k : i;
            }

            yield return new Mark
            {
                X = drive.Time(i),
                Y = strip.Knock[i],
                Label = all.Length <= MostNumbered && e.IsKept ? FormattableString.Invariant($"{e.Number}") : "",
                Symbol = e.IsKept ? MarkSymbol.Dot : MarkSymbol.Cross,
                Ink = e.IsKept ? Ink.Second : Ink.Fourth,
            };
        }

        int Place(double t) => Math.Clamp((int)Math.Round((t - drive.Start) * drive.Rate), 0, strip.Knock.Length - 1);
    }

    private static ChartPanel Panel(Drive drive, IReadOnlyList<double> values, string label, ShownUnit unit, bool isEverywhere = false)
    {
        var every = Math.Max(1, values.Count / Points);
        var covered = new bool[values.Count];
        foreach (var (first, last) in drive.Covered)
        {
            covered.AsSpan(first, last - first + 1).Fill(true);
        }

        var (xs, ys) = (new List<double>(), new List<double>());
        for (var from = 0; from < values.Count; from += every)
        {
            var most = double.NaN;
            for (var i = from; i < Math.Min(from + every, values.Count); i++)
            {
                most = isEverywhere || covered[i] ? double.IsNaN(most) ? values[i] : Math.Max(most, values[i]) : most;
            }

            xs.Add(drive.Time(from));
            ys.Add(unit.Of(most));
        }

        return new ChartPanel
        {
            Y = new Axis { Label = label, Unit = unit.Symbol, From = 0.0 },
            Traces = [Trace.From("", [.. xs], [.. ys], Pen.Of(Ink.First) with { Width = 0.6 })],
        };
    }

    // Bands that touch are one.
    private static List<Stretch> Merged(Trust trust)
    {
        var merged = new List<Stretch>();
        foreach (var (part, _) in trust.Dropped)
        {
            if (merged.Count > 0 && part.From <= merged[^1].To)
            {
                merged[^1] = new Stretch(merged[^1].From, Math.Max(merged[^1].To, part.To));
            }
            else
            {
                merged.Add(part);
            }
        }

        return merged;
    }
}
