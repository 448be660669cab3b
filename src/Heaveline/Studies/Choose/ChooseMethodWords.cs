using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Rides;
using Heaveline.Search;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>How a choice of parts was found, in sentences: what was driven, within which limits, what was left out.</summary>
/// <param name="findings">What was found.</param>
internal sealed class ChooseMethodWords(ChooseFindings findings)
{
    /// <summary>All of them, in order.</summary>
    public IReadOnlyList<Sentence> All =>
    [
        .. new[]
        {
            Driven, Limits, OnStops, Refused, Audit, Draws, Unfelt, NotCrossed, NotDriven, LeftOut, ChooseFreeWords.Ranges(findings), Filtered,
            Closed, Bars, Fitting, Wishes,
        }.OfType<Sentence>(),
    ];

    private Sentence Driven => new("search", findings.Found switch
    {
        { IsStopped: false, IsWhole: true, Within: 1 } =>
            $"No setup but the car as it is {Fits}.",
        { IsStopped: true } found => $"Stopped: {Count(found.Driven.Length, "setup was", "setups were")} driven.",
        { IsWhole: true, Within: var within } found => Text($"Every one of the {within} setups that {Fit} was driven")
            + (found.AreSilentChosen ? ", those that differ in their bars alone counted once." : "."),
        { Rounds: [.., var last] } found =>
            Text($"Of {Count(found.Within, "setup", "setups")} to drive {Count(found.Driven.Length, "was", "were")} driven in ")
            + $"{Count(found.Rounds.Length, "round", "rounds")}: a sample, and whatever lay "
            + Text($"within {In.Percent.Of(last.Margin):0.#} % of the front that a fit to those driven guessed, {Until(found)}; at setups ")
            + Text($"not driven before the fit was off by {In.Percent.Of(last.Residual):0.##} % (RMS) in the last round."),
        var found => $"Of {Count(found.Within, "setup", "setups")} to drive {Count(found.Driven.Length, "was", "were")} driven, a sample; "
            + $"{Left(found)} left near the front.",
    });

    // Where front and rear are joined, how a setup stands is looked at once it was driven.
    private string Fit => !findings.Parts.IsJoined ? $"fit and keep {Kept}"
        : findings.Asked.Limits.Cost is null ? "fit" : "fit and cost no more than they may";

    // Travel that must be left is asked of what was driven: it stands, and is none of those before.
    private string Kept => findings.Asked.Limits is { BumpLeft: null, DroopLeft: null } ? "the standing limits"
        : $"the limits of roll, braking and lamp swing{(findings.Asked.Limits.Cost is null ? "" : ", and of cost")}";

    private string Fits => !findings.Parts.IsJoined ? $"fits and keeps {Kept}"
        : findings.Asked.Limits.Cost is null ? "fits" : "fits and costs no more than it may";

    private static string Until(FoundSetups found) => found.LeftNear == 0
        ? "until nothing was left"
        : Text($"and stopped after {Count(found.Rounds.Length, "round", "rounds")} with {found.LeftNear} still near");

    private static string Left(FoundSetups found) => found.LeftNear == 0 ? "nothing was" : Count(found.LeftNear, "was", "were");

    private Sentence Limits => new("limits",
        $"Limits: {string.Join("; ", findings.Found.Task.Limits.Select(limit => limit.Says + OwnShare(limit)))}"
        + $"{(findings.Trial.Draws > 0 && IsNineOfTen ? $", {Surely}in 9 of 10 drawn cars" : "")}; "
        + $"{string.Join("; ", ChooseLimitWords.Standing(findings.Asked.Limits))}, in the car as stated; and nothing that no cure may do, over these "
        + "roads at these speeds, under any load" + (findings.Stood.Others.IsEmpty
            ? ""
            : $" ({SpeedRanges.And([.. findings.Stood.Others.Select(load => $"'{load.Name}'")])} looked at too)")
        + (findings.Trial.Draws == 0
            ? "."
            : Text($"; {Surely}in 9 of 10 drawn cars nothing is pressed {In.Millimetres.Of(ChooseDoer.DrawnTravel):0.#} mm deeper, no wheel lifted ")
                + Text($"{ChooseDoer.DrawnTime:0.##} s longer, than in the same car as it is.")));

    // By the lower end of the share's interval; of few draws as it was counted.
    private string Surely => findings.Trial.Draws < TriedSetup.Few ? "" : "surely ";

    private bool IsNineOfTen => findings.Found.Task.Limits.All(limit => limit.Share == ChooseLimits.UsualShare);

    // Where the shares differ each limit says its own.
    private string OwnShare(SetupLimit limit) => findings.Trial.Draws == 0 || IsNineOfTen ? ""
        : limit.Share == ChooseLimits.UsualShare ? $", {Surely}in 9 of 10 drawn cars"
        : Text($", {Surely}in {In.Percent.Of(limit.Share):0.#} % of the drawn cars");

    private Sentence? Filtered =>
        findings.Asked.Filters.Where(filter => filter.Range is null).Select(filter => filter.Words(findings.Parts.Currency)).ToArray() is not
        { Length: > 0 } filters
            ? null
            : new("filtered", $"Of the lists only some parts were looked at: {string.Join("; ", filters)}.");

    private Sentence? OnStops => findings.Stood.Standing.OnStops is not { Length: > 0 } loads ? null : new("on-stops",
        $"Under {SpeedRanges.And([.. loads.Select(load => $"'{load}'")])} the car as it is stands on its bump stops, and what holds it in a bend and "
        + "in braking is the stops': the limits of roll and braking were left out there. What lifts it off them may roll and dive more.");

    private Sentence? Refused
    {
        get
        {
            var counts = findings.Found.Driven.Where(one => !one.IsAllowed && one.Setup != 0L).GroupBy(one => one.Refusal)
                .Select(g => (g.Key, Count: (long)g.Count()))
                .Concat(findings.Found.RefusedStanding.Select(r => (r.Key, Count: r.Value))).GroupBy(r => r.Key)
                .Select(g => (Reason: g.Key, Count: g.Sum(r => r.Count))).OrderByDescending(r => r.Count).ThenBy(r => r.Reason).ToArray();
            return counts.Length == 0 ? null : new("refused", Text($"No choice, {counts.Sum(r => r.Count)} of ")
                + Count(Setups(findings), "setup", "setups")
                + (findings.Found.AreSilentChosen ? " (those that differ in their bars alone counted once)" : "")
                + ", each counted by the first reason found against it"
                + (findings.Found.IsWhole ? "" : ", those not driven by their standing alone") + ": "
                + string.Join("; ", counts.Select(r =>
                    ChooseLimitWords.Reason(r.Reason, findings.Found.Task, findings.Asked.Limits)
                    + (findings.Instances.TryGetValue(r.Reason, out var where) ? $", for instance {where}" : "") + Text($" ({r.Count})"))) + ".");
        }
    }

    private static long Setups(ChooseFindings findings) =>
        findings.Found.AreSilentChosen ? findings.Parts.Space.LoudCount : findings.Parts.Space.Count;

    private Sentence? Audit => findings.Found.Audit is not { } audit ? null : new("audit",
        Text($"Of those left out {audit.AtRandom} at random and {audit.Nearest} of the nearest were driven to look")
        + (audit, audit.Missed, audit.FoundBefore) switch
        {
            (_, > 0, _) => $", and {Count(audit.Missed, "of them belongs", "of them belong")} on the front still: there may be a better setup "
                + "than is told.",
            (_, _, > 0) => Text($": {audit.FoundBefore} belonged on the front at first, the search went on with a wider margin, and then none did. ")
                + Sure(audit),
            _ => $": none belonged on the front. {Sure(audit)}",
        });

    private static string Sure(AuditResult audit) =>
        Text($"With 95 % confidence fewer than {In.Percent.Of(audit.ShareBelow):0.#} % of those left out do.");

    private Sentence? Draws
    {
        get
        {
            var trial = findings.Trial;
            if (trial.Draws == 0)
            {
                return findings.AreDoubtsStated
                    ? null
                    : new("draws", "Neither the car file nor the lists state doubts: nothing tells how sure this is.");
            }

            return new("draws", $"Draws: the car as it is and {Count(trial.Tried.Length - 1, "setup", "setups")} driven in up to "
                + Text($"{Count(trial.Draws, "car", "cars")} drawn within the stated doubts, seed {findings.Asked.Seed}, each setup against the ")
                + "car as it is in the same draw, until it is surely none to tell"
                + (trial.Undriven > 0
                    ? $"; {Count(trial.Undriven, "more has", "more have")} nothing to compare with, the car as it is does not get across there"
                        + (trial.Found.Task.Limits.Where(limit => limit.IsAlone).Select(limit => $"'{limit.Says}'").ToArray() is { Length: > 0 } alone
                            ? $": {SpeedRanges.And(alone)} counted there too, as broken by what does not get across"
                            : "")
                    : "")
                + (trial.Draws < TriedSetup.Few ? ". Of so few draws a limit 'in 9 of 10' is not sure yet." : "."));
        }
    }

    private Sentence? Unfelt => findings.Found.Scores.Unfelt.ToArray() is not { Length: > 0 } unfelt ? null : new("unfelt",
        $"Not counted, since nobody feels it in the car as it is (settling below 0.05° or hit below 0.2 rad/s²{Lost}; judged by eye, no source): "
        + string.Join("; ", unfelt.Select(c => $"{ChooseTables.Name(c.Kind)} of '{c.Name}'")) + ".");

    private string Lost => findings.Use.HasLoads ? " or less than 5 % of the tyre load lost" : "";

    private Sentence? NotCrossed => findings.Asked.NotCrossed.IsEmpty ? null : new("not-crossed",
        $"Left out, since the car as it is does not get across under every load: {string.Join("; ", findings.Asked.NotCrossed)}.");

    private Sentence? NotDriven => findings.Stood.NotDriven.IsEmpty ? null : new("uncrossed",
        $"Under {SpeedRanges.And([.. findings.Stood.NotDriven.Select(load => $"'{load}'")])} the car as it is cannot stand or does not get across: "
        + "nothing was driven there, and no setup is shown to be safe there.");

    private Sentence? LeftOut
    {
        get
        {
            string[] left =
            [
                .. findings.Parts.Unfit.Select(misfit => misfit.Words.TrimEnd('.')).Distinct(),
                .. findings.Parts.Unpriced.Select(name => $"{name} has no price"),
            ];
            return left.Length == 0 ? null : new("left-out", $"Parts left out: {string.Join("; ", left)}.");
        }
    }

    // What the lists hold for places that are not open.
    private Sentence? Closed
    {
        get
        {
            string[] closed =
            [
                .. Parts.PartPlaces.All
                    .Where(place => !findings.Asked.Open.Contains(place) && findings.Asked.Lists.Any(list => list.For(place).Any()))
                    .Select(Parts.PartPlaces.Name),
            ];
            return closed.Length == 0 ? null : new("closed",
                $"Left as they are, since nobody opened these places, though the lists have parts for them: {string.Join(", ", closed)}.");
        }
    }

    private Sentence? Bars => !findings.Found.AreSilentChosen ? null : new("bars",
        "Of anti-roll bars the cheapest with which a setup keeps the standing limits was driven: with both wheels of an axle alike they enter no "
        + "crossing, with a load to one side next to nothing.");

    private bool IsEven => findings.Asked.Roads.All(road => road.Loads.IsEmpty && road.Weight == findings.Asked.Roads[0].Weight);

    // Whoever reads a price asks what is in it.
    private Sentence? Fitting
    {
        get
        {
            if (!findings.Parts.HasPrices)
            {
                return null;
            }

            string[] hours =
            [
                .. findings.Asked.Lists.Where(list => list.HourlyPrice is not null && list.Parts.Any(part => part.FittingPrice is not null))
                    .Select(list => $"'{list.Name}' ({list.HourlyPrice} an hour)"),
            ];
            return hours.Length == 0 ? null : new("fitting",
                $"Prices count the fitting by the hours of {SpeedRanges.And(hours)}, each place by itself; that of other parts is not counted.");
        }
    }

    private Sentence Wishes => new("wishes", "Settling and hit (peak pitch acceleration while the wheels are on the obstacle) are weighted means of "
        + "ratios to the car as it is, "
        + (IsEven ? "even over loads, then obstacles, then speeds" : "weighted as asked, each obstacle's share even over its loads, then its speeds")
        + (findings.Asked.RideSpeeds.IsEmpty
            ? "."
            : $"; ride is vertical acceleration at the first seat weighted by Wk (ISO 2631-1), {Ride}.")
        + (findings.Use.HasGrip
            ? " Change of tyre load is its root mean square on that road over the load at rest, at the worst wheel, as 'heaveline ride' tells it."
            : "")
        + (findings.Use.HasLoads
            ? " Tyre load lost is what the least load of any tyre over an obstacle lacks of that at rest, as 'heaveline pass' tells it."
            : ""));

    // What is printed, and what was searched by.
    private string Ride => !findings.IsRidden
        ? $"of the car made linear with {Chords}: good enough to search by, and not told of any setup here, as this was stopped before its end"
        : "in the long run, each car made linear at its own level on that road, as the question of the ride tells it"
            + (findings.Trial.Draws > ChooseRidden.MostDraws ? Text($", in the first {ChooseRidden.MostDraws} of the drawn cars") : "")
            + $"; the search alone went by the car made linear with {Chords}";

    private static string Chords => Text($"each damper by its chord at {ChordDamping.Speed:0.##} m/s");
}
