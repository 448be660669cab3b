using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Quantities;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>A choice of parts in sentences.</summary>
/// <param name="findings">What was found.</param>
internal sealed class ChooseWords(ChooseFindings findings)
{
    /// <summary>What was asked: the car, the lists, over what, under which loads.</summary>
    public Sentence Asked => new("asked", $"{Car}, from {SpeedRanges.And([.. findings.Asked.Lists.Select(list => $"'{list.Name}'")])}: "
        + FormattableString.Invariant($"{findings.Parts.Space.Count} setups of {SpeedRanges.And([.. findings.Parts.Space.Places.Select(p => p.Name)])}. ")
        + $"Driven over {string.Join("; ", findings.Asked.Roads.Select(Of))}, with {SpeedRanges.And([.. findings.Asked.Loads.Select(l => $"'{l.Name}'")])}"
        + (findings.Asked.RideSpeeds.IsEmpty
            ? "."
            : $"; the ride on a random road of {NamedSpectrum.Of(findings.Asked.Class).Name} at {Speeds(findings.Asked.RideSpeeds)}."));

    /// <summary>What to buy, or that the car is best left as it is.</summary>
    public Sentence Finding
    {
        get
        {
            if (!findings.List.IsEmpty)
            {
                var best = findings.List[0];
                return new("finding", $"Worth buying: A, {findings.Parts.Words(best.Entry.Setup)}{Costs(best.Entry.Setup)}. {Effect(best)}");
            }

            var bar = $"{Least} or more off the settling{(findings.Trial.Draws > 0 ? " in 9 drawn cars of 10" : "")}";
            return findings.Least is not { } least
                ? new("finding", "Leave it as it is: no setup may be chosen within the limits.")
                : least.Wishes[0] >= 1.0
                    ? new("finding", "Leave it as it is: no setup that may be chosen settles better.")
                    : new("finding", $"Leave it as it is: no setup that may be chosen takes {bar}. The least settling as stated has "
                        + $"{findings.Parts.Words(least.Setup)}{Costs(least.Setup)}: {Less(least.Wishes[0])}{Tried(least)}.");
        }
    }

    /// <summary>Each setup of the shortlist.</summary>
    public IReadOnlyList<Sentence> List =>
    [
        .. findings.List.Select(one => new Sentence($"setup-{one.Letter.ToLowerInvariant()}",
            $"{one.Letter}. {FirstLetter.Raised(findings.Parts.Words(one.Entry.Setup))}{Costs(one.Entry.Setup)}: "
            + $"{SpeedRanges.And([.. one.Entry.Reasons.Select(Reason)])}; settling {Less(one.Entry.Tried.Stated.Wishes[0])}{Ninth(one)}.")),
    ];

    /// <summary>Why it is so: shares, the worst use case, neighbours, what bars better, whose doubt matters, ends of the list.</summary>
    public IReadOnlyList<Sentence> Reasons =>
        [.. new[] { Shares, Worst, Alike, Barred, Doubts, Never }.Concat(Ends).OfType<Sentence>()];

    /// <summary>How it was found, and what was left out.</summary>
    public IReadOnlyList<Sentence> Method =>
    [
        .. new[] { Looked, Limits, Refused, Audit, Draws, Unfelt, NotCrossed, NotDriven, LeftOut, OneSided, Measured }.OfType<Sentence>(),
    ];

    /// <summary>What to check after a change, and what the parts ask for.</summary>
    public IReadOnlyList<Sentence> Reminders
    {
        get
        {
            var asked = new List<Sentence>();
            foreach (var one in findings.List.Take(1))
            {
                asked.AddRange(one.Fitted.Packers.Select((packer, k) => new Sentence(FormattableString.Invariant($"packing-{k + 1}"), $"A: {packer.Words}")));
                asked.AddRange(one.Fitted.Remarks.Select((remark, k) => new Sentence(FormattableString.Invariant($"remark-{k + 1}"), $"A: {remark.Text}")));
                asked.AddRange(ChangeReminders.Of(
                    findings.Asked.Car, one.Fitted.Car, SideEffectsChange.Between(findings.Full.SideEffects, one.Full.SideEffects)));
            }

            return asked;
        }
    }

    /// <summary>Why the answer is less than was asked for; null where it is whole.</summary>
    public string? Failure => findings.Found.IsStopped || findings.Trial.Found.IsStopped
        ? "stopped before its end: what is told is the best so far, and not driven in every drawn car."
        : null;

    /// <summary>Why a setup stands on the shortlist, in words.</summary>
    public static string Reason(ShortlistReason reason) => reason switch
    {
        ShortlistReason.Best => "the least settling",
        ShortlistReason.Cheapest => FormattableString.Invariant($"the cheapest with {In.Percent.Of(Search.Shortlist.Kept):F0} % of A's gain"),
        ShortlistReason.OnePart => "the best with one place changed",
        ShortlistReason.TwoParts => "the best with two places changed",
        ShortlistReason.ThreeParts => "the best with three places changed",
        ShortlistReason.Knee => "farthest from the worst of every wish",
        ShortlistReason.MostEven => "the most even over the use cases",
        ShortlistReason.LeastHit => "the least hit",
        ShortlistReason.LeastRide => "the least vibration at the seat",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "No such reason."),
    };

    private string Car => findings.Asked.Car.Name;

    private static string Least => $"{Numeral.Of(In.Percent.Of(Search.Shortlist.Felt), 0)} %";

    // 0.74 is "26 % less", 1.03 "3 % more".
    private static string Less(double ratio)
    {
        var share = Math.Round(In.Percent.Of(ratio - 1.0), 0);
        return share == 0.0 ? "as now" : FormattableString.Invariant($"{Math.Abs(share):F0} % {(share < 0.0 ? "less" : "more")}");
    }

    private string Costs(long setup) => findings.Parts.HasPrices ? $", {findings.Parts.Price(setup)}" : "";

    private string Ninth(ChooseTold one) => findings.Trial.Draws == 0
        ? ""
        : $", at least {In.Percent.Of(1.0 - one.Entry.Tried.Ninth(0)).ToString("F0", System.Globalization.CultureInfo.InvariantCulture)} % less in 9 drawn cars of 10";

    private string Tried(DrivenSetup least) =>
        findings.Trial.Draws > 0 && findings.Trial.Tried.FirstOrDefault(one => one.Stated.Setup == least.Setup) is { IsDropped: false } tried
            && double.IsFinite(tried.Ninth(0))
            ? $", and {Less(tried.Ninth(0))} at worst in 9 drawn cars of 10"
            : "";

    private string Effect(ChooseTold one)
    {
        var wishes = findings.Found.Wishes;
        var others = wishes.Index().Where(w => w.Index > 0 && w.Item is not (WishKind.Money or WishKind.Parts))
            .Select(w => $"{ChooseTables.Name(w.Item)} {Less(one.Entry.Tried.Stated.Wishes[w.Index])}");
        return $"The settling, RMS pitch in the first second after the rear wheels have left, is {Less(one.Entry.Tried.Stated.Wishes[0])} as the mean "
            + FormattableString.Invariant($"of {findings.Found.Scores.Counted.Count(c => c.Kind == WishKind.Settling)} use cases{Ninth(one)}; ")
            + $"{string.Join(", ", others)}.";
    }

    private static string Of(ChooseRoad road) => $"{road.Name} ({road.Road.Caption}) at {Speeds(road.Speeds)}";

    private static string Speeds(IReadOnlyList<double> speeds) =>
        $"{string.Join(", ", speeds.Select(v => FormattableString.Invariant($"{In.KilometresPerHour.Of(v):0.#}")))} km/h";

    private Sentence? Shares => findings.Shares.IsEmpty ? null : new("shares",
        $"Of A's settling, {Less(findings.List[0].Entry.Tried.Stated.Wishes[0])}, fair shares are: "
        + string.Join(", ", findings.Shares.Select(share => $"{findings.Parts.Space.Places[share.Place].Name} "
            + $"{Numeral.Change(In.Percent.Of(share.Part), 0)} %")) + " (they add up; Shapley over all orders of fitting).");

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
            return new("worst-case", $"A gains most in '{cases[0].Name}' ({Less(cases[0].Ratio)}) and least in '{cases[^1].Name}' "
                + $"({Less(cases[^1].Ratio)}); the table of use cases (--all) has every one.");
        }
    }

    private Sentence? Alike => findings.List.IsEmpty || findings.List[0].Alike.IsEmpty ? null : new("alike",
        "The draws cannot tell from A, where nothing else changes: "
        + string.Join("; ", findings.List[0].Alike.Select(setup => Beside(findings.List[0].Entry.Setup, setup)))
        + ". Take what is in stock.");

    private Sentence? Barred => findings.Barred is not { } barred ? null : new("barred",
        $"What keeps better from being told: {findings.Parts.Words(barred.Setup)}{Costs(barred.Setup)} would settle with "
        + $"{Less(barred.Wishes[0])}, but {ChooseLimitWords.Reason(barred.Refusal, findings.Found.Task, findings.Asked.Limits)}.");

    private Sentence? Doubts => findings.Doubts.IsEmpty || findings.Doubts[0].Share < 0.05 ? null : new("doubts",
        $"Of the scatter of A's gain from car to car most comes from {findings.Doubts[0].Source.Name} "
        + $"({Numeral.Of(In.Percent.Of(findings.Doubts[0].Share), 0)} % of its variance): measure that better and it narrows most.");

    private IEnumerable<Sentence?> Ends
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
                var order = ChooseReasons.InOrder(space.Places[place]);
                var at = Array.IndexOf(order, space.OptionAt(best, place));
                if (order.Length > 2 && space.OptionAt(best, place) != 0 && (at == 0 || at == order.Length - 1))
                {
                    yield return new($"end-{space.Places[place].Name.Replace(' ', '-')}",
                        $"A has the {(at == 0 ? "softest" : "firmest")} {space.Places[place].Name} that may be chosen: one beyond it might be better still.");
                }
            }
        }
    }

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
                   from option in Enumerable.Range(1, space.Places[place].Options.Length - 1)
                   where !near.Contains((place, option))
                   select $"{space.Places[place].Options[option].Name} as {space.Places[place].Name}",
            ];
            const int Most = 8;
            return never.Length == 0 || findings.List.IsEmpty ? null : new("never", "Near the best in no combination of wishes: "
                + string.Join(", ", never.Take(Most)) + (never.Length > Most ? FormattableString.Invariant($" and {never.Length - Most} more") : "") + ".");
        }
    }

    private Sentence Looked => findings.Found switch
    {
        { IsStopped: true } found => new("search", FormattableString.Invariant($"Stopped: {found.Driven.Length} setups were driven.")),
        { IsWhole: true } found => new("search", FormattableString.Invariant($"Every one of the {found.Within} setups within the price and the fit was driven.")),
        var found => new("search", FormattableString.Invariant($"Of {found.Within} setups to drive {found.Driven.Length} were driven in ")
            + FormattableString.Invariant($"{found.Rounds.Length} rounds: a sample, and whatever lay within {In.Percent.Of(found.Rounds[^1].Margin):0.#} % of the ")
            + "front that a fit to those driven guessed, until nothing was left"
            + FormattableString.Invariant($"; at setups not yet driven the fit was off by {In.Percent.Of(found.Rounds[^1].Residual):0.#} % (RMS) in the last round.")),
    };

    private Sentence? Audit => findings.Found.Audit is not { } audit ? null : new("audit", audit.Missed == 0
        ? FormattableString.Invariant($"Of those left out {audit.AtRandom} at random and {audit.Nearest} of the nearest were driven to look: ")
            + (audit.FoundBefore == 0 ? "none belonged on the front" : FormattableString.Invariant(
                $"{audit.FoundBefore} did at first, the search went on with a wider margin, and then none"))
            + FormattableString.Invariant($". With 95 % confidence fewer than {In.Percent.Of(audit.ShareBelow):0.#} % of those left out do.")
        : FormattableString.Invariant($"Of those left out {audit.AtRandom} at random and {audit.Nearest} of the nearest were driven to look, and ")
            + FormattableString.Invariant($"{audit.Missed} of them belonged on the front still: there may be a better setup than is told."));

    private Sentence Limits => new("limits", $"Limits: {string.Join("; ", findings.Found.Task.Limits.Select(limit => limit.Says))}, in 9 of 10 drawn cars; "
        + $"{string.Join("; ", ChooseLimitWords.Standing(findings.Asked.Limits))}, standing as stated; and nothing that no cure may do, under any load"
        + (findings.Stood.Others.IsEmpty ? "" : $" ({SpeedRanges.And([.. findings.Stood.Others.Select(load => $"'{load.Name}'")])} looked at too)") + ".");

    private Sentence? Refused
    {
        get
        {
            var counts = findings.Found.Driven.Where(one => !one.IsAllowed).GroupBy(one => one.Refusal).Select(g => (g.Key, Count: (long)g.Count()))
                .Concat(findings.Found.RefusedStanding.Select(r => (r.Key, Count: r.Value))).GroupBy(r => r.Key)
                .Select(g => (Reason: g.Key, Count: g.Sum(r => r.Count))).OrderByDescending(r => r.Count).ToArray();
            return counts.Length == 0 ? null : new("refused", "No choice, each counted by the first reason found against it"
                + (findings.Found.IsWhole ? "" : ", of those left out of the search's front only where it was looked at") + ": "
                + string.Join("; ", counts.Select(r =>
                    $"{FormattableString.Invariant($"{r.Count}")} {ChooseLimitWords.Reason(r.Reason, findings.Found.Task, findings.Asked.Limits)}")) + ".");
        }
    }

    private Sentence? Draws => findings.Trial.Draws == 0
        ? findings.AreDoubtsStated ? null : new("draws", "The car file states no doubts: nothing tells how sure this is.")
        : new("draws", FormattableString.Invariant($"Draws: the car as it is and {findings.Trial.Tried.Length - 1} setups driven in up to ")
            + FormattableString.Invariant($"{findings.Trial.Draws} cars drawn within the stated doubts, seed {findings.Asked.Seed}, each setup against the car as ")
            + "it is in the same draw"
            + (findings.Trial.Undriven > 0 ? FormattableString.Invariant($"; {findings.Trial.Undriven} draws do not count, the car as it is does not get across") : "")
            + (findings.Trial.Draws < 60 ? ". Of so few draws a limit 'in 9 of 10' is not sure yet." : "."));

    private Sentence? Unfelt => findings.Found.Scores.Unfelt.ToArray() is not { Length: > 0 } unfelt ? null : new("unfelt",
        "Not counted, since nobody feels it in the car as it is (settling below 0.05° or hit below 0.2 rad/s²; judged by eye, no source): "
        + string.Join("; ", unfelt.Select(c => $"{ChooseTables.Name(c.Kind)} of '{c.Name}'")) + ".");

    private Sentence? NotCrossed => findings.Asked.NotCrossed.IsEmpty ? null : new("not-crossed",
        $"Left out, since the car as it is does not get across under every load: {string.Join("; ", findings.Asked.NotCrossed)}.");

    private Sentence? NotDriven => findings.Stood.NotDriven.IsEmpty ? null : new("uncrossed",
        $"Under {SpeedRanges.And([.. findings.Stood.NotDriven.Select(load => $"'{load}'")])} the car as it is cannot stand or does not get across: "
        + "nothing was driven there, and no setup is shown to be safe there.");

    private Sentence? LeftOut
    {
        get
        {
            string[] out_ =
            [
                .. findings.Parts.Unfit.Select(misfit => misfit.Words.TrimEnd('.')).Distinct(),
                .. findings.Parts.Unpriced.Select(name => $"{name} has no price"),
            ];
            return out_.Length == 0 ? null : new("left-out", $"Parts left out: {string.Join("; ", out_)}.");
        }
    }

    private Sentence? OneSided => findings.Found.IsWhole || !findings.Parts.Space.Places.Any(place => place.IsSilent) ? null : new("bars",
        "Of anti-roll bars the cheapest that the price allows was driven: with both wheels of an axle alike they enter no crossing, with a load to one "
        + "side next to nothing; other bars that would keep a limit on roll were not tried.");

    private Sentence Measured => new("wishes", "Settling and hit (peak pitch acceleration while the wheels are on the obstacle) are weighted means of "
        + "ratios to the car as it is, even over loads, then obstacles, then speeds"
        + (findings.Asked.RideSpeeds.IsEmpty ? "" : "; ride is vertical acceleration at the first seat weighted by Wk (ISO 2631-1), of the car made linear "
            + "with each damper by its chord at 0.12 m/s") + ".");

    private string Beside(long best, long setup)
    {
        var space = findings.Parts.Space;
        var place = Enumerable.Range(0, space.Places.Length).First(k => space.OptionAt(best, k) != space.OptionAt(setup, k));
        return $"{findings.Parts.Space.Places[place].Name} {findings.Parts.At(setup, place)}{Costs(setup)}";
    }
}
