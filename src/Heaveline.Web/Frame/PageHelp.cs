using Heaveline.Web.Help;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Frame;

/// <summary>What a page says of itself when it is asked.</summary>
/// <param name="Answers">What it answers.</param>
/// <param name="Do">What to do on it.</param>
/// <param name="Words">Words of the trade that it uses, as the glossary has them.</param>
public sealed record PageHelp(string Answers, string Do, params IReadOnlyList<string> Words)
{
    private static readonly PageHelp None = new("Nothing stands at this address.", "Go to one of the pages above.");

    /// <summary>The words with what they mean.</summary>
    public IEnumerable<(string Word, string Says)> Meanings => Words.Select(word => (word, Terms.Trade[word]));

    /// <summary>What a page says of itself.</summary>
    /// <param name="path">Its address from the base of the pages.</param>
    public static PageHelp Of(string path) => path switch
    {
        "" => new(
            "Which cars, variants, roads and drives stand in this folder, and which car is in hand on every page.",
            "Take a car in hand at the top of the page, or begin your own; then drive it over a bump.",
            "car file", "variant", "load state", "pass"),
        PageEntry.Story => new(
            "What the whole tool does, on one invented car: loaded, it nods after a bump; why; what cures it; what the cure costs. Every number is "
                + "computed as you look.",
            "Read it once from top to bottom, then begin your own car.",
            "pitch", "headline", "hit, settling", "load state", "variant", "bump stop"),
        "car" => new(
            "What was measured on this car, each value with its doubt, and what follows from it at every load: rates, frequencies, damping, and the "
                + "points about which it swings.",
            "Put right what is refused, look at what is marked as not measured, save, then drive the car over a bump.",
            "doubt", "load state", "trim", "motion ratio", "wheel rate", "ride rate", "damping ratio", "dynamic index", "body mode", "bounce",
            "pitch", "wheel hop", "sprung mass", "unsprung mass", "bump stop"),
        "sheet" => new(
            "What a car comes to from the few numbers that one person measures in a garage, and which of them to measure better next.",
            "Type what you measured, with its unit and, after ±, its doubt; leave the rest empty. Save when the three needed ones are there.",
            "doubt", "motion ratio", "bump stop", "damping ratio", "unsprung mass", "dynamic index", "ride rate"),
        PageEntry.Pass => new(
            "What this car does on one road at one speed, and what a change of its springs, dampers, stops, wheelbase, links or luggage would do.",
            "Move a slider; read the headline, then the price under it; keep what helps as a variant.",
            "pass", "hit, settling", "headline", "pitch", "heave", "damping ratio", "bump stop", "interconnection", "dynamic index", "trim"),
        "rule" => new(
            "At which values of one thing, and at which speeds, this car nods less over this bump, and where a rule of the trade holds for it.",
            "Choose what is turned and what it is judged by; pick a point of the map to drive it.",
            "flat ride", "fall into step", "headline", "hit, settling", "damping ratio", "dynamic index", "interconnection"),
        PageEntry.Link => new(
            "What joining front and rear does to this car: on the bench, over the bump in hand, and what it costs in braking, against separate "
                + "springs as stiff in heave.",
            "Read what it does and what it costs; type another spring or damper for it, then take that into the trial on the page of the pass.",
            "interconnection", "heave", "pitch", "warp", "hit, settling", "damping ratio"),
        PageEntry.Choose => new(
            "Which of the parts that can be had make this car pitch less over the bumps and loads it is used with, at what price, how surely, and "
                + "whether it is better left as it is.",
            "Put a list of parts beside the car files, say what it may cost, read the shortlist, keep one as a variant to drive it, "
                + "and the question as a study to ask it again.",
            "hit, settling", "variant", "load state", "doubt", "bump stop", "damping ratio"),
        CurrentCar.Ride => new(
            "How much this car heaves and pitches on a long rough road at every speed, as it is and as the comfort standard counts it.",
            "Choose a road and a load; pick a speed in the chart for its spectra.",
            "heave", "pitch", "wheel hop", "IRI", "MTVV", "VDV", "eVDV"),
        "road" => new(
            "What a road file of this garage holds: a bump of your own measure, drawn to scale while its sizes are typed.",
            "Choose what it is, type its sizes with their units, save it, then drive the car in hand over it.",
            "pass", "hit, settling"),
        PageEntry.Drive => new(
            "What the log of a phone on the floor is good for, what each bump did to the car, which car moves like it, and whether a change worked.",
            "Bring in a log, write down wheelbase or car and where the phone lay, leave out bumps that went wrong; name the drive before the change.",
            "headline", "hit, settling", "pitch", "doubt", "damping ratio", "dynamic index"),
        PageEntry.Film => new(
            "What a film of a passing car tells, taken from the roadside: does it heave or pitch after a bump, how long, which car stands between "
                + "its wheels, and which of the cars seen at one bump pitches least; or the rhythm of a headlamp at night.",
            "Bring the film in, say the wheelbase, mark both hubs and the body on one frame, have the car followed, read the finding.",
            "heave", "pitch", "hit, settling", "doubt", "damping ratio", "dynamic index"),
        CurrentCar.Report => new(
            "All that was found, in one file that others can check: with its sources, its cautions and the line that makes it again.",
            "Choose cars, drives and parts, make the report, look at it, take it away as HTML or PDF.",
            "variant", "load state", "doubt", "headline"),
        "phone" => new(
            "What a phone that lies on the floor of a car feels, written down while you drive.",
            "Start, stand still, drive the bump as often as it says below, stop; then read what was recorded on the page of the drive.",
            "hit, settling", "headline"),
        _ => None,
    };
}
