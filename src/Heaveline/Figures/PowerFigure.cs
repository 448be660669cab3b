using System.Globalization;
using Heaveline.Drives.Comparison;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>How many pairs of drives of so many passes would find a change, with where these two stand.</summary>
public static class PowerFigure
{
    private const int Most = 24;

    // Planted passes over rough road scatter by 6 to 8 %.
    private const double Usual = 0.08;

    /// <summary>The figure, a column wide: changes by half of what matters, by what matters and by twice that.</summary>
    /// <param name="result">What was compared.</param>
    /// <param name="what">The number, in words.</param>
    public static Figure Of(BeforeAfter result, string what)
    {
        ArgumentNullException.ThrowIfNull(result);
        var isKnown = result.Pooled is not null;
        var scatter = isKnown ? result.Scatter : Usual;
        double Found(int passes, double change) => isKnown ? result.PowerAt(passes, change) : Plain(passes, change, result.Settings.Confidence);
        var here = Math.Min(result.Before, result.After);
        int[] counts = [.. Enumerable.Range(2, Math.Max(Most, here + 4) - 1)];
        var changes = new[]
        {
            (Share: 0.5, Ink: Ink.Fourth, Dash: Dash.Dotted),
            (Share: 1.0, Ink: Ink.First, Dash: Dash.Solid),
            (Share: 2.0, Ink: Ink.Second, Dash: Dash.Dashed),
        };
        return new Figure
        {
            Title = "What so many passes would find",
            AltText = "Chance of finding a change against the number of passes in each drive, for three sizes of the change; "
                + "a mark where these drives stand.",
            Caption = string.Create(
                CultureInfo.InvariantCulture,
                $"{what}: "
                + $"{(isKnown ? "one pass scatters" : "nothing is compared yet; one pass is taken to scatter")} by {In.Percent.Of(scatter):F1} %. ")
                + string.Create(
                    CultureInfo.InvariantCulture,
                    $"The chance that {100.0 * result.Settings.Confidence:F0} % intervals leave nothing out, passes spread over the bumps as here."),
            SharedX = new Axis { Label = "passes in each drive", From = 0.0 },
            Panels =
            [
                new ChartPanel
                {
                    Id = "power",
                    Y = new Axis { Label = "found", Unit = In.Percent.Symbol, From = 0.0, To = 100.0 },
                    Traces =
                    [
                        .. changes.Select(c => Trace.From(
                            Numeral.Of(In.Percent.Of(c.Share * result.Settings.Matters), "0.#") + " %",
                            [.. counts.Select(n => (double)n)],
                            [.. counts.Select(n => In.Percent.Of(Found(n, c.Share * result.Settings.Matters)))],
                            Pen.Of(c.Ink, c.Dash))),
                    ],
                    Marks = here < 2 ? [] : [new Mark { X = here, Y = In.Percent.Of(Found(here, result.Settings.Matters)), Label = "you are here" }],
                    Limits = [new Limit { At = In.Percent.Of(ComparisonSettings.WantedPower), Label = "four of five" }],
                },
            ],
        };
    }

    // One bump, speed beside the change: three coefficients.
    private static double Plain(int passes, double change, double share)
    {
        var freedom = (2 * passes) - 3;
        return freedom < 1
            ? 0.0
            : StudentPower.Above(Math.Log(1.0 + change) / (Usual * Math.Sqrt(2.0 / passes)), freedom, LeastSquares.Student(freedom, share));
    }
}
