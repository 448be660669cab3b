using Heaveline.Drives.Planning;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>What more passes tell: how the half-width of a number shrinks, and how the chance to show a change grows.</summary>
public static class PlanPassesFigure
{
    /// <summary>The figure, page wide.</summary>
    /// <param name="wish">What the day is planned for.</param>
    /// <param name="drive">The drive.</param>
    /// <param name="number">Name of the number that is to be known.</param>
    /// <param name="doubt">Half-width that the car file leaves of it, of the logarithm.</param>
    public static Figure Of(TestDayWish wish, TestDrive drive, string number, double doubt)
    {
        ArgumentNullException.ThrowIfNull(wish);
        ArgumentNullException.ThrowIfNull(drive);
        // With what a first drive told already, without it from the fewest that tell anything.
        double[] passes = [.. Enumerable.Range(0, (TestDrive.MostPasses / 3) + 1).Skip(wish.First is null ? 1 : 0).Select(k => 3.0 * k)];
        double[] widths =
        [
            .. passes.Select(n => In.Percent.Of(
                TestDay.HalfWidths(wish, drive.Hump, drive.Speeds, (int)n, wish.Phone, CancellationToken.None)[wish.Number])),
        ];
        var panels = new List<Panel>
        {
            new ChartPanel
            {
                Title = $"{FirstLetter.Raised(number)}: half-width of its 90 % interval",
                Y = new Axis { Label = "half-width", Unit = "%", From = 0.0 },
                Traces = [Trace.From("", passes, widths, Pen.Of(Ink.First))],
                Limits = doubt < 0.5 ? [new Limit { At = In.Percent.Of(0.5 * doubt), Label = "half the doubt" }] : [],
            },
        };
        if (drive.Change is { } change)
        {
            double[] counts = [.. Enumerable.Range(3, TestDrive.MostPasses - 2).Select(n => (double)n)];
            panels.Add(new ChartPanel
            {
                Title = $"Chance to show a change of {Numeral.Change(In.Percent.Of(Math.Exp(change) - 1.0), 0)} %, passes before and after alike",
                Y = new Axis { Label = "chance", Unit = "%", From = 0.0, To = 100.0 },
                Traces =
                [
                    Trace.From(
                        "", counts, [.. counts.Select(n => In.Percent.Of(PassScatter.Power((int)n, change, drive.Scatter)))], Pen.Of(Ink.First)),
                ],
                Limits = [new Limit { At = 80.0, Label = "four of five" }],
            });
        }

        return new Figure
        {
            Title = $"What more passes over {drive.Hump.Name} tell",
            AltText = $"Against the number of passes: the half-width of the 90 % interval of the {number}"
                + (drive.Change is null ? "." : ", and the chance to show the change."),
            Caption = "Expected from the information of the drive's likelihood"
                + (drive.Change is null
                    ? "."
                    : FormattableString.Invariant($"; one pass scatters by {In.Percent.Of(drive.Scatter):F1} %, level 10 %.")),
            Size = FigureSize.Page,
            SharedX = new Axis { Label = "passes", From = 0.0 },
            Panels = [.. panels],
        };
    }
}
