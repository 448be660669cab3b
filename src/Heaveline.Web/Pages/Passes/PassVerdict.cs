using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Passes;
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
            var broken = view.After.Pass;
            return new(
                $"{FirstLetter.Raised(broken.Model.Load.Name)}, it does not get across: {BrokenOff.Where(broken)}.", "", "",
                $"{FirstLetter.Raised(broken.Road.Caption)}, at {Printed.Speed(broken.Speed)}. {broken.OutcomeSentence}");
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
            int[] stand = [.. Wheels(view).Where(wheel => Stands(view.After, wheel))];
            int[] land = [.. Stops(view).Where(stop => stop.Now < 0.0 && !Stands(view.After, stop.Wheel)).Select(stop => stop.Wheel)];
            int[] lift = [.. Lifts(view).Where(lift => lift.Now > 0.0).Select(lift => lift.Wheel)];
            string[] does =
            [
                stand.Length > 0 ? $"stands on the bump stop{(stand.Length > 1 ? "s" : "")} of {Said(view, stand)}" : "",
                land.Length > 0 ? $"lands on the bump stop{(land.Length > 1 ? "s" : "")} of {Said(view, land)}" : "",
                lift.Length > 0 ? $"lifts {Said(view, lift)} off the road" : "",
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

        // What both wheels of an axle do alike is said once.
        foreach (var alike in Stops(view).Where(stop => stop.Before < 0.0 || stop.Now < 0.0)
            .GroupBy(stop => (stop.Wheel / 2, Kind: (Stands(view.After, stop.Wheel), view.Before is { } former && Stands(former, stop.Wheel),
                stop.Before < 0.0, stop.Now < 0.0))))
        {
            int[] wheels = [.. alike.Select(stop => stop.Wheel)];
            var (who, s, many) = (FirstLetter.Raised(Said(view, wheels)), wheels.Length > 1 ? "" : "s", wheels.Length > 1);
            var (its, they, stops) = many ? ("their", "they", "stops") : ("its", "it", "stop");
            var (stands, stood, landed, lands) = alike.Key.Kind;
            yield return stands ? $"{who} stand{s} on {its} bump {stops}{(stood ? " as before" : "")}."
                : !lands ? $"The bump {stops} of {FirstLetter.Lowered(who)} stay{s} clear now."
                : !landed ? $"{who} land{s} on {its} bump {stops}, which {they} did not."
                : $"{who} still land{s} on {its} bump {stops}.";
        }

        foreach (var alike in Lifts(view).Where(lift => lift.Before > 0.0).GroupBy(lift => (lift.Wheel / 2, Still: lift.Now > 0.0)))
        {
            int[] wheels = [.. alike.Select(lift => lift.Wheel)];
            var (who, s) = (FirstLetter.Raised(Said(view, wheels)), wheels.Length > 1 ? "" : "s");
            yield return alike.Key.Still ? $"{who} still leave{s} the road." : $"{who} stay{s} on the road now.";
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

    private static string Said(PassView view, IReadOnlyCollection<int> wheels) => SaidWheels.Of(wheels, view.After.Model.Rolls);

    private static bool Stands(PassAnswer crossing, int wheel) => crossing.Model.Trim.BumpLeft[wheel] < 0.0;

    private static IEnumerable<int> Wheels(PassView view) => WheelPlace.Each(view.After.Model.Rolls).Select(place => place.Corners[0]);

    // The room that is left before each wheel's bump stop, as printed; below 0 when it is pressed.
    private static IEnumerable<(int Wheel, double Before, double Now)> Stops(PassView view) => Each(view, "bump-margin");

    // How long each wheel has no load on the road, as printed.
    private static IEnumerable<(int Wheel, double Before, double Now)> Lifts(PassView view) => Each(view, "lift-off");

    private static IEnumerable<(int Wheel, double Before, double Now)> Each(PassView view, string key) =>
        from place in WheelPlace.Each(view.After.Model.Rolls)
        let measure = WheelCatalogue.Of(place).Single(one => one.Key == $"{place.Key}-{key}")
        let now = measure.ShownOf(view.After.Pass)
        where now is not null
        let before = view.Before is { IsWhole: true } former ? measure.ShownOf(former.Pass) ?? 0.0 : 0.0
        select (place.Corners[0], Math.Round(before, measure.Digits), Math.Round(now.Value, measure.Digits));
}
