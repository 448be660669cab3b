using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>Several cars, loads or variants over the same road at the same speed, laid over one another.</summary>
public static class CompareFigure
{
    /// <summary>How many can be told apart in one panel.</summary>
    public const int Most = 6;

    // The reference steps back; the rest differ in lightness and in dash, so that they keep apart in a grey print.
    private static readonly Pen[] Pens =
    [
        Pen.Of(Ink.Fourth, Dash.Dashed), Pen.Of(Ink.First), Pen.Of(Ink.Second), Pen.Of(Ink.Third, Dash.DashDot), Pen.Of(Ink.First, Dash.Dotted),
        Pen.Of(Ink.Second, Dash.DashDot),
    ];

    /// <summary>
    /// The figure, page wide: heights over both axles, pitch and pitch acceleration. The first is the reference: grey, dashed, behind the others.
    /// </summary>
    /// <param name="passes">Two to six passes over one road at one speed, each with its name and numbers.</param>
    /// <exception cref="RefusedValueException">Too few or too many, or roads or speeds differ.</exception>
    public static Figure Of(IReadOnlyList<(string Name, Pass Pass, PassMeasures Measures)> passes)
    {
        ArgumentNullException.ThrowIfNull(passes);
        Alike(passes);
        var reference = passes[0];
        return new Figure
        {
            Title = $"{FirstLetter.Raised(reference.Pass.Road.MetBy(reference.Pass.Model.Rolls).Name)} at {Printed.Speed(reference.Pass.Speed)}: "
                + $"{string.Join("; ", passes.Select(one => one.Name))}",
            AltText = $"Four charts over one time axis with {passes.Count} curves each: body height over the front and the rear axle, pitch, "
                + $"pitch acceleration. {CompareCaption.Numbers(passes)}",
            Caption = CompareCaption.Of(passes),
            SignNote = $"{ReaderSigns.Pitch} Everything from the standing car.",
            Size = FigureSize.Page,
            SharedX = EventBands.TimeOf([.. passes.Select(one => one.Pass)]),
            SharedBands = EventBands.Of(reference.Measures),
            Panels =
            [
                PanelOf("height of the body over the front axle", "mm", passes, pass => ReaderSigns.Millimetres(pass.FrontHeight)),
                PanelOf("height of the body over the rear axle", "mm", passes, pass => ReaderSigns.Millimetres(pass.RearHeight)),
                PanelOf("pitch, nose up", "°", passes, pass => ReaderSigns.NoseUpDegrees(pass.Pitch)),
                PanelOf("pitch acceleration, nose up", "rad/s²", passes, pass => ReaderSigns.NoseUp(pass.PitchAcceleration)),
            ],
        };
    }

    /// <summary>What the n-th of several is drawn with; the reference is the 0th.</summary>
    internal static Pen PenOf(int index) => Pens[index];

    private static ChartPanel PanelOf(
        string label, string unit, IReadOnlyList<(string Name, Pass Pass, PassMeasures Measures)> passes, Func<Pass, double[]> of)
    {
        var traces = passes.Select((one, i) => Trace.From(one.Name, one.Pass.Time.AsSpan(), of(one.Pass), Pens[i])).ToArray();
        // The press draws the first curve on top.
        return new ChartPanel { Y = new Axis { Label = label, Unit = unit }, Traces = [.. traces.Skip(1), traces[0]] };
    }

    private static void Alike(IReadOnlyList<(string Name, Pass Pass, PassMeasures Measures)> passes)
    {
        if (passes.Count is < 2 or > Most)
        {
            throw new RefusedValueException(
                "number of passes to compare", $"{passes.Count}", $"2 to {Most}", "Leave some out, or make several figures.");
        }

        var first = passes[0].Pass;
        foreach (var (name, pass, _) in passes)
        {
            PassFigure.Drawn(pass);
            if (pass.Road.Caption != first.Road.Caption)
            {
                throw new RefusedValueException(
                    $"road of '{name}'", $"'{pass.Road.Caption}'", $"'{first.Road.Caption}', as the reference's", "Compare passes over one road.");
            }

            if (Math.Abs(pass.Speed - first.Speed) > 1e-9 * first.Speed)
            {
                throw new RefusedValueException(
                    $"speed of '{name}'",
                    Printed.Speed(pass.Speed),
                    $"{Printed.Speed(first.Speed)}, as the reference's",
                    "Compare passes at one speed.");
            }
        }
    }
}
