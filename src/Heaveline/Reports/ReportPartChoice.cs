namespace Heaveline.Reports;

/// <summary>A part that a report can hold, as it is offered.</summary>
/// <param name="Kind">The part.</param>
/// <param name="ForOne">Whether a report of one car has it unasked, where it is possible.</param>
/// <param name="ForSeveral">Whether a report of several cars has it unasked, where it is possible.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Sentence">What it shows.</param>
internal sealed record ReportPartChoice(PartKind Kind, bool ForOne, bool ForSeveral, string Name, string Sentence)
{
    /// <summary>All of them, in the order in which a reader follows best: what it is, what it does, why, how sure, what it costs.</summary>
    public static IReadOnlyList<ReportPartChoice> All { get; } =
    [
        new(
            PartKind.Finding, true, true, "In short",
            "Half a page: what is the matter, why, what another car changes, what that costs, how sure."),
        new(PartKind.Car, true, true, "The car", "Side view, weights, rates, frequencies and their doubts, at every load state."),
        new(PartKind.Modes, true, false, "Modes", "How body and wheels swing by themselves under the load: frequency, damping, centre of motion."),
        new(PartKind.Pass, true, false, "The pass", "Each car over the road at the speed: figure, story, measures of the hit and the settling."),
        new(PartKind.Compare, false, true, "Side by side", "All cars over the road together, at the speed and over the speeds. Needs two cars."),
        new(PartKind.Why, true, true, "Why it pitches", "The first car’s causes, ranked by their share, each with a road test that would prove it."),
        new(
            PartKind.Cure, false, false, "What would help",
            "For the first car: each cure over the road with what it takes off, its price and its chance. Needs a bump; takes some seconds."),
        new(
            PartKind.Choose, true, true, "What to buy",
            "By a study: which parts, what each setup takes off and costs, the shopping list, what fitting asks for. Needs a study; takes "
            + "some seconds."),
        new(
            PartKind.Doubt, true, false, "How sure it is",
            "What the first car’s numbers become when cars are drawn within the doubts of its file. Many draws take long."),
        new(PartKind.Rule, false, false, "The rule", "A rule of the trade as a map over speed, for the first car. The longest part to compute."),
        new(PartKind.Ride, true, true, "The ride", "Comfort on a random road of the class, over the speeds."),
        new(PartKind.Cost, true, true, "The price", "Roll, dive, travel left and headlamp; with several cars, what the change does to them."),
        new(
            PartKind.Drive, true, true, "The drive",
            "What a log is good for, its bumps, the floor’s vibration, and the car as it was driven. Needs a drive; takes some seconds."),
        new(
            PartKind.Prove, true, true, "Before and after",
            "Whether the change worked, by the passes of two drives, with what changed in the car. Needs the drive before and the drive after."),
        new(
            PartKind.Film, true, true, "The film",
            "What films from the roadside tell: heave or pitch, the car between its wheels, before and after, cars of one bump in order. Needs a "
            + "film that was followed."),
    ];

    /// <summary>Its word in the address and on the command line.</summary>
    public string Word => Kind.ToString().ToLowerInvariant();

    /// <summary>Words of parts out of a list with commas between, as they were written.</summary>
    /// <param name="words">The list.</param>
    public static string[] Split(string words) => words.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    /// <summary>The part of a word, in great letters or small; null: there is none.</summary>
    public static ReportPartChoice? Named(string word) => All.FirstOrDefault(p => p.Word.Equals(word, StringComparison.OrdinalIgnoreCase));

    /// <summary>The parts of a list of words, in its order, each once; of "all" those that are possible. Words of no part are left out.</summary>
    /// <param name="words">The list, with commas between.</param>
    /// <param name="several">Whether the report is of several cars.</param>
    /// <param name="drives">Of how many drives it is.</param>
    /// <param name="study">Whether it has a study of what to buy.</param>
    /// <param name="films">Whether it has films.</param>
    public static IReadOnlyList<PartKind> Kinds(string words, bool several, int drives, bool study = false, bool films = false) => IsAll(words)
        ? [.. All.Where(p => p.IsPossible(several, drives, study, films)).Select(p => p.Kind).Order()]
        : [.. Split(words).Select(Named).OfType<ReportPartChoice>().Select(p => p.Kind).Distinct()];

    /// <summary>Whether a list asks for all that is possible.</summary>
    public static bool IsAll(string words) => words.Trim().Equals("all", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a report can hold it.</summary>
    /// <param name="several">Whether the report is of several cars.</param>
    /// <param name="drives">Of how many drives it is.</param>
    /// <param name="study">Whether it has a study of what to buy.</param>
    /// <param name="films">Whether it has films.</param>
    public bool IsPossible(bool several, int drives, bool study = false, bool films = false) => Kind switch
    {
        PartKind.Compare => several,
        PartKind.Drive => drives > 0,
        PartKind.Prove => drives > 1,
        PartKind.Choose => study,
        PartKind.Film => films,
        _ => true,
    };

    /// <summary>The words of the parts that a report has unasked, with commas between.</summary>
    /// <param name="several">Whether it is of several cars.</param>
    /// <param name="drives">Of how many drives it is: none, one, or one before and one after a change.</param>
    /// <param name="study">Whether it has a study of what to buy.</param>
    /// <param name="films">Whether it has films.</param>
    public static string Usual(bool several, int drives = 0, bool study = false, bool films = false) => string.Join(
        ", ",
        All.Where(p => p.IsPossible(several, drives, study, films) && (several ? p.ForSeveral : p.ForOne)).Select(p => p.Word));
}
