using System.Collections.Immutable;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>What is asked of a report: what it is to hold, and what it is computed from.</summary>
public sealed record ReportAsked
{
    // As many as one figure of a ride can tell apart.
    private const int MostCars = 5;

    /// <summary>The title.</summary>
    public required string Title { get; init => field = Checked.NotBlank(value, "Give the report a title."); }

    /// <summary>Who made it. Blank for nobody named.</summary>
    public string Author { get; init => field = value ?? ""; } = "";

    /// <summary>The day it is of, as its maker writes it. Blank for none.</summary>
    public string Date { get; init => field = value ?? ""; } = "";

    /// <summary>The program and its version.</summary>
    public string Program { get; init => field = Checked.NotBlank(value, "Name the program and its version."); } = "Heaveline";

    /// <summary>The words that ask for this report at a command line, every choice written out, so that a later default changes nothing.</summary>
    public Given Words { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = Given.Nothing;

    /// <summary>The command that makes this report again.</summary>
    public string Command => TypedLine.Of(ReportStudy.Question, Words);

    /// <summary>The sheet of a PDF: one of <see cref="ReportStudy.Papers"/>.</summary>
    public string Paper { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = ReportStudy.Papers[0];

    /// <summary>One to five cars of different names, each under the load it drives with; the first is what the others are held against.</summary>
    public required ImmutableArray<LoadedCar> Cars
    {
        get;
        init => field = Drawable.Any(value) is { Length: >= 1 and <= MostCars } cars
            && cars.Select(c => c.Name).Distinct(StringComparer.Ordinal).Count() == cars.Length
            ? cars
            : throw new RefusedValueException(
                "cars of the report",
                $"{Drawable.Any(value).Length}, or two of one name",
                $"1 to {MostCars}, each with a name of its own",
                "Leave some out, or tell them apart by their names.");
    }

    /// <summary>That the cars were named the other way round, a sentence, see <see cref="BaseFirst"/>; blank where they were not.</summary>
    public string Turned { get; init => field = value ?? ""; } = "";

    /// <summary>The road of passes and causes.</summary>
    public required Road Road { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>Speed of the passes, m/s.</summary>
    public required double Speed { get; init => field = Drawable.Positive(value); }

    /// <summary>Speeds of comparison and ride, m/s, rising.</summary>
    public required ImmutableArray<double> Speeds { get; init => field = Drawable.Some(value, "Give at least one speed."); }

    /// <summary>Class of the random road.</summary>
    public RoadClass RoadClass { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = RoadClass.All[2];

    /// <summary>The rule that is mapped.</summary>
    public TradeRule Rule { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = TradeRule.All[0];

    /// <summary>How many cars are drawn within the doubts, 10 to 1 000 000.</summary>
    public int Draws { get; init => field = (int)Checked.Within(value, 10.0, 1e6, "2000 tell a band to a few hundredths of itself."); } = 2000;

    /// <summary>Seed of the draws.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>What is to be chosen among parts; null for nothing.</summary>
    public ChooseAsked? Study { get; init; }

    /// <summary>No drive, one, or the one before a change and the one after it, of different places.</summary>
    public ImmutableArray<RecordedDrive> Drives
    {
        get;
        init => field = Drawable.Any(value) is { Length: <= 2 } drives && drives.Select(d => d.Path).Distinct(StringComparer.Ordinal).Count()
            == drives.Length
            ? drives
            : throw new RefusedValueException(
                "drives of the report", "more than two, or one twice", "the one before and the one after a change", "Leave some out.");
    }

    = [];

    /// <summary>
    /// The drive before a change and the one after it: those that were given, or one with the drive that it follows; null: no such two.
    /// </summary>
    public (RecordedDrive Before, RecordedDrive After)? Pair => ReportDrives.PairOf(Drives);

    /// <summary>Films from the roadside; null for none.</summary>
    public ReportFilms? Films { get; init; }

    /// <summary>Of <see cref="ProveAsked.Circumstances"/> those that were the same in both drives, beside what is written down with them.</summary>
    public ImmutableArray<string> Same { get; init => field = Drawable.Any(value); } = [];

    /// <summary>Whether what the drive's car would do after the change, by its file, is forecast and held against the drive after.</summary>
    public bool IsForecast { get; init; }

    /// <summary>What is said to be the same in both drives, here or with the one after; what is written down can contradict it.</summary>
    internal ImmutableArray<string> SaidSame =>
        [.. ProveAsked.Circumstances.Where(c => Same.Contains(c) || (Pair is { } two && two.After.Same.Contains(c)))];

    /// <summary>The drives whose logs the parts need.</summary>
    internal IEnumerable<RecordedDrive> Read =>
    [
        .. (Parts.Contains(PartKind.Drive) ? Drives : []).Concat(Parts.Contains(PartKind.Prove) && Pair is { } two ? [two.Before, two.After] : [])
            .DistinctBy(d => d.Path),
    ];

    /// <summary>What to include, in order, each once.</summary>
    public required ImmutableArray<PartKind> Parts
    {
        get;
        init => field = Drawable.Some(value, "Choose at least one part.") is var parts && parts.Distinct().Count() == parts.Length
            ? parts
            : throw new RefusedValueException("parts of the report", "one twice", "each once", "Leave the second one out.");
    }

    /// <summary>The units that it is read in.</summary>
    public ReaderUnits Units { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = ReaderUnits.Metric;

    /// <summary>The same, with the names in it left as they are.</summary>
    public ReaderUnits ReadersUnits =>
        Units.Leaving(
        [
            .. Cars.SelectMany(c => LoadedCar.NamesIn(c.Car)), Road.Name, .. Drives.Select(d => d.Name), .. StudyNames, .. Films?.Names ?? [],
        ]);

    private IEnumerable<string> StudyNames => Study is null ? [] :
    [
        .. LoadedCar.NamesIn(Study.Car), .. Study.Roads.Select(road => road.Name),
        .. Study.Lists.SelectMany(list => list.Parts.Select(part => part.Name).Prepend(list.Name)),
    ];

    /// <summary>The texts that cars and road were read from.</summary>
    public ImmutableArray<InputText> Inputs { get; init => field = Drawable.Any(value); } = [];

    /// <summary>The same as another file: the words of its command differ.</summary>
    /// <param name="file">Name of the file, ending in .html or .pdf.</param>
    public ReportAsked To(string file) =>
        this with { Words = Words.With(ReportStudy.Out, file).With(ReportStudy.Paper, ReportStudy.IsPdf(file) ? Paper : null) };
}
