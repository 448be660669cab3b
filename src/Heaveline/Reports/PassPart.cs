using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>Each car's pass over the road: what happened in words, the figure, the measures.</summary>
internal static class PassPart
{
    public static IEnumerable<ReportPart> Of(ReportWork work) => work.Passes.Select(pass => Of(work, pass));

    private static ReportPart Of(ReportWork work, PassAnswer answer) => new()
    {
        Heading = FormattableString.Invariant(
            $"The pass: {answer.Name}, {answer.Model.Load.Name}, at {In.KilometresPerHour.Of(answer.Pass.Speed):0.#} km/h"),
        Blocks =
        [
            Paragraph.Of(string.Join(' ', answer.Sentences.Select(s => s.Text))),
            .. answer.Pass.Count > 1 ? [Illustration.Of(answer.Figure(PassAnswer.Traces))] : Array.Empty<Block>(),
            // Several cars have their numbers side by side in the comparison; a pass that broke off has none.
            .. answer.IsWhole && !(work.Several && work.Asked(PartKind.Compare))
                ? [Measures(answer.ShortTables[0], $"{answer.Name}, {work.Drive}")]
                : Array.Empty<Block>(),
            .. answer.Cautions.Select(Caution.Of),
            Paragraph.Of(Computed([answer])),
        ],
        Sources = [.. answer.Sources],
    };

    /// <summary>The measures of passes, the program's own error left to a sentence.</summary>
    public static Tabulated Measures(FactTable table, string caption) => Tabulated.Of(table.Without("error-pitch", "error-load"), caption);

    /// <summary>How the passes were computed, and how far off that leaves them.</summary>
    public static string Computed(IReadOnlyList<PassAnswer> passes)
    {
        var statistics = passes[0].Pass.Statistics;
        var error = passes.Select(p => p.Pass.Statistics.PitchError).Max() is { } worst
            ? $" The numerical error lies below {ErrorBound.Percent(worst)} of the peak pitch; the model itself may be further "
                + "from the car than that."
            : "";
        return FormattableString.Invariant($"Computed by {statistics.Method}, steps of {In.Milliseconds.Of(statistics.Step):F3} ms.") + error;
    }
}
