using Heaveline.Drives.Comparison;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>Every pass of two drives against speed, with what was fitted to both.</summary>
public static class BeforeAfterFigure
{
    private const int MostPanels = 4;
    private const int Points = 25;

    /// <summary>The figure, page wide: a panel a bump, those with most passes.</summary>
    /// <param name="result">What was compared.</param>
    /// <param name="what">The number, in words.</param>
    /// <param name="unit">The unit that it is shown in.</param>
    /// <param name="verdict">What is said of it.</param>
    public static Figure Of(BeforeAfter result, string what, ShownUnit unit, string verdict)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(unit);
        var passes = result.Counted.Concat(result.LeftOut).ToList();
        List<string> all = [.. result.Sites.Select(s => s.Site), .. result.CrossedOnce];
        string[] sites = [.. all.OrderByDescending(s => passes.Count(p => p.Site == s)).Take(MostPanels).OrderBy(all.IndexOf)];
        return new Figure
        {
            Title = "Before and after",
            AltText = $"{sites.Length} {(sites.Length == 1 ? "chart" : "charts")} of {Lower(what)} against speed: "
                + "rings before, discs after, the fitted line of each with its interval.",
            Caption = $"{verdict} Each symbol is a pass: rings before, discs after, crosses count for nothing. Lines: what was fitted; shaded: "
                + "the interval of the line.",
            Size = FigureSize.Page,
            SharedX = new Axis { Label = "speed", Unit = In.KilometresPerHour.Symbol },
            Panels = sites.Length == 0
                ? [Empty(what, unit)]
                : [.. sites.Select(site => PanelOf(result, site, [.. passes.Where(p => p.Site == site)], what, unit))],
        };
    }

    private static ChartPanel Empty(string what, ShownUnit unit) => new()
    {
        X = new Axis { Label = "speed", Unit = In.KilometresPerHour.Symbol, From = 0.0, To = 40.0 },
        Y = new Axis { Label = Short(what), Unit = unit.Symbol, From = 0.0, To = 1.0 },
        Notes = [new Note { X = 2.0, Y = 0.5, Text = "no bump was crossed in either drive" }],
    };

    private static ChartPanel PanelOf(BeforeAfter result, string site, List<ComparedPass> passes, string what, ShownUnit unit)
    {
        var counted = result.Counted.Where(p => p.Site == site).ToList();
        var states = new[] { false, true }
            .Where(s => counted.Any(p => p.IsAfter == s)).Select(s => (IsAfter: s, Line: LineOf(result, site, counted, s)))
            .Where(s => s.Line.Length > 0).ToList();
        return new ChartPanel
        {
            Id = site,
            Title = site,
            Y = new Axis { Label = passes.Count > 0 && what.Length > 30 ? Short(what) : Lower(what), Unit = unit.Symbol, From = 0.0 },
            Ribbons =
            [
                .. states.Select(s => new Ribbon
                {
                    Xs = [.. s.Line.Select(l => In.KilometresPerHour.Of(l.Speed))],
                    Lows = [.. s.Line.Select(l => unit.Of(l.Low))],
                    Highs = [.. s.Line.Select(l => unit.Of(l.High))],
                    Ink = InkOf(s.IsAfter),
                }),
            ],
            Traces =
            [
                .. states.Select(s => Trace.From(
                    s.IsAfter ? "after" : "before",
                    [.. s.Line.Select(l => In.KilometresPerHour.Of(l.Speed))],
                    [.. s.Line.Select(l => unit.Of(l.Value))],
                    Pen.Of(InkOf(s.IsAfter), s.IsAfter ? Dash.Solid : Dash.Dashed))),
            ],
            Marks =
            [
                .. passes.Select(p => new Mark
                {
                    X = In.KilometresPerHour.Of(p.Speed),
                    Y = unit.Of(p.Value),
                    Symbol = !result.Counted.Contains(p) ? MarkSymbol.Cross : p.IsAfter ? MarkSymbol.Dot : MarkSymbol.Ring,
                    Ink = InkOf(p.IsAfter),
                }),
            ],
        };
    }

    private static (double Speed, double Value, double Low, double High)[] LineOf(
        BeforeAfter result, string site, List<ComparedPass> counted, bool isAfter)
    {
        var (slowest, fastest) = (counted.Min(p => p.Speed), counted.Max(p => p.Speed));
        return
        [
            .. from i in Enumerable.Range(0, Points)
               let speed = slowest + ((fastest - slowest) * i / (Points - 1))
               let level = fastest > slowest ? result.Level(site, speed, isAfter) : null
               where level is not null
               select (speed, level.Value.Value, level.Value.Low, level.Value.High),
        ];
    }

    private static Ink InkOf(bool isAfter) => isAfter ? Ink.First : Ink.Second;

    private static string Lower(string text) => text.Length > 1 && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;

    // An axis has little room: what stands before the place.
    private static string Short(string text) => Lower(text[..text.IndexOf(' ', text.IndexOf(' ', StringComparison.Ordinal) + 1)]);
}
