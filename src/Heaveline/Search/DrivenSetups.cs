using System.Collections.Immutable;

namespace Heaveline.Search;

/// <summary>The setups driven so far, and which of them may be chosen.</summary>
/// <param name="task">What is searched.</param>
/// <param name="work">Does the driving.</param>
internal sealed class DrivenSetups(SearchTask task, PieceWork work)
{
    // What was driven before a stop is kept so many at a time; more where many pieces are asked for at once, so that few machines wait for the last.
    private const int Fewest = 1024;
    private const int PerPiece = 128;

    private readonly Dictionary<long, DrivenSetup> all = [];
    private readonly HashSet<long> looked = [];
    private PieceWork own = work;
    private UseScores? scores;

    /// <summary>What is searched, without limits on what does not count once the car as it is has been driven.</summary>
    public SearchTask Task { get; private set; } = task;

    /// <summary>The row of the car as it is.</summary>
    public SetupRow Present { get; private set; } = new(SetupRow.None, []);

    /// <summary>What the numbers count against.</summary>
    public UseScores Scores => scores ?? throw new InvalidOperationException("The car as it is has not been driven yet.");

    /// <summary>The wishes that anything counts for.</summary>
    public ImmutableArray<WishKind> Wishes { get; private set; } = [];

    /// <summary>How many of them are driven for.</summary>
    public int Known => Wishes.Count(w => w is not (WishKind.Money or WishKind.Parts));

    /// <summary>All of them, in the order of their numbers.</summary>
    public IReadOnlyList<DrivenSetup> All => [.. all.Values.OrderBy(one => one.Setup)];

    /// <summary>A setup that was driven; null where it was not.</summary>
    public DrivenSetup? Of(long setup) => all.GetValueOrDefault(setup);

    /// <summary>Those of a search that has ended, for further ones beside them.</summary>
    /// <param name="found">What was found.</param>
    /// <param name="work">Does the driving.</param>
    public static DrivenSetups After(FoundSetups found, PieceWork work)
    {
        var driven = new DrivenSetups(found.Task, work) { Present = found.Present, scores = found.Scores, Wishes = found.Wishes };
        foreach (var one in found.Driven)
        {
            driven.all[one.Setup] = one;
        }

        driven.looked.Add(0L);
        return driven;
    }

    /// <summary>Drives the car as it is.</summary>
    /// <returns>Whether it gets across everywhere.</returns>
    public bool DrivePresent()
    {
        Present = own.Of(PieceStage.Drive, [0L], Piece.AsStated)[0];
        if (!Present.IsDriven)
        {
            return false;
        }

        scores = new UseScores(Task.Columns, Present);
        Wishes = [.. Task.Wishes.Where(w => w is WishKind.Money or WishKind.Parts || Scores.Has(w))];
        Task = Task with { Limits = [.. Task.Limits.Where(limit => Scores.Has(limit.Wish))] };
        Keep(0L, Present);
        looked.Add(0L);
        return true;
    }

    /// <summary>Drives those of some setups that were not driven yet.</summary>
    public void Drive(IEnumerable<long> setups, Action<int>? done = null)
    {
        var before = 0;
        // What was driven before a stop is kept.
        var atOnce = Math.Max(Fewest, PerPiece * Task.PiecesAtOnce);
        foreach (var fresh in setups.Where(s => !all.ContainsKey(s)).Distinct().Order().ToArray().Chunk(atOnce))
        {
            var rows = own.Of(PieceStage.Drive, fresh, Piece.AsStated, done is null ? null : n => done(before + n));
            for (var i = 0; i < fresh.Length; i++)
            {
                Keep(fresh[i], rows[i]);
            }

            before += fresh.Length;
        }
    }

    /// <summary>From now on a stop is no longer heard: what is left to do is little, and without it nothing could be told.</summary>
    public void Finish() => own = new PieceWork(Task.Doer, Task.PiecesAtOnce, CancellationToken.None);

    /// <summary>
    /// Looks at allowed setups standing and under further loads; those against whom something is found there are no longer allowed.
    /// </summary>
    public void Look(IEnumerable<long> setups, Action<int>? done = null)
    {
        long[] fresh = [.. setups.Where(s => all[s].IsAllowed && !looked.Contains(s)).Distinct().Order()];
        var rows = own.Of(PieceStage.Look, fresh, Piece.AsStated, done);
        for (var i = 0; i < fresh.Length; i++)
        {
            looked.Add(fresh[i]);
            if (rows[i].Refusal != SetupRow.None)
            {
                all[fresh[i]] = all[fresh[i]] with { Refusal = rows[i].Refusal };
            }
        }
    }

    /// <summary>The front of the allowed ones. Those on it are looked at first, until nothing is against any of them.</summary>
    public ImmutableArray<DrivenSetup> Front()
    {
        while (true)
        {
            DrivenSetup[] allowed = [.. All.Where(one => one.IsAllowed)];
            ImmutableArray<DrivenSetup> front = [.. SetupFront.Of(Flat(allowed), Wishes.Length).Select(at => allowed[at])];
            if (front.All(one => looked.Contains(one.Setup)))
            {
                return front;
            }

            Look(front.Select(one => one.Setup));
        }
    }

    /// <summary>The allowed ones near a front.</summary>
    public ImmutableArray<DrivenSetup> Near(ImmutableArray<DrivenSetup> front, double margin)
    {
        DrivenSetup[] allowed = [.. All.Where(one => one.IsAllowed)];
        var places = allowed.Index().ToDictionary(one => one.Item.Setup, one => one.Index);
        var inside = SetupShell.Of(
            Flat(allowed), Wishes.Length, Known, [.. front.Select(one => places[one.Setup])], margin, Task.Degree, CancellationToken.None);
        return [.. allowed.Where((_, k) => inside[k])];
    }

    private double[] Flat(DrivenSetup[] setups) => [.. setups.SelectMany(one => one.Wishes)];

    private void Keep(long setup, SetupRow row)
    {
        var wishes = Wishes.Select(wish => wish switch
        {
            WishKind.Money => Task.Space.Price(setup),
            WishKind.Parts => Task.Space.Changed(setup),
            _ => row.IsDriven ? Scores.Of(wish, row, Present) : double.NaN,
        });
        all[setup] = new DrivenSetup(setup, row, [.. wishes], Reason(setup, row));
    }

    // Standing first, then what it does on the road, then the limits: whatever is looked at later says the least.
    private int Reason(long setup, SetupRow row)
    {
        if (setup != 0L && Task.Standing(setup) is not SetupRow.None and var standing)
        {
            return standing;
        }

        if (row.Refusal != SetupRow.None)
        {
            return row.Refusal;
        }

        for (var k = 0; k < Task.Limits.Length; k++)
        {
            if (!Task.Limits[k].Holds(row, Present))
            {
                return DrivenSetup.FirstLimit + k;
            }
        }

        return SetupRow.None;
    }
}
