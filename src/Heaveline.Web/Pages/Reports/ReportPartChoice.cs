using Heaveline.Reports;

namespace Heaveline.Web.Pages.Reports;

/// <summary>A part that a report can hold, as it is offered to a reader.</summary>
/// <param name="Kind">The part.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Sentence">What it shows.</param>
internal sealed record ReportPartChoice(PartKind Kind, string Name, string Sentence)
{
    /// <summary>All of them, in the order in which a reader follows best: what it is, what it does, why, how sure, what it costs.</summary>
    public static IReadOnlyList<ReportPartChoice> All { get; } =
    [
        new(PartKind.Finding, "In short", "Half a page: what is the matter, why, what another car changes, what that costs, how sure."),
        new(PartKind.Car, "The car", "Side view, weights, rates, frequencies and their doubts, at every load state."),
        new(PartKind.Modes, "Modes", "How body and wheels swing by themselves under the load: frequency, damping, centre of motion."),
        new(PartKind.Pass, "The pass", "Each car over the road at the speed: figure, story, measures of the hit and the settling."),
        new(PartKind.Compare, "Side by side", "All cars over the road together, at the speed and over the speeds. Needs two cars."),
        new(PartKind.Why, "Why it pitches", "The first car’s causes, ranked by their share, each with a road test that would prove it."),
        new(
            PartKind.Doubt,
            "How sure it is",
            "What the first car’s numbers become when cars are drawn within the doubts of its file. Many draws take long."),
        new(PartKind.Rule, "The rule", "A rule of the trade as a map over speed, for the first car. The longest part to compute."),
        new(PartKind.Ride, "The ride", "Comfort on a random road of the class, over the speeds."),
        new(PartKind.Cost, "The price", "Roll, dive, travel left and headlamp; with several cars, what the change does to them."),
    ];

    /// <summary>Its word in the address and on the command line.</summary>
    public string Word => Kind.ToString().ToLowerInvariant();

    /// <summary>The words of the parts that make sense for a number of cars, with commas between.</summary>
    public static string Usual(int cars) => string.Join(',', All.Where(p => cars > 1 || p.Kind != PartKind.Compare).Select(p => p.Word));
}
