using System.Collections.Immutable;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>
/// A whole report as data, to be set in type by Heaveline.Press. The same choices give the same report: it holds no clock and no chance of its own.
/// </summary>
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

    /// <summary>The files of the drives that it was computed from, by their digests.</summary>
    public ImmutableArray<InputDigest> Logs { get; init => field = Drawable.Any(value); } = [];

    /// <summary>Sources of all parts, each once, in the order of <see cref="Answers.Sources.All"/>.</summary>
    public IReadOnlyList<Source> Sources => [.. Answers.Sources.All.Where(s => Parts.Any(p => p.Sources.Contains(s)))];

    /// <summary>Computes what was chosen and puts it together.</summary>
    /// <param name="asked">What to include and how.</param>
    /// <param name="run">How it is run; null: plainly. It is told its share done part by part.</param>
    /// <exception cref="RefusedValueException">A car cannot stand, a number asked for does not exist, or drives cannot be compared.</exception>
    /// <exception cref="NoAnswerException">The log of a drive is refused.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Report From(ReportAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var work = new ReportWork(asked, run);
        work.ReadLogs();
        var parts = new List<ReportPart>();
        foreach (var (k, kind) in asked.Parts.Index())
        {
            run.Cancellation.ThrowIfCancellationRequested();
            parts.AddRange(Part(kind, work));
            run.Progress?.Report((k + 1.0) / asked.Parts.Length);
        }

        var report = new Report
        {
            Title = asked.Title,
            Author = asked.Author,
            Date = asked.Date,
            Program = asked.Program,
            Logs = work.Logs,
            Parts = [.. Opened(parts, asked.Turned).Select(part => part.In(asked.ReadersUnits)), ClosingParts.Cautions(asked)],
        };
        return report with { Parts = [.. report.Parts, ClosingParts.SourcesOf(report), ClosingParts.Again(asked, report.Logs)] };
    }

    /// <summary>The same report as another file: its last part says how that one is made again.</summary>
    /// <param name="asked">What was asked of the report, with the command of the other file.</param>
    public Report MadeBy(ReportAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return this with { Parts = [.. Parts[..^1], ClosingParts.Again(asked, Logs)] };
    }

    // Before anything else is read, it is said which car is the one before the change.
    private static IEnumerable<ReportPart> Opened(List<ReportPart> parts, string turned) =>
        turned.Length > 0 ? [parts[0] with { Blocks = [Paragraph.Of(turned), .. parts[0].Blocks] }, .. parts.Skip(1)] : parts;

    private static IEnumerable<ReportPart> Part(PartKind kind, ReportWork work) => kind switch
    {
        PartKind.Finding => [FindingPart.Of(work)],
        PartKind.Car => CarPart.Of(work),
        PartKind.Modes => ModesPart.Of(work),
        PartKind.Pass => PassPart.Of(work),
        PartKind.Compare => [ComparePart.Of(work)],
        PartKind.Ride => [RidePart.Of(work)],
        PartKind.Rule => [RulePart.Of(work)],
        PartKind.Why => [WhyPart.Of(work)],
        PartKind.Cure => [CurePart.Of(work)],
        PartKind.Choose => [ChoosePart.Of(work)],
        PartKind.Doubt => [DoubtPart.Of(work)],
        PartKind.Cost => [CostPart.Of(work)],
        PartKind.Drive => DrivePart.Of(work),
        PartKind.Prove => [ProvePart.Of(work)],
        PartKind.Film => FilmPart.Of(work),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such part."),
    };
}
