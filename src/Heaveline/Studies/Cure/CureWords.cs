using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Cures in sentences.</summary>
/// <param name="answer">The answer.</param>
internal sealed class CureWords(CureAnswer answer)
{
    // How many measures that get better, or worse, are named of each kind (judged by eye).
    private const int Named = 3;

    /// <summary>The finding.</summary>
    public Sentence Finding => answer.Cures switch
    {
        [] when answer.Measure.IsShownAsNothing(Si(answer.Described[0])) => new("finding",
            $"There is nothing to cure: the {answer.Measure.Name} is {Value(answer.Described[0])}."),
        [] => new("finding",
            $"Nothing that was tried helps: no setting alone and no pair of two takes {Least} or more, the least that is felt, off the "
            + $"{answer.Measure.Name} of {Value(answer.Described[0])} without {Guarded}"
            + $"{(answer.Left.Any(left => left.Chance is not null) ? ", and in half of the drawn cars or more" : "")}."),
        var cures when cures.Index().FirstOrDefault(one => one.Item.Chance?.IsSure ?? true) is { Item: { } best } first =>
            new("finding", $"{FirstLetter.Raised(CureAnswer.Named(first.Index))} does most{(first.Index == 0 ? "" : " of what helps for sure")}: "
                + $"{best.Words}: {Effect(best)}."),
        [var most, ..] => new("finding",
            $"Nothing helps for sure within the doubts of the car file. Most would do {most.Words}: {Effect(most)}; but {Chance(most.Chance!)}. "
            + "'heaveline doubt' says what to measure better first."),
    };

    /// <summary>What each cure does, in the order of the cures, several sentences each.</summary>
    public IReadOnlyList<IReadOnlyList<Sentence>> Cures => [.. answer.Cures.Select(Of)];

    /// <summary>What would help but for what no cure may do; null where there is nothing of the kind.</summary>
    public Sentence? Left => answer.Left.IsEmpty ? null : new("left", $"No cure, though {Least} or more would go: "
        + $"{string.Join("; ", answer.Left.Select(left => $"{left.Act}, which {Against(left)}"))}.");

    /// <summary>Under which loads nothing was driven; null where it was under every one.</summary>
    public Sentence? Uncrossed => answer.Uncrossed.IsEmpty ? null : new("uncrossed",
        $"Under {SpeedRanges.And([.. answer.Uncrossed.Select(load => $"'{load}'")])} the car as described cannot stand or does not get across: "
        + "nothing here was driven there, and no cure is shown to be safe there.");

    /// <summary>How the cures were found, and what their numbers hold for.</summary>
    public Sentence Method => new("method", FormattableString.Invariant(
        $"Every setting was turned from the car as described, alone and in pairs, in up to {CureTurn.Steps} steps to the end of its slider on the ")
        + FormattableString.Invariant($"page of the pass ({answer.Tried} passes under {Loads}). A cure is the smallest change that takes off ")
        + FormattableString.Invariant($"{In.Percent.Of(CureSearch.Reached):F0} % of what can be had so without {Guarded}; ")
        + $"a pair takes off {Least} more of it than its better half alone. "
        + (answer.AreDoubtsStated ? "What helps in fewer than half of the drawn cars, or harms more of them than it helps, is none. " : "")
        + $"Price: what gets worse by {Least} or more, over this road, standing "
        + $"under the fullest load ('{answer.Full.Model.Load.Name}') and on a random road of {CureStudy.Ordinary.Name} (ISO 8608) at the same "
        + "speed, and over this road and standing under the other load at which something gets worse by most; "
        + "the tables hold every number. What it takes off holds for this road at this speed: 'heaveline rule' says where else. "
        + $"The {Least}, "
        + FormattableString.Invariant($"{In.Percent.Of(CureSearch.Reached):F0} % and {In.Percent.Of(CureGuard.Spoilt):F0} % are judged by eye, ")
        + $"the bounds of the damping and the {CureStance.Print(CureStance.LeastFirstStop)} are common practice; none has a source.");

    /// <summary>Whose price on a random road cannot be told; null where every one can.</summary>
    public Sentence? Unridden
    {
        get
        {
            string[] names =
            [
                .. answer.Ride is null ? [CureAnswer.AsDescribed] : Array.Empty<string>(),
                .. answer.Cures.Where(cure => cure.Ride is null).Select(cure => cure.Car.Name),
            ];
            return names.Length == 0 ? null : new("unridden", $"On a random road of {CureStudy.Ordinary.Name} the equivalent linear car does not "
                + $"settle ({string.Join(", ", names)}): of the price there nothing can be told.");
        }
    }

    /// <summary>How the chances came about.</summary>
    public Sentence Doubts => answer.AreDoubtsStated
        ? new("doubts", FormattableString.Invariant(
            $"Chances: {answer.Asked.Draws} cars drawn within the stated doubts, seed {answer.Asked.Seed}, each with and without every cure; ")
            + "a part that is changed is as doubtful in proportion as the one before it, and off by an error of its own.")
        : DoubtAnswer.NotStated;

    /// <summary>What to check after a change, with the cures that ask for it.</summary>
    public IReadOnlyList<Sentence> Reminders =>
    [
        .. answer.Cost.Reminders.SelectMany(one => one.Reminders.Select(reminder => (one.After.Name, Reminder: reminder)))
            .GroupBy(one => one.Reminder).Select(group => group.Key with { Text = $"{After([.. group.Select(one => one.Name)])}: {group.Key.Text}" }),
    ];

    /// <summary>What a cure does to the number that is to be less ("from 1.21° to 0.98°, 19 % less").</summary>
    public string Change(Cure cure)
    {
        var (before, after) = (Si(answer.Described[0]), Si(cure.Passes[0]));
        return $"from {Value(answer.Described[0])} to {Value(cure.Passes[0])}, {Numeral.Of(In.Percent.Of((before - after) / before), 0)} % less";
    }

    /// <summary>What gets worse, over the road and standing, in words that begin with the load that they are of.</summary>
    public string Price(Cure cure)
    {
        var crossing = Told(Crossing(cure), better: false);
        string?[] parts =
        [
            crossing,
            Told(Standing(cure), better: false) is { } standing
                ? $"standing{(FullIsAsked ? "" : $" under '{answer.Full.Model.Load.Name}'")}: {standing}"
                : null,
            Told(Riding(cure), better: false) is { } riding
                ? $"on a random road of {CureStudy.Ordinary.Name}: {riding}"
                : null,
            Elsewhere(cure),
        ];
        string[] told = [.. parts.OfType<string>()];
        if (told.Length > 0)
        {
            var isOfAsked = answer.Described.Length > 1 && (crossing is not null || parts[2] is not null || (FullIsAsked && parts[1] is not null));
            return $"Price{(isOfAsked ? $" under '{Load}'" : "")}: {string.Join("; ", told)}";
        }

        var isSooner = answer.Described.Zip(cure.Passes).Any(pair => CureStance.Of(pair.First.Model).FirstStops
            .Zip(CureStance.Of(pair.Second.Model).FirstStops).Any(one => one.Second.At < one.First.At));
        return Suffering(cure).Length > 0 || isSooner
            ? "Price: nothing but what is said below of other loads and of the stops"
            : $"Price: none found under {string.Join(", ", answer.Described.Select(pass => $"'{pass.Model.Load.Name}'"))}{Further(cure)}";
    }

    // What cures are not weighed by stands in the whole table, and must not speak against a price of nothing.
    private string Further(Cure cure)
    {
        var (load, told) = answer.Described.Zip(cure.Passes, (was, now) => (Load: was.Model.Load.Name, Told: Told(
            PassCatalogue.For(now.Model, now.Pass.Road, MeasureUse.Table)
                .Where(measure => !measure.Uses.HasFlag(MeasureUse.BeforeAfter) && measure.Key != answer.Measure.Key)
                .Select(measure => new MeasureChange(measure, measure.ShownOf(was.Pass), measure.ShownOf(now.Pass))),
            better: false))).FirstOrDefault(one => one.Told is not null);
        return told is null ? "" : $" among the numbers that are weighed; of the others, under '{load}': {told}";
    }

    // Of the other loads that at which something gets worse by most: over the road and standing.
    private string? Elsewhere(Cure cure)
    {
        var (load, worse) = answer.Described.Zip(cure.Passes, (was, now) => (Load: was.Model.Load.Name, Worse: Worse(was, now).ToArray()))
            .Skip(1)
            .Where(one => one.Worse.Length > 0).OrderByDescending(one => one.Worse[0].Share).FirstOrDefault();
        return worse is null ? null : $"under '{load}': "
            + string.Join("; ", worse.Take(Named).Concat(worse.Skip(Named).Where(change => IsRoll(change.Measure)))
                .Select(change => $"{change.Measure.Label} {change.Print(change.Before)} → {change.PrintWithUnit(change.After)}"))
                .Replace('\u00a0', ' ');
    }

    private IEnumerable<MeasureChange> Worse(PassAnswer was, PassAnswer now) => CurePrices.Worse(
        answer, was, now, standing: was.Model.Load.Name != answer.Full.Model.Load.Name);

    // Under which other loads there is more of what is to be less.
    private string[] Suffering(Cure cure) =>
    [
        .. answer.Described.Zip(cure.Passes).Skip(1)
            .Select(pair => new MeasureChange(answer.Measure, answer.Measure.ShownOf(pair.First.Pass), answer.Measure.ShownOf(pair.Second.Pass)))
            .Zip(answer.Described.Skip(1), (change, pass) => (Change: change, Load: pass.Model.Load.Name))
            .Where(one => one.Change.IsFelt && one.Change.IsBetter == false).Select(one => $"'{one.Load}' {one.Change.Size}"),
    ];

    // How much a car leans is told whatever else gets worse by more.
    private static bool IsRoll(Measure measure) => measure.Key == SideEffectCatalogue.RollPerG;

    /// <summary>In how many drawn cars a cure helps, a clause.</summary>
    public static string Chance(CureChance chance) =>
        FormattableString.Invariant($"it helps in {chance.Helps} of {chance.Drawn} cars drawn within the doubts")
        + (chance.Harms > 0
            ? FormattableString.Invariant($"; in {chance.Harms} of the {chance.Drawn} it presses a stop deeper, lifts a wheel for longer, brings a ")
                + "spring loose or does not get across"
            : "");

    private string Effect(Cure cure) => $"the {answer.Measure.Name} goes {Change(cure)}";

    private IReadOnlyList<Sentence> Of(Cure cure, int k)
    {
        var id = FormattableString.Invariant($"cure-{k + 1}");
        var better = Told(Crossing(cure), better: true);
        var worse = Suffering(cure);
        Sentence?[] said =
        [
            new(id, $"{FirstLetter.Raised(cure.Words)}: {Effect(cure)}."),
            better is null ? null : new($"{id}-better", $"Better too: {better}."),
            new($"{id}-price", $"{Price(cure)}."),
            Stops(cure) is { } stops ? new($"{id}-first-stops", $"{FirstLetter.Raised(stops)}.") : null,
            cure.End is { } end ? new($"{id}-end", $"Past {end.Last} it {Breach(end)}.") : null,
            worse.Length == 0
                ? null
                : new($"{id}-loads", $"Under other loads it makes it worse: {string.Join("; ", worse).Replace('\u00a0', ' ')}."),
            cure.Chance is { } chance ? new($"{id}-chance", $"{FirstLetter.Raised(Chance(chance))}.") : null,
        ];
        return [.. said.OfType<Sentence>(), .. Swap(cure).Select(one => one with { Id = $"{id}-{one.Id}" })];
    }

    // What a bought spring that is changed does to heights, seats and beam; how to fit it is said once, below.
    private IEnumerable<Sentence> Swap(Cure cure) => SwapWords.Of([cure.Passes[0].Model])
        .Except(SwapWords.Of([answer.Described[0].Model])).Where(one => one.Id != SwapWords.Safe);

    // At the load at which a stop is met soonest of those at which that changes.
    private string? Stops(Cure cure) => CureStopWords.Of(
        [.. answer.Described.Zip(cure.Passes, (was, now) => (was.Model.Load.Name, CureStance.Of(was.Model), CureStance.Of(now.Model)))]);

    // In a sentence of a printout blanks may break.
    private static string? Told(IEnumerable<MeasureChange> changes, bool better) =>
        MeasureChange.Told(changes, better, Named, always: IsRoll)?.Replace('\u00a0', ' ');

    private IEnumerable<MeasureChange> Crossing(Cure cure) =>
        MeasureChange.Of(cure.Passes[0], answer.Described[0]).Where(change => change.Measure.Key != answer.Measure.Key);

    private IEnumerable<MeasureChange> Standing(Cure cure) => CurePrices.Standing(answer.Full, cure.Full);

    private IEnumerable<MeasureChange> Riding(Cure cure) => answer.Ride is { } before && cure.Ride is { } after
        ? RideCatalogue.Of(answer.Asked.Car.Car.Seats.Count > 0 ? [SeatPlace.Worst] : []).Where(measure => measure.Uses.HasFlag(MeasureUse.Short))
            .Select(measure => new MeasureChange(measure, measure.ShownOf(before), measure.ShownOf(after)))
            .Where(change => change is { Before: not null, After: not null })
        : [];

    private bool FullIsAsked => answer.Full.Model.Load.Name == Load;

    private string After(string[] names) => names.Length == answer.Cures.Length && names.Length > 1
        ? "After each"
        : $"After {string.Join(", ", names)}";

    private string Against(CureLeft left) => left switch
    {
        { End: { } end } => Breach(end),
        { Chance: { } chance } => FormattableString.Invariant($"helps in {chance.Helps} of {chance.Drawn} cars drawn within the doubts")
            + (chance.Harms > 0 ? FormattableString.Invariant($" and harms in {chance.Harms}") : ""),
        _ => throw new NotSupportedException("Nothing is known against it."),
    };

    private string Breach(CureEnd end) => end.Why is { } why ? $"{why} under '{end.Load}'" : $"{Breach(end.Breach)} under '{end.Load}'";

    private string Breach(CureBreach breach) => CureBreachWords.Of(breach, answer.Other.Name);

    private string Value(PassAnswer pass) => answer.Measure.Print(answer.Measure.Unit.Of(Si(pass))) + answer.Measure.Unit.Suffix;

    private double Si(PassAnswer pass) => answer.Measure.Of(pass.Pass);

    private string Load => answer.Asked.Car.Load.Name;

    private string Loads => answer.Described.Length == 1 ? $"'{Load}'" : FormattableString.Invariant($"{answer.Described.Length} loads");

    private static string Least => $"{Numeral.Of(In.Percent.Of(MeasureChange.Felt), 0)} %";

    private string Guarded => "lifting a wheel for longer, pressing a stop deeper, making the "
        + FormattableString.Invariant($"{answer.Other.Name} more than {In.Percent.Of(CureGuard.Spoilt):F0} % worse or taking an axle's damping ")
        + FormattableString.Invariant($"ratio out of {CureGuard.LeastDamping:F2} to {CureGuard.MostDamping:F2}, letting coils touch before the bump ")
        + $"stop is solid, bringing a spring loose or meeting a stop sooner below {CureStance.Print(CureStance.LeastFirstStop)} of braking, "
        + "accelerating or cornering, under any of the loads";
}
