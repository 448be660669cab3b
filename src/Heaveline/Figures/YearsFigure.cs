using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>The chance of what years bring to a car, against the years.</summary>
public static class YearsFigure
{
    private static readonly (Ink Ink, Dash Dash)[] Pens =
        [(Ink.First, Dash.Solid), (Ink.Second, Dash.Dashed), (Ink.Third, Dash.Dotted), (Ink.Fourth, Dash.Solid), (Ink.First, Dash.Dotted)];

    /// <summary>The figure, page wide.</summary>
    /// <param name="title">What it is of.</param>
    /// <param name="caption">The finding.</param>
    /// <param name="chances">Events with their shares in each year from 0 on (–).</param>
    public static Figure Of(string title, string caption, ImmutableArray<(string What, ImmutableArray<double> Shares)> chances) => new()
    {
        Title = title,
        AltText = $"The chance of {chances.Length} events against the years, with a line at one half.",
        Caption = caption,
        Size = FigureSize.Page,
        SharedX = new Axis { Label = "years from today", From = 0.0 },
        Panels =
        [
            new ChartPanel
            {
                Id = "chances",
                Y = new Axis { Label = "chance", Unit = In.Percent.Symbol, From = 0.0, To = 100.0 },
                Traces =
                [
                    .. chances.Select((c, i) => Trace.From(
                        c.What,
                        [.. Enumerable.Range(0, c.Shares.Length).Select(year => (double)year)],
                        [.. c.Shares.Select(share => In.Percent.Of(share))],
                        Pen.Of(Pens[i].Ink, Pens[i].Dash))),
                ],
                Limits = [new Limit { At = 50.0, Label = "one half" }],
            },
        ],
    };
}
