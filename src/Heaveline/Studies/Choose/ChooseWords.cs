using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Search;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>A choice of parts in sentences: what to buy, and why.</summary>
/// <param name="findings">What was found.</param>
internal sealed class ChooseWords(ChooseFindings findings)
{
    // Parts that are never near the best are named up to so many.
    private const int MostNamed = 8;

    // A source of less of the scatter is not worth measuring anew.
    private const double LeastDoubt = 0.05;

    private const string NoneBetter = "no setup that may be chosen settles better.";

    // Differences below this nobody feels.
    private const double Unfelt = 0.01;

    /// <summary>What was asked: the car, the lists, over what, under which loads.</summary>
    public Sentence Asked
    {
        get
        {
            var (asked, space) = (findings.Asked, findings.Parts.Space);
            string[] from = [.. asked.Lists.Select(list => $"'{list.Name}'"), .. asked.HasRanges ? ["free ranges"] : Array.Empty<string>()];
            return new("asked", $"{asked.Car.Name}, from {And(from)}: "
                + Text($"{Count(space.Count, "setup", "setups")} of {And(space.Places.Select(place => place.Name))}. ")
                + $"Driven over {string.Join("; ", asked.Roads.Select(Of))}, with {And(asked.Loads.Select(load => $"'{load.Name}'"))}"
                + (asked.RideSpeeds.IsEmpty
                    ? "."
                    : $"; the ride on a random road of {NamedSpectrum.Of(asked.Class).Name} at {Speeds(asked.RideSpeeds)}"
                        + (asked.RideLoads.IsEmpty ? "." : $" with {And(asked.RideLoads.Select(load => $"'{load}'"))}.")));
        }
    }

    /// <summary>What to buy, or that the car is best left as it is.</summary>
    public Sentence Finding
    {
        get
        {
            if (!findings.List.IsEmpty)
            {
                var best = findings.List[0];
                return new("finding", $"{SoFar}orth buying: A, {findings.Parts.Words(best.Entry.Setup)}{Costs(best.Entry.Setup)}"
                    + $"{ChooseSprings.Condition(best.Fitted, findings.Asked)}. {Effect(best)}"
                    + $"{(ChooseGrip.Fall(findings, best) is { } fall ? $" But {fall}." : "")}{OnStops}"
                    + ChooseShareWords.Uncrossed(findings) + ChooseTravel.AsItIs(findings));
            }

            var bar = $"{Numeral.Of(In.Percent.Of(Shortlist.Felt), 0)} % or more off the settling"
                + (findings.Trial.Draws > 0 ? " in 9 drawn cars of 10" : "");
            return new("finding", Nothing + findings.Least switch
            {
                null when !findings.Found.Driven.Any(one => one.Setup != 0L && one.IsAllowed) => "no setup may be chosen within the limits.",
                null => NoneBetter,
                { Wishes: [var ratio, ..] } when ratio >= 1.0 - Shortlist.Untold => NoneBetter,
                var least => $"{(IsGained ? $"what takes {bar} does not keep there what must hold" : $"no setup that may be chosen takes {bar}")}. "
                    + $"{ChooseShareWords.Least(findings, least, Less)} {findings.Parts.Words(least.Setup)}"
                    + $"{Costs(least.Setup)}: {Less(least.Wishes[0])}"
                    + $"{Ninth(least)}{Fell(least)}.",
            } + OnStops + ChooseShareWords.Uncrossed(findings) + ChooseTravel.AsItIs(findings));
        }
    }

    /// <summary>Each setup of the shortlist.</summary>
    public IReadOnlyList<Sentence> List =>
    [
        .. findings.List.Select(one => new Sentence($"setup-{one.Letter.ToLowerInvariant()}",
            $"{one.Letter}. {FirstLetter.Raised(findings.Parts.Words(one.Entry.Setup))}{Costs(one.Entry.Setup)}: "
            + $"{And(one.Entry.Reasons.Select(Why))}; settling {Less(one.Entry.Tried.Stated.Wishes[0])}{Ninth(one)}"
            + (one.Harder.Words(Less) is { } harder ? $"; but {harder}" : "")
            + (ChooseGrip.Fall(findings, one) is { } fall ? $"; {fall}" : "") + $"{ChooseSprings.Condition(one.Fitted, findings.Asked)}.")),
    ];

    /// <summary>Why it is so: shares, the worst use case, neighbours, what bars better, whose doubt matters, ends of the list.</summary>
    public IReadOnlyList<Sentence> Reasons =>
    [
        .. new[] { ChooseShareWords.Of(findings, Less), Worst, ChooseGrip.Words(findings), Alike, Aside, Fragile, Barred, Doubts, Never }
            .Concat(FirstStops).Concat(Ends).OfType<Sentence>(),
        .. new ChooseSideWords(findings).Sentences,
    ];

    /// <summary>How it was found, and what was left out.</summary>
    public IReadOnlyList<Sentence> Method => new ChooseMethodWords(findings).All;

    /// <summary>What the setups ask for when they are fitted, and what to check after them, each told once.</summary>
    public IReadOnlyList<Sentence> Reminders =>
    [
        .. findings.List.SelectMany(one => one.Fitted.Remarks.Select(remark => (one.Letter, remark.Text))).Distinct()
            .GroupBy(remark => remark.Text, StringComparer.Ordinal)
            .Select((same, k) => new Sentence(Text($"remark-{k + 1}"), $"{string.Join(", ", same.Select(one => one.Letter))}: {same.Key}")),
        .. Checks,
    ];

    /// <summary>What to check on the real car, each told once with whom it is of.</summary>
    public IEnumerable<Sentence> Checks => OfWhom(one => ChangeReminders.Of(
        findings.Asked.Car, one.Fitted.Car, SideEffectsChange.Between(findings.Full.SideEffects, one.Full.SideEffects)));

    private IEnumerable<Sentence> OfWhom(Func<ChooseTold, IEnumerable<Sentence>> of) => findings.List
        .SelectMany(one => of(one).Select(said => (one.Letter, Said: said)))
        .GroupBy(one => one.Said)
        .GroupBy(same => same.Key.Id)
        .SelectMany(alike => alike.Select((same, k) => same.Key with
        {
            Id = k == 0 ? same.Key.Id : Text($"{same.Key.Id}-{k + 1}"),
            Text = $"{string.Join(", ", same.Select(one => one.Letter))}: {same.Key.Text}",
        }));

    /// <summary>Why the answer is less than was asked for; null where it is whole.</summary>
    public string? Failure => findings.Found.IsStopped || findings.Trial.Found.IsStopped || !findings.IsRidden
        ? "stopped before its end: what is told is the best so far, and not driven in every drawn car."
        : null;

    /// <summary>Why a setup stands on the shortlist, in words.</summary>
    public static string Reason(ShortlistReason reason) => reason switch
    {
        ShortlistReason.Best => "the least settling",
        ShortlistReason.CheapestOfBest => "not to be told from the least settling, and first of those by fit and price",
        ShortlistReason.Cheapest => Text($"the cheapest with {In.Percent.Of(Shortlist.Kept):F0} % of the best gain"),
        ShortlistReason.OnePart => "the best with one place changed",
        ShortlistReason.TwoParts => "the best with two places changed",
        ShortlistReason.ThreeParts => "the best with three places changed",
        ShortlistReason.Knee => "farthest from the worst of every wish",
        ShortlistReason.MostEven => "the most even over the use cases",
        ShortlistReason.LeastHit => "the least hit",
        ShortlistReason.LeastRide => "the least vibration at the seat",
        ShortlistReason.LeastGrip => "the least change of tyre load",
        ShortlistReason.LeastLoadLost => "the least tyre load lost",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "No such reason."),
    };

    // A car that does not keep what is asked is not to be left so, whatever the lists have.
    private string Nothing => (Failure, ChooseTravel.AsItIs(findings).Length > 0) switch
    {
        (null, false) => "Leave it as it is: ",
        (null, true) => "Nothing to buy was found that does what is asked: ",
        (_, false) => $"{Early}: leave it as it is, ",
        _ => $"{Early}, nothing to buy was found that does what is asked: ",
    };

    private const string Early = "So far, stopped before its end";

    private string SoFar => Failure is null ? "W" : $"{Early}: w";

    // The number that the reason goes by: as stated another may have less.
    private string Why(ShortlistReason reason) => reason == ShortlistReason.Best && findings.Trial.Draws > 0
        ? $"{Reason(reason)} in 9 drawn cars of 10"
        : reason is ShortlistReason.Cheapest && IsFittingUncounted ? $"{Reason(reason)}, the hours of fitting not counted"
        : Reason(reason);

    // Hours without the price of one: nobody knows what is cheapest when it is fitted.
    private bool IsFittingUncounted =>
        findings.Asked.Lists.SelectMany(list => list.Parts).Any(part => part is { Labour.Si: > 0.0, FittingPrice: null });

    // 0.74 is "26.0 % less", 1.03 "3.0 % more".
    private static string Less(double ratio)
    {
        var share = Math.Round(In.Percent.Of(ratio - 1.0), 1);
        return share == 0.0 ? "as now" : Text($"{Math.Abs(share):F1} % {(share < 0.0 ? "less" : "more")}");
    }

    private string Costs(long setup) => findings.Parts.HasPrices ? $", {findings.Parts.Price(setup)}" : "";

    private string Ninth(ChooseTold one) => findings.Trial.Draws == 0
        ? ""
        : Text($", at least {In.Percent.Of(1.0 - one.Entry.Tried.Ninth(0)):F1} % less in 9 drawn cars of 10");

    private string Ninth(DrivenSetup least) =>
        findings.Trial.Tried.FirstOrDefault(one => one.Stated.Setup == least.Setup) is { IsDropped: false, Draws: > 0 } tried
            && double.IsFinite(tried.Ninth(0))
            ? $", and {Less(tried.Ninth(0))} at worst in 9 drawn cars of 10"
            : "";

    // Some setup gains enough in the drawn cars, and fell for what it does there.
    private bool IsGained => findings.Trial.Tried.Skip(1).Any(one => one.Draws > 0 && one.Ninth(0) <= 1.0 - Shortlist.Felt);

    private string Fell(DrivenSetup least) =>
        findings.Trial.Tried.FirstOrDefault(one => one.Stated.Setup == least.Setup) is { Draws: > 0 } tried
            && Against(tried, findings.Found.Task.Limits) is { } reason ? $"; {reason}" : "";

    private string Effect(ChooseTold one)
    {
        var (stated, cases) = (one.Entry.Tried.Stated.Wishes, findings.Found.Scores.Counted.Count(c => c.Kind == WishKind.Settling));
        var others = findings.Found.Wishes.Index().Where(w => w.Index > 0 && w.Item is not (WishKind.Money or WishKind.Parts))
            .Where(w => double.IsFinite(stated[w.Index])).Select(w => $"{ChooseTables.Name(w.Item)} {Less(stated[w.Index])}").ToArray();
        return $"The settling, RMS pitch in the first second after the rear wheels have left, is {Less(stated[0])} "
            + Text($"as the mean of {cases} use cases{Ninth(one)}{string.Concat(others.Select((other, k) => (k == 0 ? "; " : ", ") + other))}.");
    }

    private static string Of(ChooseRoad road) => $"{road.Name} ({road.Road.Caption}) at {Speeds(road.Speeds)}"
        + (road.Loads.IsEmpty ? "" : $" counting with {And(road.Loads.Select(load => $"'{load}'"))}")
        + (road.Weight == 1.0 ? "" : Text($" weighing {road.Weight:0.###}"));

    private static string Speeds(IReadOnlyList<double> speeds) =>
        $"{string.Join(", ", speeds.Select(SpeedRanges.Number))} km/h";

    private string OnStops => findings.Stood.Standing.OnStops is { Length: > 0 } loads
        ? $" As it is the car stands on its bump stops under {And(loads.Select(load => $"'{load}'"))}."
        : "";

    private Sentence? Worst
    {
        get
        {
            if (findings.List.IsEmpty)
            {
                return null;
            }

            var (row, present) = (findings.List[0].Entry.Tried.Stated.Row, findings.Found.Present);
            var cases = findings.Found.Scores.Counted.Where(c => c.Kind == WishKind.Settling)
                .Select(c => (c.Name, Ratio: UseScores.Ratio(c, row, present))).OrderBy(c => c.Ratio).ToArray();
            return cases.Length < 2 ? null : new("worst-case",
                $"A gains most in '{cases[0].Name}' ({Less(cases[0].Ratio)}); its worst use case is '{cases[^1].Name}' ({Less(cases[^1].Ratio)}).");
        }
    }

    private Sentence? Alike => findings.List.IsEmpty || findings.List[0].Alike.IsEmpty ? null : new("alike",
        "The draws cannot tell from A, among others, with one place of it a step aside: "
        + string.Join("; ", findings.List[0].Alike.Select(setup => Beside(findings.List[0].Entry.Setup, setup)))
        + (IsCheaper(findings.List[0]) ? ". Take the cheapest, or what is in stock." : ". Take what is in stock."));

    // Whether the price can decide.
    private bool IsCheaper(ChooseTold best) => findings.Parts.HasPrices && !IsFittingUncounted
        && best.Alike.Any(setup => findings.Parts.Space.Price(setup) != findings.Parts.Space.Price(best.Entry.Setup));

    // What lies a step aside and is no choice.
    private Sentence? Aside
    {
        get
        {
            string[] told =
            [
                .. from one in findings.Aside
                   where findings.Where.ContainsKey(one.Setup.Setup)
                   select $"{findings.Parts.Space.Places[one.Place].Name} {findings.Parts.At(one.Setup.Setup, one.Place)} {Refusal(one.Setup)}",
            ];
            return told.Length == 0 ? null : new("aside", $"A step aside of A, and no choice: {string.Join("; ", told)}.");
        }
    }

    private string Refusal(DrivenSetup refused) => ChooseLimitWords.Reason(refused.Refusal, findings.Found.Task, findings.Asked.Limits)
        + (findings.Where.TryGetValue(refused.Setup, out var where) ? $": {where}" : "");

    // Of each setup at the load at which a stop is met soonest of those at which that changes.
    private IEnumerable<Sentence> FirstStops => OfWhom(one => CureStopWords.Of(
        [
            .. findings.Asked.Loads.Concat(findings.Stood.Others)
                .Zip(findings.Stood.Stances, (load, was) => (load.Name, was, CureStance.Of(RideModel.Of(one.Fitted.Car, load)))),
        ]) is { } stops ? [new Sentence("first-stops", $"{stops}.")] : []);

    // Good as stated, but not to be relied on.
    private Sentence? Fragile
    {
        get
        {
            var limits = findings.Found.Task.Limits;
            var least = findings.List.IsEmpty ? 1.0 - Shortlist.Felt : findings.List[0].Entry.Tried.Stated.Wishes[0] - Unfelt;
            var fragile = findings.Trial.Tried.Skip(1)
                .Where(one => one.Draws > 0 && one.Stated.Wishes[0] < least && Against(one, limits) is not null).MinBy(one => one.Stated.Wishes[0]);
            return fragile is null ? null : new("fragile",
                $"Better as stated, but not to be relied on: {findings.Parts.Words(fragile.Stated.Setup)}{Costs(fragile.Stated.Setup)}, settling "
                + $"{Less(fragile.Stated.Wishes[0])}; {Against(fragile, limits)}.");
        }
    }

    private string? Against(TriedSetup one, IReadOnlyList<SetupLimit> limits)
    {
        if (!one.IsClean(SetupTrial.CleanShare))
        {
            var most = one.Rows.Select(row => row.Refusal).Where(refusal => refusal != SetupRow.None)
                .GroupBy(refusal => refusal).OrderByDescending(same => same.Count()).ThenBy(same => same.Key).First().Key;
            return Text($"in {one.Draws - one.Clean} of {Cars(one, one.Draws)} it does what no cure may do, most often it ")
                + ChooseLimitWords.Reason(most, findings.Found.Task, findings.Asked.Limits);
        }

        var broken = limits.Index().FirstOrDefault(limit => !one.Keeps(limit.Index, limit.Item.Share));
        return broken.Item is null ? null : Text($"'{broken.Item.Says}' holds in {one.Held[broken.Index]} of {Cars(one, one.Asked[broken.Index])}");
    }

    // Whoever is surely none to tell is driven no farther.
    private static string Cars(TriedSetup one, int draws) => one.IsDropped
        ? Text($"the {draws} drawn cars after which it was sure enough")
        : Text($"{draws} drawn cars");

    private Sentence? Barred => findings.Barred is not { } barred ? null : new("barred",
        $"What keeps better from being told: {findings.Parts.Words(barred.Setup)}{Costs(barred.Setup)}, settling {Less(barred.Wishes[0])}, "
        + $"{Refusal(barred)}.");

    private Sentence? Doubts => findings.Doubts is not [{ Share: >= LeastDoubt } most, ..] ? null : new("doubts",
        $"Of the scatter of A's gain from car to car most comes from {most.Source.Name} "
        + $"({Numeral.Of(In.Percent.Of(most.Share), 0)} % of its variance): measure that better and it narrows most.");

    private IEnumerable<Sentence> Ends
    {
        get
        {
            if (findings.List.IsEmpty)
            {
                yield break;
            }

            var (space, best) = (findings.Parts.Space, findings.List[0].Entry.Setup);
            for (var place = 0; place < space.Places.Length; place++)
            {
                var (own, name, range) = (
                    space.OptionAt(best, place), space.Places[place].Name, findings.Asked.RangeAt(findings.Parts.Places[place]));
                if (range is not null)
                {
                    if (ChooseFree.ValueOf(findings.Asked.Car, findings.Parts.Places[place], findings.Parts.OptionOf(place, own)) is { } value
                        && (ChooseRange.IsAlike(value, range.From) || ChooseRange.IsAlike(value, range.To)))
                    {
                        yield return new($"end-{name.Replace(' ', '-')}",
                            $"A has the {(ChooseRange.IsAlike(value, range.From) ? "softest" : "firmest")} {name} of its range: "
                                + "one beyond it might be better still.");
                    }

                    continue;
                }

                double[] strengths = [.. space.Places[place].Options.Select(option => option.Strength).OfType<double>().Distinct().Order()];
                if (strengths.Length > 2 && own != 0 && space.Places[place].Options[own].Strength is { } strength
                    && (strength == strengths[0] || strength == strengths[^1]))
                {
                    yield return new($"end-{name.Replace(' ', '-')}",
                        $"A has the {(strength == strengths[0] ? "softest" : "firmest")} {name} of "
                            + $"{(IsFiltered(place) ? "those looked at" : "the lists")} that fits{By(place)}: one beyond it might be better still.");
                }
            }
        }
    }

    private bool IsFiltered(int place) => findings.Asked.Filters.Any(filter => filter.Place == findings.Parts.Places[place]);

    private Sentence? Never
    {
        get
        {
            var space = findings.Parts.Space;
            HashSet<(int, int)> near =
                [.. findings.Found.Near.SelectMany(one => Enumerable.Range(0, space.Places.Length).Select(k => (k, space.OptionAt(one.Setup, k))))];
            string[] never =
            [
                .. from place in Enumerable.Range(0, space.Places.Length)
                   where !space.Places[place].IsSilent && findings.Asked.RangeAt(findings.Parts.Places[place]) is null
                   from option in Enumerable.Range(1, space.Places[place].Options.Length - 1)
                   where !near.Contains((place, option))
                   select $"{space.Places[place].Options[option].Name} as {space.Places[place].Name}",
                .. ChooseFreeWords.Never(findings, near),
            ];
            return never.Length == 0 || findings.List.IsEmpty ? null : new("never", "In no setup near the best of any combination of wishes: "
                + string.Join(", ", never.Take(MostNamed)) + (never.Length > MostNamed ? Text($" and {never.Length - MostNamed} more") : "") + ".");
        }
    }

    // A damper that is firmer at one speed may be softer at another.
    private string By(int place) =>
        findings.Parts.Places[place].Sort() == PartSort.Damper ? " (by the mean of its forces at 0.1 and 0.5 m/s, both ways)" : "";

    private static string And(IEnumerable<string> parts) => SpeedRanges.And([.. parts]);

    private string Beside(long best, long setup)
    {
        var space = findings.Parts.Space;
        var place = Enumerable.Range(0, space.Places.Length).First(k => space.OptionAt(best, k) != space.OptionAt(setup, k));
        return $"{space.Places[place].Name} {findings.Parts.At(setup, place)}{Costs(setup)}"
            + (findings.List.FirstOrDefault(one => one.Entry.Setup == setup) is { } told ? $" (that is {told.Letter})" : "");
    }
}
