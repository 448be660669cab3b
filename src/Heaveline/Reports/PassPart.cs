using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>Each car's pass over the road: what happened in words, the figure, the measures.</summary>
internal static class PassPart
{
    public static IEnumerable<ReportPart> Of(ReportWork work) => work.Passes.Select(p => Of(work, p.Pass, p.Measures));

    private static ReportPart Of(ReportWork work, Pass pass, PassMeasures measures)
    {
        var blocks = new List<Block> { Paragraph.Of(string.Join(' ', PassStory.Of(pass, measures))) };
        if (pass.Count > 1)
        {
            blocks.Add(Illustration.Of(PassFigure.Of(pass, measures)));
        }

        // Several cars have their numbers side by side in the comparison; a pass that broke off has none.
        if (pass.Outcome == PassOutcome.Completed && !(work.Several && work.Asked(PartKind.Compare)))
        {
            blocks.Add(Measures([pass.Model.Load.Name], [(pass, measures)], $"{pass.Model.Car.Name}, {work.Drive}"));
        }

        blocks.Add(Paragraph.Of(Computed([pass])));
        return new ReportPart
        {
            Heading = FormattableString.Invariant($"The pass: {pass.Model.Car.Name}, {pass.Model.Load.Name}, at {In.KilometresPerHour.Of(pass.Speed):0.#} km/h"),
            Blocks = [.. blocks],
            Sources = [Sources.Axes, Sources.Steps, Sources.Parts],
        };
    }

    /// <summary>The measures of passes side by side, the program's own error left to a sentence.</summary>
    public static Tabulated Measures(IReadOnlyList<string> columns, IReadOnlyList<(Pass Pass, PassMeasures Measures)> passes, string caption) =>
        Tabulated.Of(PassTable.Of("Pass", columns, passes).Without("error-pitch", "error-load"), caption);

    /// <summary>How the passes were computed, and how far off that leaves them.</summary>
    public static string Computed(IReadOnlyList<Pass> passes)
    {
        var statistics = passes[0].Statistics;
        var error = passes.Select(p => p.Statistics.PitchError).Max() is { } worst ? $" By its own estimate that is less than {Bound(100.0 * worst)} % of the peak pitch off; the model itself may be further from the car than that." : "";
        return FormattableString.Invariant($"Computed by {statistics.Method} of {1e3 * statistics.Step:F3} ms.") + error;
    }

    // Rounded up to 1, 2 or 5 times a power of ten: an estimate of an error has one digit at best, and the same one on every machine.
    private static string Bound(double percent)
    {
        var power = Math.Pow(10.0, Math.Floor(Math.Log10(Math.Max(percent, 1e-3))));
        var step = new[] { 1.0, 2.0, 5.0, 10.0 }.First(s => s * power >= Math.Max(percent, 1e-3) * (1.0 - 1e-9));
        return (step * power).ToString("0.####", System.Globalization.CultureInfo.InvariantCulture);
    }
}
