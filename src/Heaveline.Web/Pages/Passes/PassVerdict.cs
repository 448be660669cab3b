using Heaveline.Measures;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// The finding of a view, as its headline and the sentences under it: how much less or more it nods, the hit, the stops, what is gained, and the
/// price. Every number stands in the page's table.
/// </summary>
/// <param name="Lead">The headline until its number.</param>
/// <param name="Number">The number that is here, now; empty when there is none.</param>
/// <param name="Rest">The headline after it.</param>
/// <param name="Detail">The sentences under it.</param>
internal sealed record PassVerdict(string Lead, string Number, string Rest, string Detail)
{
    // How many of the other changes are named (judged by eye).
    private const int Named = 2;

    /// <summary>The headline as one sentence.</summary>
    public string Headline => Lead + Number + Rest;

    /// <summary>The verdict on a view.</summary>
    /// <param name="view">The view.</param>
    public static PassVerdict Of(PassView view)
    {
        if (!view.After.IsWhole)
        {
            return new("The crossing breaks off before its end.", "", "", "");
        }

        var changes = view.Changes;
        var headlines = PassCatalogue.PitchOver(view.After.Pass.Road);
        var nod = changes.FirstOrDefault(change => change.Measure == headlines[0]);
        var hit = changes.FirstOrDefault(change => change.Measure == headlines[1]);
        var over = view.After.Pass.Road.Event is null ? "over the whole road" : "after it";
        var load = view.After.Model.Load.Name;
        if (nod?.After is not { } after)
        {
            return new("Its nodding was not recorded to the end.", "", "", "");
        }

        if (view.Before is null || nod.Before is not { } before || before <= 0.0)
        {
            var lands = Ends(Stops(view).Where(stop => stop.Now < 0.0 && !Stands(view.After, stop.End)).Select(stop => stop.End));
            var lifts = Ends(Lifts(view).Where(lift => lift.Now > 0.0).Select(lift => lift.End));
            string[] does =
            [
                Standing(view.After) is { } ends ? $"stands on its {ends} bump stops" : "",
                lands.Length > 0 ? $"lands on the bump stops of {lands}" : "",
                lifts.Length > 0 ? $"lifts {lifts} off the road" : "",
            ];
            string[] also = [.. does.Where(words => words.Length > 0)];
            var stops = string.Concat(also.Select((words, i) => $", {(i == also.Length - 1 ? "and " : "")}{words}"));
            return new(
                $"{FirstLetter.Raised(load)}, it nods by ",
                nod.PrintWithUnit(after),
                $" {over}{stops}.",
                hit is null ? "" : $"The {hit.Measure.Name} reaches {hit.PrintWithUnit(hit.After)}.");
        }

        var (lead, rest) = Math.Abs(after - before) < MeasureChange.Felt * before
            ? ($"{FirstLetter.Raised(load)}, nobody would feel the change: ", $" {over}, where it was {nod.PrintWithUnit(before)}.")
            : ($"{Size(after / before)}, {load}: ", $" {over}, where it was {nod.PrintWithUnit(before)}.");
        return new(lead, nod.PrintWithUnit(after), rest, string.Join(' ', Sentences(view, changes, nod, hit)));
    }

    /// <summary>What became of the nodding, in words.</summary>
    /// <param name="before">It before, above 0.</param>
    /// <param name="after">It after.</param>
    public static string Said(double before, double after) =>
        Math.Abs(after - before) < MeasureChange.Felt * before ? "Nobody would feel the change" : Size(after / before);

    /// <summary>A change of the nodding in words, by its size.</summary>
    /// <param name="ratio">Now over before (–).</param>
    public static string Size(double ratio) => ratio switch
    {
        < 0.44 => "More than half of the nodding is gone",
        < 0.55 => "Half of the nodding is gone",
        < 0.63 => "Two fifths less nodding",
        < 0.71 => "A third less nodding",
        < 0.775 => "A quarter less nodding",
        < 0.85 => "A fifth less nodding",
        < 0.92 => "A tenth less nodding",
        < 1.0 => "A little less nodding",
        < 1.08 => "A little more nodding",
        < 1.15 => "A tenth more nodding",
        < 1.225 => "A fifth more nodding",
        < 1.29 => "A quarter more nodding",
        < 1.37 => "A third more nodding",
        < 1.45 => "Two fifths more nodding",
        < 1.56 => "Half as much nodding again",
        < 2.0 => "More than half as much nodding again",
        _ => "More than twice the nodding",
    };

    private static IEnumerable<string> Sentences(PassView view, IReadOnlyList<MeasureChange> changes, MeasureChange nod, MeasureChange? hit)
    {
        if (hit is { Before: > 0.0, After: not null })
        {
            var name = view.After.Pass.Road.Event is null ? "Its pitch acceleration" : "The hit";
            var ratio = hit.After.Value / hit.Before.Value;
            yield return Math.Abs(ratio - 1.0) < MeasureChange.Felt
                ? $"{name} is as hard as before."
                : $"{name} is {Numeral.Of(In.Percent.Of(Math.Abs(ratio - 1.0)), 0)}\u00a0% {(ratio < 1.0 ? "softer" : "harder")}.";
        }

        foreach (var (end, before, now) in Stops(view))
        {
            if (before < 0.0 || now < 0.0)
            {
                yield return Stands(view.After, end)
                        ? $"The {end} stand on their bump stops{(view.Before is { } former && Stands(former, end) ? " as before" : "")}."
                    : now >= 0.0 ? $"The bump stops of the {end} stay clear now."
                    : before >= 0.0 ? $"The {end} land on their bump stops, which they did not."
                    : $"The {end} still land on their bump stops.";
            }
        }

        foreach (var (end, before, now) in Lifts(view))
        {
            if (before > 0.0)
            {
                yield return now > 0.0 ? $"The {end} still leave the road." : $"The {end} stay on the road now.";
            }
        }

        var others = changes.Where(change => change != nod && change != hit).ToArray();
        string? Told(bool better) => MeasureChange.Told(others, better, Named, " below");
        var (gains, prices) = (Told(better: true), Told(better: false));
        if (gains is not null)
        {
            yield return $"Better too: {gains}.";
        }

        yield return $"Price: {prices ?? "none found among the measures below"}.";
    }

    private static string Ends(IEnumerable<string> ends) => ends.ToArray() switch
    {
        [var end] => $"the {end}",
        [var end, _] => end.EndsWith('s') ? "all wheels" : "both wheels",
        _ => "",
    };

    // "rear", "front and rear"; null where it stands clear of its bump stops.
    private static string? Standing(PassAnswer crossing) => StandingStops.Of(crossing.Model).Select(CornerNames.Of).ToArray() is { Length: > 0 } ends
        ? string.Join(" and ", ends)
        : null;

    private static bool Stands(PassAnswer crossing, string end) =>
        StandingStops.Of(crossing.Model).Any(one => end.StartsWith(CornerNames.Of(one), StringComparison.Ordinal));

    // The room that is left before each axle's bump stops, the worse wheel's, as printed; below 0 when they are pressed.
    private static IEnumerable<(string End, double Before, double Now)> Stops(PassView view) => Worse(view, "bump-margin");

    // How long each axle's worse wheel has no load on the road, as printed.
    private static IEnumerable<(string End, double Before, double Now)> Lifts(PassView view) => Worse(view, "lift-off");

    private static IEnumerable<(string End, double Before, double Now)> Worse(PassView view, string key) =>
        from place in WheelPlace.Axles(view.After.Model.Rolls)
        let measure = WheelCatalogue.Of(place).Single(one => one.Key == $"{place.Key}-{key}")
        let now = measure.ShownOf(view.After.Pass)
        where now is not null
        let before = view.Before is { IsWhole: true } former ? measure.ShownOf(former.Pass) ?? 0.0 : 0.0
        select (place.Name, Math.Round(before, measure.Digits), Math.Round(now.Value, measure.Digits));
}
