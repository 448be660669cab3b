using Heaveline.Numerics;

namespace Heaveline.Search;

/// <summary>Guesses at the wishes of every setup from those that were driven, and at who will be refused on the road.</summary>
/// <param name="task">What is searched.</param>
/// <param name="setups">The setups that may be driven.</param>
internal sealed class SetupGuess(SearchTask task, long[] setups)
{
    // A guess of who is refused is believed from so many times on what it is usually off by.
    private const double Sure = 2.0;

    // Past so many a fit gains nothing by more.
    private const int MostRows = 6000;

    private const int AtOnce = 2048;

    private readonly SetupTerms terms = new(task.Space);

    /// <summary>How many terms a guess has.</summary>
    public int Terms => terms.Count;

    /// <summary>The wishes of every setup: as driven, or guessed; NaN for one that is refused, or sure to be.</summary>
    /// <param name="driven">The setups driven so far.</param>
    /// <param name="fitted">To how many setups the guess was fitted.</param>
    public double[] Of(DrivenSetups driven, out int fitted)
    {
        var (count, known) = (driven.Wishes.Length, driven.Known);
        int[] places = [.. Enumerable.Range(0, setups.Length).Where(i => driven.Of(setups[i]) is { Row.IsDriven: true })];
        // Of many the evenly chosen ones; a place in the order of the numbers is a place in the space.
        int[] rows = places.Length <= MostRows
            ? places
            : [.. Enumerable.Range(0, MostRows).Select(k => places[(int)((long)k * places.Length / MostRows)])];
        fitted = rows.Length;
        double[][] design = [.. rows.Select(i => Row(i))];
        DrivenSetup[] at = [.. rows.Select(i => driven.Of(setups[i])!)];
        var wishes = Surrogate.Of(design, [.. Enumerable.Range(0, known).Select(k => at.Select(one => one.Wishes[k]).ToArray())]);
        // What is refused for is guessed as it is, no logarithm: it goes through nought.
        double[][] excesses =
        [
            .. task.Limits.Select(limit => at.Select(one => limit.Excess(one.Row, driven.Present)).ToArray())
                .Concat(Enumerable.Range(0, at.Min(one => one.Row.Excesses.Length)).Select(k => at.Select(one => one.Row.Excesses[k]).ToArray()))
                .Where(e => e.Any(x => x > 0.0) && e.All(double.IsFinite)),
        ];
        var refused = Surrogate.Of(design, [.. excesses.Select(e => e.Select(Math.Exp).ToArray())]);
        var values = new double[setups.Length * count];
        ParallelLoop.Each((setups.Length + AtOnce - 1) / AtOnce, task.Degree, group =>
        {
            var row = new double[terms.Count];
            for (var i = group * AtOnce; i < Math.Min((group + 1) * AtOnce, setups.Length); i++)
            {
                var own = values.AsSpan(i * count, count);
                if (driven.Of(setups[i]) is { } one)
                {
                    one.Wishes.AsSpan().CopyTo(own);
                    own[0] = one.IsAllowed ? own[0] : double.NaN;
                    continue;
                }

                Write(i, row);
                for (var k = 0; k < count; k++)
                {
                    own[k] = driven.Wishes[k] switch
                    {
                        WishKind.Money => task.Space.Price(setups[i]),
                        WishKind.Parts => task.Space.Changed(setups[i]),
                        _ => wishes[k].Of(row),
                    };
                }

                foreach (var limit in refused)
                {
                    own[0] = Math.Log(limit.Of(row)) > Sure * limit.Residual ? double.NaN : own[0];
                }
            }
        }, task.Cancellation);
        return values;
    }

    private double[] Row(int i)
    {
        var row = new double[terms.Count];
        Write(i, row);
        return row;
    }

    private void Write(int i, Span<double> row) => terms.Write(setups[i], row);
}
