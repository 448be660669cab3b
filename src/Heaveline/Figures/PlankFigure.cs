using System.Globalization;
using Heaveline.Drives.Planning;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>Rows of planks as they are laid, each with what the body's ends then do.</summary>
public static class PlankFigure
{
    private const double After = 1.1;

    /// <summary>The figure, page wide: two panels a row.</summary>
    /// <param name="car">The car under its load.</param>
    /// <param name="rows">The rows, each with what it is to excite.</param>
    public static Figure Of(string car, IReadOnlyList<(string Name, PlankFind Find)> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        return new Figure
        {
            Title = $"{car}: planks for one motion alone",
            AltText = "For each row of planks its height over distance, and below it the height of the body over both axles against time. "
                + string.Join(" ", rows.Select(r => $"{FirstLetter.Raised(r.Name)}: {r.Find.Layout.Words}.")),
            Caption = string.Join(" ", rows.Select(r => string.Create(
                CultureInfo.InvariantCulture,
                $"{FirstLetter.Raised(r.Name)}: at {In.KilometresPerHour.Of(r.Find.Speed):0.#} km/h, "
                + $"{In.Percent.Of(r.Find.Share):F0} % of the motion.")))
                + " Shaded: the first second after the rear wheels have left. Heights of the planks enlarged. Nonlinear passes.",
            SignNote = "Heights upwards. Both tracks alike.",
            Size = FigureSize.Page,
            Panels = [.. rows.SelectMany(r => new Panel[] { Laid(r.Name, r.Find), Moving(r.Find.Pass) })],
        };
    }

    private static ChartPanel Laid(string name, PlankFind find)
    {
        var (xs, ys) = (new List<double> { -0.5 }, new List<double> { 0.0 });
        foreach (var place in find.Layout.Places)
        {
            xs.AddRange([place.Start, place.Start + place.Edge, place.End - place.Edge, place.End]);
            ys.AddRange([0.0, place.Height, place.Height, 0.0]);
        }

        xs.Add(find.Layout.End + 0.5);
        ys.Add(0.0);
        return new ChartPanel
        {
            Title = FormattableString.Invariant($"{FirstLetter.Raised(name)}, {In.KilometresPerHour.Of(find.Speed):0.#} km/h"),
            X = new Axis { Label = "distance", Unit = "m" },
            Y = new Axis { Label = "planks", Unit = "mm", From = 0.0 },
            Height = 14.0,
            Traces = [Trace.From("", [.. xs], [.. ys.Select(In.Millimetres.Of)], Pen.Of(Ink.Third))],
        };
    }

    private static ChartPanel Moving(Pass pass)
    {
        var count = pass.Time.TakeWhile(t => t <= pass.RearLeaves + After).Count();
        double[] times = [.. pass.Time.Take(count)];
        Trace Over(string name, IEnumerable<double> heights, Pen pen) =>
            Trace.From(name, times, [.. heights.Take(count).Select(In.Millimetres.Of)], pen);
        return new ChartPanel
        {
            X = new Axis { Label = "time", Unit = "s" },
            Y = new Axis { Label = "body", Unit = "mm" },
            Height = 28.0,
            Bands = [new Band { From = pass.RearLeaves, To = Math.Min(pass.RearLeaves + 1.0, times[^1]), Shade = BandShade.Grey }],
            Traces =
            [
                Over("over the rear axle", pass.RearHeight, Pen.Of(Ink.Second)),
                Over("over the front axle", pass.FrontHeight, Pen.Of(Ink.First)),
            ],
        };
    }
}
