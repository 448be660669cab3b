using System.Collections.Immutable;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Reports;

/// <summary>A whole report as data, to be set in type by Heaveline.Press. The same choices give the same report: it holds no clock and no chance of its own.</summary>
public sealed record Report
{
    /// <summary>Language of its words (BCP 47).</summary>
    public const string Language = "en";

    /// <summary>The title.</summary>
    public required string Title { get; init => field = Checked.NotBlank(value, "Give the report a title."); }

    /// <summary>Who made it. Blank for nobody named.</summary>
    public string Author { get; init => field = value ?? ""; } = "";

    /// <summary>The day it is of, as its maker writes it. Blank for none.</summary>
    public string Date { get; init => field = value ?? ""; } = "";

    /// <summary>The program and its version.</summary>
    public required string Program { get; init => field = Checked.NotBlank(value, "Name the program and its version."); }

    /// <summary>The parts in order, at least one.</summary>
    public required ImmutableArray<ReportPart> Parts { get; init => field = Drawable.Some(value, "Give the report a part."); }

    /// <summary>Sources of all parts, each once, in the order of <see cref="Answers.Sources.All"/>.</summary>
    public IReadOnlyList<Source> Sources => [.. Answers.Sources.All.Where(s => Parts.Any(p => p.Sources.Contains(s)))];

    /// <summary>Computes what was chosen and puts it together.</summary>
    /// <param name="choices">What to include and how.</param>
    /// <param name="progress">Told the share done (–).</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">A car cannot stand, or a number asked for does not exist.</exception>
    public static Report From(ReportChoices choices, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(choices);
        var work = new ReportWork(choices, cancellation);
        var parts = new List<ReportPart>();
        foreach (var (kind, k) in choices.Parts.Select((kind, k) => (kind, k)))
        {
            cancellation.ThrowIfCancellationRequested();
            parts.AddRange(Part(kind, work));
            progress?.Report((k + 1.0) / choices.Parts.Length);
        }

        var report = new Report { Title = choices.Title, Author = choices.Author, Date = choices.Date, Program = choices.Program, Parts = [.. parts, ClosingParts.Cautions] };
        return report with { Parts = [.. report.Parts, ClosingParts.SourcesOf(report), ClosingParts.Again(choices)] };
    }

    /// <summary>The same report as another file: its last part says how that one is made again.</summary>
    /// <param name="choices">The choices of the report, with the command of the other file.</param>
    public Report MadeBy(ReportChoices choices)
    {
        ArgumentNullException.ThrowIfNull(choices);
        return this with { Parts = [.. Parts[..^1], ClosingParts.Again(choices)] };
    }

    private static IEnumerable<ReportPart> Part(PartKind kind, ReportWork work) => kind switch
    {
        PartKind.Car => CarPart.Of(work),
        PartKind.Modes => ModesPart.Of(work),
        PartKind.Pass => PassPart.Of(work),
        PartKind.Compare => [ComparePart.Of(work)],
        PartKind.Ride => [RidePart.Of(work)],
        PartKind.Rule => [RulePart.Of(work)],
        PartKind.Why => [WhyPart.Of(work)],
        PartKind.Doubt => [DoubtPart.Of(work)],
        PartKind.Cost => [CostPart.Of(work)],
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such part."),
    };
}
