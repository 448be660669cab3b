using System.Collections.Immutable;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Search;

/// <summary>
/// Looks for the setups that nothing beats. Few are driven one and all. Of many a sample is driven; a polynomial is fitted to it; every setup near
/// the
/// front that it guesses is driven, and the fit made anew, until nothing near is left; then some of those left out are driven to see what was missed.
/// </summary>
internal sealed class SetupSearch
{
    // The sample: enough for the fit.
    private const int LeastSample = 300;
    private const int PerTerm = 3;

    // Most setups driven in a round.
    private const int AtOnce = 3000;

    // How near the guessed front a setup is driven at first (–).
    private const double Margin = 0.01;

    // Left out setups that are looked at: at random, and from the next shell.
    private const int Audited = 300;
    private const double NextShell = 3.0;
    private const int MostAudits = 4;
    private const int MostTurns = 12;

    private SearchTask task;
    private readonly PieceWork work;
    private readonly DrivenSetups driven;
    private readonly List<SearchRound> rounds = [];
    private readonly List<long> missed = [];
    private readonly HashSet<long> turned = [];
    private double margin = Margin;
    private double half;
    private int leftNear;

    private SetupSearch(SearchTask task)
    {
        this.task = task;
        work = new PieceWork(task.Doer, task.PiecesAtOnce, task.Cancellation);
        driven = new DrivenSetups(task, work);
    }

    /// <summary>Searches.</summary>
    /// <param name="task">What is searched.</param>
    /// <exception cref="RefusedValueException">The car as it is does not get across everywhere.</exception>
    /// <exception cref="OperationCanceledException">Stopped before anything was found.</exception>
    public static FoundSetups Of(SearchTask task) => new SetupSearch(task).Found();

    private FoundSetups Found()
    {
        if (!driven.DrivePresent())
        {
            throw new RefusedValueException(
                "the car as it is", "not driven to the end in every use case", "driven to the end: everything is compared with it",
                "Leave out the road, speed or load at which it leaves the model's range ('heaveline pass' says which).");
        }

        if (!driven.Scores.Has(task.Wishes[0]))
        {
            var floor = task.Columns.Where(column => column.Kind == WishKind.Settling).Max(column => column.Floor);
            throw new RefusedValueException(
                "settling of the car as it is",
                FormattableString.Invariant($"below {In.Degrees.Of(floor):0.##}° (RMS pitch) in every use case, which nobody feels ")
                    + "(judged by eye, no source)",
                "felt in one at least",
                "There is nothing to cure here: leave it as it is, or name an obstacle, speeds and a load at which it goes on pitching.");
        }

        task = driven.Task;
        var (within, refused) = Standing();
        var isWhole = within.LongLength <= task.DrivenWhole / task.Cases;
        AuditResult? audit = null;
        var isStopped = false;
        try
        {
            if (isWhole)
            {
                driven.Drive(within, Told(within.Length, 0.0, 0.6));
                driven.Look(within, Told(within.Length, 0.6, 1.0));
            }
            else
            {
                audit = Searched(within);
            }
        }
        catch (OperationCanceledException) when (driven.All.Count > 1)
        {
            isStopped = true;
            driven.Finish();
        }

        var front = driven.Front();
        return new FoundSetups
        {
            Task = task,
            Scores = driven.Scores,
            Present = driven.Present,
            Wishes = driven.Wishes,
            Driven = [.. driven.All],
            Front = front,
            Near = driven.Near(front, margin),
            RefusedStanding = refused,
            Within = within.LongLength,
            IsWhole = isWhole,
            AreSilentChosen = !IsEveryOne && task.Space.LoudCount < task.Space.Count,
            Rounds = [.. rounds],
            LeftNear = leftNear,
            Audit = audit,
            IsStopped = isStopped,
        };
    }

    // Whether setups alike but for silent places are driven each.
    private bool IsEveryOne => task.Space.Count <= task.DrivenWhole / task.Cases;

    // Of setups alike but for silent places the cheapest that stands is taken.
    private (long[] Within, ImmutableSortedDictionary<int, long> Refused) Standing()
    {
        var refused = new SortedDictionary<int, long>();
        var within = new List<long>();
        var isEvery = IsEveryOne;
        foreach (var loud in isEvery ? Every() : task.Space.Loud())
        {
            var (taken, first) = (false, SetupRow.None);
            foreach (var setup in isEvery ? [loud] : task.Space.Alike(loud))
            {
                var reason = setup == 0L ? SetupRow.None : task.Standing(setup);
                if (reason == SetupRow.None)
                {
                    within.Add(setup);
                    taken = true;
                    break;
                }

                first = first == SetupRow.None ? reason : first;
            }

            // Setups alike but for silent places count once, as they are driven once: by what is against the cheapest of them.
            if (!taken)
            {
                refused[first] = refused.GetValueOrDefault(first) + 1L;
            }
        }

        task.Cancellation.ThrowIfCancellationRequested();
        return ([.. within], refused.ToImmutableSortedDictionary());

        IEnumerable<long> Every()
        {
            for (var setup = 0L; setup < task.Space.Count; setup++)
            {
                yield return setup;
            }
        }
    }

    private AuditResult Searched(long[] within)
    {
        var guess = new SetupGuess(task, within);
        var sample = Sample(within, Math.Max(LeastSample, PerTerm * guess.Terms));
        driven.Drive(sample, Told(sample.Length, 0.1, 0.3));
        var found = 0;
        for (var audits = 0; ; audits++)
        {
            var guessed = Rounds(within, guess);
            var result = Audit(within, guessed) with { FoundBefore = found };
            if (result.Missed == 0 || audits == MostAudits)
            {
                return result;
            }

            found += result.Missed;
            margin *= 2.0;
            AroundMissed(within);
        }
    }

    // What the guess knows nothing of it will not find: from those that were missed one place after the other is changed, as long as that gains.
    private void AroundMissed(long[] within)
    {
        HashSet<long> may = [.. within], around = [];
        for (var turn = 0; turn < MostTurns; turn++)
        {
            long[] from = [.. missed.Concat(driven.Front().Select(one => one.Setup).Where(around.Contains)).Where(setup => !turned.Contains(setup))];
            if (from.Length == 0)
            {
                return;
            }

            turned.UnionWith(from);
            long[] beside = [.. from.SelectMany(Beside).Where(may.Contains)];
            around.UnionWith(beside);
            driven.Drive(beside);
        }
    }

    private IEnumerable<long> Beside(long setup)
    {
        for (var place = 0; place < task.Space.Places.Length; place++)
        {
            for (var option = 0; option < task.Space.Places[place].Options.Length; option++)
            {
                yield return task.Space.With(setup, place, option);
            }
        }
    }

    private long[] Sample(IReadOnlyList<long> from, int count, ulong turn = 0) =>
        [.. from.OrderBy(setup => SplitMix.At(SplitMix.At(task.Seed, turn), (ulong)setup)).Take(count)];

    // Drives what is near the guessed front until nothing is left; hands back the last guess.
    private double[] Rounds(long[] within, SetupGuess guess)
    {
        for (var round = 0; ; round++)
        {
            var values = guess.Of(driven, out var fitted);
            var count = driven.Wishes.Length;
            // Those on the front of what was driven are looked at, so that nobody who falls through hides others.
            driven.Front();
            Refresh(within, values, count);
            int[] standing = [.. Enumerable.Range(0, within.Length).Where(i => !double.IsNaN(values[i * count]))];
            var front = SetupFront.Of(values, count, standing);
            var near = Math.Max(margin, half);
            var inside = SetupShell.Of(values, count, driven.Known, front, near, task.Degree, task.Cancellation);
            int[] open = [.. standing.Where(i => inside[i] && driven.Of(within[i]) is null)];
            leftNear = open.Length;
            if (open.Length == 0 || round == task.MostRounds)
            {
                return values;
            }

            int[] first = [.. front.Where(i => driven.Of(within[i]) is null)];
            int[] fresh = open.Length <= AtOnce
                ? open
                : [.. first.Concat(open.OrderBy(i => SplitMix.At(task.Seed, (ulong)within[i]))).Distinct().Take(AtOnce)];
            driven.Drive(fresh.Select(i => within[i]));
            var off = Off(within, values, fresh);
            half = 0.5 * off;
            rounds.Add(new SearchRound(fitted, near, fresh.Length, off));
            task.Progress?.Report(0.3 + (0.6 * (1.0 - (1.0 / (round + 2.0)))));
        }
    }

    private void Refresh(long[] within, double[] values, int count)
    {
        for (var i = 0; i < within.Length; i++)
        {
            if (driven.Of(within[i]) is { IsAllowed: false })
            {
                values[i * count] = double.NaN;
            }
        }
    }

    // What the guess was off by at setups driven since, root mean square over the wishes.
    private double Off(long[] within, double[] guessed, int[] at)
    {
        var (sum, n, count) = (0.0, 0, driven.Wishes.Length);
        foreach (var i in at)
        {
            var one = driven.Of(within[i])!;
            for (var k = 0; k < driven.Known && one.Row.IsDriven; k++)
            {
                // The first guess is struck out where the setup was looked at and refused meanwhile.
                var ratio = Math.Log(guessed[(i * count) + k] / one.Wishes[k]);
                if (double.IsFinite(ratio))
                {
                    sum += ratio * ratio;
                    n++;
                }
            }
        }

        return n == 0 ? 0.0 : Math.Sqrt(sum / n);
    }

    private AuditResult Audit(long[] within, double[] values)
    {
        var count = driven.Wishes.Length;
        var front = driven.Front();
        long[] left = [.. within.Where(setup => driven.Of(setup) is null)];
        var turn = (ulong)rounds.Count + 1UL;
        var random = Sample(left, Audited, turn);
        var places = within.Index().ToDictionary(one => one.Item, one => one.Index);
        int[] frontPlaces = [.. front.Select(one => places.GetValueOrDefault(one.Setup, -1)).Where(at => at >= 0)];
        var inside = SetupShell.Of(values, count, driven.Known, frontPlaces, NextShell * Math.Max(margin, half), task.Degree, task.Cancellation);
        var nearest = Sample([.. left.Where(setup => inside[places[setup]])], Audited, turn + 1000UL).Except(random).ToArray();
        driven.Drive([.. random, .. nearest], Told(random.Length + nearest.Length, 0.9, 1.0));
        HashSet<long> now = [.. driven.Front().Select(one => one.Setup)];
        missed.Clear();
        missed.AddRange(random.Concat(nearest).Where(now.Contains));
        return new AuditResult(random.Length, nearest.Length, missed.Count, 0);
    }

    private Action<int>? Told(int of, double from, double to) =>
        task.Progress is { } progress ? done => progress.Report(from + ((to - from) * done / Math.Max(1, of))) : null;
}
