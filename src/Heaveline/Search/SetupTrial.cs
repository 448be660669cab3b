using System.Collections.Immutable;

namespace Heaveline.Search;

/// <summary>Setups driven in the same drawn cars, dropped as soon as the draws are sure that they are none to tell.</summary>
internal sealed class SetupTrial
{
    /// <summary>In what share of the drawn cars a setup must do nothing that no setup may do (–).</summary>
    public const double CleanShare = 0.9;

    // Draws before the first look; then twice as many each time.
    private const int First = 8;

    // Worse by so many standard errors of the difference is surely worse.
    private const double SurelyWorse = 3.0;

    private SetupTrial(
        FoundSetups found, IReadOnlyList<TriedSetup> tried, IReadOnlyList<int> numbers, int undriven) =>
        (Found, Tried, Numbers, Undriven) = (found, [.. tried], [.. numbers], undriven);

    /// <summary>What was searched.</summary>
    public FoundSetups Found { get; }

    /// <summary>The setups in the order in which they were given, after the car as it is.</summary>
    public ImmutableArray<TriedSetup> Tried { get; }

    /// <summary>The numbers of the draws that count.</summary>
    public ImmutableArray<int> Numbers { get; }

    /// <summary>
    /// Drawn cars in which the car as it is does not get across: nothing is compared with it there, and only limits that stand alone are asked.
    /// </summary>
    public int Undriven { get; }

    /// <summary>How many drawn cars count.</summary>
    public int Draws => Tried[0].Draws;

    /// <summary>The same with other numbers of its setups.</summary>
    /// <param name="other">Given each, what it becomes.</param>
    public SetupTrial With(Func<TriedSetup, TriedSetup> other) => new(Found, [.. Tried.Select(other)], Numbers, Undriven);

    /// <summary>Drives setups in drawn cars.</summary>
    /// <param name="found">What was searched.</param>
    /// <param name="setups">The setups; the car as it is need not be among them.</param>
    /// <param name="draws">How many cars are drawn; 0 for none.</param>
    /// <param name="progress">Told the share done.</param>
    public static SetupTrial Of(FoundSetups found, IReadOnlyList<DrivenSetup> setups, int draws, IProgress<double>? progress)
    {
        var task = found.Task;
        var work = new PieceWork(task.Doer, task.PiecesAtOnce, task.Cancellation);
        DrivenSetup[] all = [found.AsItIs, .. setups.Where(one => one.Setup != 0L).DistinctBy(one => one.Setup)];
        var rows = all.Select(_ => new List<SetupRow>()).ToArray();
        // Of draws in which the car as it is does not get across.
        var aside = all.Select(_ => new List<SetupRow>()).ToArray();
        var (present, numbers) = (new List<SetupRow>(), new List<int>());
        var dropped = new bool[all.Length];
        var (done, undriven) = (0, 0);
        for (var until = Math.Min(First, draws); done < draws; until = Math.Min(2 * until, draws))
        {
            int[] alive = [.. Enumerable.Range(0, all.Length).Where(i => !dropped[i])];
            var answers = work.Of(PieceStage.Drive, [.. alive.Select(i => all[i].Setup)], done, until - done);
            foreach (var (number, draw) in answers.Index())
            {
                if (!draw[0].IsDriven)
                {
                    undriven++;
                    for (var k = 0; k < alive.Length; k++)
                    {
                        aside[alive[k]].Add(draw[k]);
                    }

                    continue;
                }

                present.Add(draw[0]);
                numbers.Add(done + number);
                for (var k = 0; k < alive.Length; k++)
                {
                    rows[alive[k]].Add(draw[k]);
                }
            }

            done = until;
            progress?.Report(done / (double)draws);
            if (done < draws)
            {
                Drop();
            }
        }

        return new SetupTrial(found, [.. all.Select((_, i) => Summed(i))], numbers, undriven);

        TriedSetup Summed(int i)
        {
            SetupRow[] own = [.. rows[i]];
            var known = found.Wishes.Where(w => w is not (WishKind.Money or WishKind.Parts));
            return new TriedSetup
            {
                Stated = all[i],
                Rows = [.. own],
                Wishes =
                [
                    .. known.Select(w => own.Select((row, d) => row.IsDriven ? found.Scores.Of(w, row, present[d]) : double.NaN).ToImmutableArray()),
                ],
                Held =
                [
                    .. task.Limits.Select(limit => own.Index().Count(one => one.Item.IsDriven && limit.Holds(one.Item, present[one.Index]))
                        + (limit.IsAlone ? aside[i].Count(row => row.IsDriven && limit.Holds(row, row)) : 0)),
                ],
                Asked = [.. task.Limits.Select(limit => own.Length + (limit.IsAlone ? aside[i].Count : 0))],
                Clean = own.Count(row => row.Refusal == SetupRow.None),
                IsDropped = dropped[i],
            };
        }

        // One after the other, the surely broken first, so that none of them throws out a sound one.
        void Drop()
        {
            TriedSetup[] now = [.. all.Select((_, i) => Summed(i))];
            for (var i = 1; i < all.Length; i++)
            {
                dropped[i] |= now[i].IsSurelyUnclean(CleanShare)
                    || task.Limits.Index().Any(limit => now[i].SurelyBreaks(limit.Index, limit.Item.Share));
            }

            int[] sound = [.. Enumerable.Range(1, all.Length - 1).Where(i => !dropped[i])];
            foreach (var i in sound)
            {
                dropped[i] = sound.Any(j => j != i && IsSurelyBetter(now[j], now[i]));
            }
        }

        bool IsSurelyBetter(TriedSetup one, TriedSetup other)
        {
            for (var k = 0; k < found.Wishes.Length; k++)
            {
                if (k >= one.Wishes.Length)
                {
                    if (one.Stated.Wishes[k] > other.Stated.Wishes[k])
                    {
                        return false;
                    }

                    continue;
                }

                var (mean, deviation, n) = other.Less(one, k);
                if (n < First || !(mean > SurelyWorse * deviation / Math.Sqrt(n)) || !(mean > 0.0))
                {
                    return false;
                }
            }

            return true;
        }
    }
}
