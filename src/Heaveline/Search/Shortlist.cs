using System.Collections.Immutable;

namespace Heaveline.Search;

/// <summary>The few setups that are told: each the best in something, none beyond a limit in the drawn cars, none that gains nothing.</summary>
internal static class Shortlist
{
    /// <summary>Most setups that are told.</summary>
    public const int Most = 7;

    /// <summary>Most setups that are driven in drawn cars to find them.</summary>
    public const int MostTried = 40;

    /// <summary>What part of the best gain the cheapest keeps (–). Judged by eye, no source.</summary>
    public const double Kept = 0.8;

    /// <summary>
    /// A setup is told from so much less of the first wish on in 9 drawn cars of 10 (–): less is not felt. Judged by eye, no source.
    /// </summary>
    public const double Felt = 0.05;

    /// <summary>
    /// Half a per cent of a wish is told from another by no test: the cheaper of two so near is the better. Judged by eye, no source.
    /// </summary>
    public const double Untold = 0.005;

    // Differences of a wish below this nobody feels. Judged by eye, no source.
    private const double Alike = 0.01;

    /// <summary>The setups worth driving in drawn cars: those of every reason, their runners-up, and others of the front evenly along it.</summary>
    /// <param name="found">What was searched.</param>
    public static ImmutableArray<DrivenSetup> Candidates(FoundSetups found)
    {
        var chosen = new List<DrivenSetup>();
        DrivenSetup[] front = [.. found.Front.Where(one => one.Setup != 0L)];
        if (front.Length == 0)
        {
            return [];
        }

        // Each reason's best three: the draws decide between them.
        foreach (var ranked in Ranked(front, found, one => one.Wishes.AsSpan(), one => one.Setup, one => found.Scores.Of(
            WishKind.WorstRoad, one.Row, found.Present)).Values)
        {
            chosen.AddRange(ranked.Take(3));
        }

        var spread = Math.Max(1, front.Length / MostTried);
        chosen.AddRange(front.Where((_, k) => k % spread == 0));
        return [.. chosen.DistinctBy(one => one.Setup).Take(MostTried)];
    }

    /// <summary>The shortlist, the best first; empty where nothing is worth buying.</summary>
    /// <param name="trial">The setups in drawn cars.</param>
    public static ImmutableArray<ShortlistEntry> Of(SetupTrial trial)
    {
        var (found, limits) = (trial.Found, trial.Found.Task.Limits);
        TriedSetup[] sound = [.. trial.Tried.Skip(1).Where(one => IsSound(one, limits) && Ninth(one) <= 1.0 - Felt)];
        if (sound.Length == 0)
        {
            return [];
        }

        var wishes = sound.ToDictionary(one => one.Stated.Setup, one => Numbers(one));
        var best = Ranked(sound, found, one => wishes[one.Stated.Setup], one => one.Stated.Setup, Worst)[ShortlistReason.Best][0];
        var first = First(sound, best, found);
        // Whatever is in nothing better than the first, as far as the draws tell, and no cheaper, is not worth a reader's time.
        TriedSetup[] told = [.. sound.Where(one => one == first || IsBetterInAnything(one, first, found))];
        var ranked = Ranked(told, found, one => wishes[one.Stated.Setup], one => one.Stated.Setup, Worst);
        ranked[ShortlistReason.Best] = [first];
        if (first != best)
        {
            ranked.Remove(ShortlistReason.Best);
            ranked[ShortlistReason.CheapestOfBest] = [first];
        }

        // Nor is what has least of a wish by less than the draws can tell.
        foreach (var (reason, kind) in Kinds)
        {
            if (ranked.TryGetValue(reason, out var those) && those[0] != first && !those[0].HasLess(first, found.Wishes.IndexOf(kind), Untold))
            {
                ranked.Remove(reason);
            }
        }

        var entries = ranked.OrderBy(one => one.Key).GroupBy(one => one.Value[0].Stated.Setup)
            .Select(group => new ShortlistEntry(group.First().Value[0], [.. group.Select(one => one.Key)]));
        return [.. entries.Take(Most)];

        double Ninth(TriedSetup one) => one.Draws > 0 ? one.Ninth(0) : one.Stated.Wishes[0];

        double[] Numbers(TriedSetup one) =>
            [.. one.Stated.Wishes.Select((stated, k) => k < one.Wishes.Length && one.Draws > 0 ? (k == 0 ? one.Ninth(0) : one.Mean(k)) : stated)];

        double Worst(TriedSetup one) => found.Scores.Of(WishKind.WorstRoad, one.Stated.Row, found.Present);
    }

    /// <summary>Whether a setup keeps every limit in its share of the drawn cars, and does nothing there that no setup may do.</summary>
    /// <param name="one">The setup in drawn cars.</param>
    /// <param name="limits">The limits.</param>
    public static bool IsSound(TriedSetup one, ImmutableArray<SetupLimit> limits) => !one.IsDropped && Keeps(one, limits);

    /// <summary>The same of one that may have been dropped since another is better, in the cars that it was driven in.</summary>
    /// <param name="one">The setup in drawn cars.</param>
    /// <param name="limits">The limits.</param>
    public static bool Keeps(TriedSetup one, ImmutableArray<SetupLimit> limits) => one.IsClean(SetupTrial.CleanShare)
        && limits.Index().All(limit => one.Keeps(limit.Index, limit.Item.Share));

    private static readonly (ShortlistReason Reason, WishKind Kind)[] Kinds =
    [
        (ShortlistReason.LeastHit, WishKind.Hit), (ShortlistReason.LeastRide, WishKind.Ride), (ShortlistReason.LeastGrip, WishKind.Grip),
        (ShortlistReason.LeastLoadLost, WishKind.LoadLost),
    ];

    // Of those that the draws cannot tell from the best in anything driven for, and that keep most of its gain: what surely fits, then the cheapest.
    private static TriedSetup First(TriedSetup[] sound, TriedSetup best, FoundSetups found)
    {
        double Gain(TriedSetup one) => 1.0 - (one.Draws > 0 ? one.Ninth(0) : one.Stated.Wishes[0]);
        return sound.Where(one => Gain(one) >= Kept * Gain(best) && Driven(found).All(k => !best.HasLess(one, k, Alike)))
            .OrderBy(one => found.Task.Unsure(one.Stated.Setup)).ThenBy(one => found.Task.Space.Price(one.Stated.Setup))
            .ThenBy(one => found.Task.Space.Changed(one.Stated.Setup)).ThenBy(one => one == best ? 0 : 1).ThenByDescending(Gain)
            .ThenBy(one => one.Stated.Setup).First();
    }

    private static bool IsBetterInAnything(TriedSetup one, TriedSetup first, FoundSetups found)
    {
        var (space, own, other) = (found.Task.Space, one.Stated.Setup, first.Stated.Setup);
        return space.Price(own) < space.Price(other) || space.Changed(own) < space.Changed(other)
            || (found.Task.Unsure(other) && !found.Task.Unsure(own)) || Driven(found).Any(k => one.HasLess(first, k, Untold));
    }

    private static IEnumerable<int> Driven(FoundSetups found) =>
        Enumerable.Range(0, found.Wishes.Length).Where(k => found.Wishes[k] is not (WishKind.Money or WishKind.Parts));

    private delegate ReadOnlySpan<double> WishesOf<in T>(T one);

    // Everyone in the order of each reason. The first wish is the headline; equal ones go by price, by parts, by number.
    private static SortedDictionary<ShortlistReason, T[]> Ranked<T>(
        IReadOnlyList<T> all, FoundSetups found, WishesOf<T> of, Func<T, long> number, Func<T, double> worst)
    {
        var wishes = found.Wishes;
        double Wish(T one, int k) => of(one)[k];
        var (money, parts) = (wishes.IndexOf(WishKind.Money), wishes.IndexOf(WishKind.Parts));
        double Price(T one) => money < 0 ? 0.0 : Wish(one, money);
        double Parts(T one) => parts < 0 ? 0.0 : Wish(one, parts);
        T[] By(Func<T, double> key)
        {
            // What nobody can tell from the least is as good: then whether it surely fits, price and parts decide.
            var least = all.Min(key) + Untold;
            return
            [
                .. all.OrderBy(one => Math.Max(key(one), least)).ThenBy(one => found.Task.Unsure(number(one))).ThenBy(Price).ThenBy(Parts).ThenBy(key)
                    .ThenBy(number),
            ];
        }

        var best = By(one => Wish(one, 0));
        var gain = 1.0 - Wish(best[0], 0);
        var ranked = new SortedDictionary<ShortlistReason, T[]> { [ShortlistReason.Best] = best };
        if (money >= 0 && gain > 0.0)
        {
            ranked[ShortlistReason.Cheapest] =
                [.. all.Where(one => 1.0 - Wish(one, 0) >= Kept * gain).OrderBy(Price).ThenBy(one => Wish(one, 0)).ThenBy(number)];
        }

        // A rung more must gain more.
        var rung = double.PositiveInfinity;
        foreach (var (reason, count) in new[] { (ShortlistReason.OnePart, 1.0), (ShortlistReason.TwoParts, 2.0), (ShortlistReason.ThreeParts, 3.0) })
        {
            if (parts >= 0 && best.Where(one => Parts(one) == count).ToArray() is [var first, ..] those && Wish(first, 0) < rung - Untold)
            {
                (ranked[reason], rung) = (those, Wish(first, 0));
            }
        }

        var ends = Enumerable.Range(0, wishes.Length)
            .Select(k => (Least: all.Min(one => Wish(one, k)), Most: all.Max(one => Wish(one, k)))).ToArray();
        ranked[ShortlistReason.Knee] = By(one => ends
            .Select((end, k) => end.Most > end.Least ? (Wish(one, k) - end.Least) / (end.Most - end.Least) : 0.0).Max());
        ranked[ShortlistReason.MostEven] = By(worst);
        foreach (var (reason, kind) in Kinds)
        {
            if (wishes.IndexOf(kind) is > 0 and var k)
            {
                ranked[reason] = By(one => Wish(one, k));
            }
        }

        return ranked;
    }
}
