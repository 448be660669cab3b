namespace Heaveline.Reports;

/// <summary>A part that a report can hold, as it is offered.</summary>
/// <param name="Kind">The part.</param>
/// <param name="ForOne">Whether a report of one car has it unasked.</param>
/// <param name="ForSeveral">Whether a report of several cars has it unasked.</param>
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
            PartKind.Doubt, true, false, "How sure it is",
            "What the first car’s numbers become when cars are drawn within the doubts of its file. Many draws take long."),
        new(PartKind.Rule, false, false, "The rule", "A rule of the trade as a map over speed, for the first car. The longest part to compute."),
        new(PartKind.Ride, true, true, "The ride", "Comfort on a random road of the class, over the speeds."),
        new(PartKind.Cost, true, true, "The price", "Roll, dive, travel left and headlamp; with several cars, what the change does to them."),
        new(
            PartKind.Drive, false, false, "The drive",
            "What a log is good for, its bumps, the floor’s vibration, and the car as it was driven. Needs a drive; takes some seconds."),
        new(
            PartKind.Prove, false, false, "Before and after",
            "Whether the change worked, by the passes of two drives, with what changed in the car. Needs the drive before and the drive after."),
    ];

    /// <summary>Its word in the address and on the command line.</summary>
    public string Word => Kind.ToString().ToLowerInvariant();

    /// <summary>The words of the parts that a report has unasked, with commas between.</summary>
    /// <param name="several">Whether it is of several cars.</param>
    /// <param name="drives">Of how many drives it is: none, one, or one before and one after a change.</param>
    public static string Usual(bool several, int drives = 0) => string.Join(
        ", ",
        All.Where(p => p.Kind switch
        {
            PartKind.Drive => drives > 0,
            PartKind.Prove => drives > 1,
            _ => several ? p.ForSeveral : p.ForOne,
        }).Select(p => p.Word));
}
