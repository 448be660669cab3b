using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>How many fitted cars keep a promise, against the tolerance of the springs, a curve for each tolerance of the dampers.</summary>
public static class ToleranceFigure
{
    private static readonly (Ink Ink, Dash Dash)[] Pens =
    [
        (Ink.First, Dash.Solid), (Ink.Second, Dash.Dashed), (Ink.Third, Dash.Dotted), (Ink.Fourth, Dash.Solid), (Ink.First, Dash.Dashed),
        (Ink.Second, Dash.Dotted), (Ink.Third, Dash.Solid), (Ink.Fourth, Dash.Dashed),
    ];

    /// <summary>The figure, page wide.</summary>
    /// <param name="title">What it is of.</param>
    /// <param name="caption">The finding.</param>
    /// <param name="heights">Tolerance of the heights that all of it is at, m.</param>
    /// <param name="curves">Names with tolerances of the springs (–) and shares (–), rising in the former.</param>
    /// <param name="wanted">The share that is asked for (–).</param>
    public static Figure Of(
        string title,
        string caption,
        double heights,
        ImmutableArray<(string Name, ImmutableArray<(double Springs, double Share)> At)> curves,
        double wanted)
    {
        var least = curves.SelectMany(c => c.At).Min(at => In.Percent.Of(at.Share));
        return new Figure
        {
            Title = title,
            AltText = "Share of the fitted cars that keep the promise against the tolerance of the springs, "
                + $"{curves.Length} curves by that of the dampers.",
            Caption = caption,
            SignNote = $"Heights ± {Numeral.Of(In.Millimetres.Of(heights), "0.##")} mm in all of it.",
            Size = FigureSize.Page,
            SharedX = new Axis { Label = "tolerance of the spring rates, ±", Unit = In.Percent.Symbol, From = 0.0 },
            Panels =
            [
                new ChartPanel
                {
                    Id = "kept",
                    Y = new Axis
                    {
                        Label = "cars that keep it",
                        Unit = In.Percent.Symbol,
                        From = Math.Floor(Math.Min(least, 90.0) / 10.0) * 10.0,
                        To = 100.0,
                    },
                    Traces =
                    [
                        .. curves.Select((c, i) => Trace.From(
                            c.Name,
                            [.. c.At.Select(at => In.Percent.Of(at.Springs))],
                            [.. c.At.Select(at => In.Percent.Of(at.Share))],
                            Pen.Of(Pens[i % Pens.Length].Ink, Pens[i % Pens.Length].Dash))),
                    ],
                    Limits = [new Limit { At = In.Percent.Of(wanted), Label = $"{Numeral.Of(In.Percent.Of(wanted), "0.#")} of 100" }],
                },
            ],
        };
    }
}
