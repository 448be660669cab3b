using System.Collections.Immutable;
using Heaveline.Numerics;

namespace Heaveline.Search;

/// <summary>Setups cut into pieces of work and done on several threads. The pieces are the same however many threads there are.</summary>
/// <param name="doer">Does a piece.</param>
/// <param name="degree">How many pieces at once.</param>
/// <param name="cancellation">Stops the work.</param>
internal sealed class PieceWork(IPassDoer doer, int degree, CancellationToken cancellation)
{
    // So many that passes of one step fill the lanes, and few enough that a stop is soon heard.
    private const int AtOnce = 32;

    /// <summary>The rows of setups in one car, in their order.</summary>
    /// <param name="stage">What is done.</param>
    /// <param name="setups">The setups.</param>
    /// <param name="draw">The drawn car.</param>
    /// <param name="done">Told how many setups are done, from several threads; null for nobody.</param>
    public SetupRow[] Of(PieceStage stage, IReadOnlyList<long> setups, int draw, Action<int>? done = null) =>
        Of(stage, setups, draw, 1, done)[0];

    /// <summary>The rows of setups in several drawn cars, car by car.</summary>
    /// <param name="stage">What is done.</param>
    /// <param name="setups">The setups.</param>
    /// <param name="first">The first drawn car.</param>
    /// <param name="draws">How many.</param>
    /// <param name="done">Told how many setups are done.</param>
    public SetupRow[][] Of(PieceStage stage, IReadOnlyList<long> setups, int first, int draws, Action<int>? done = null)
    {
        var each = (setups.Count + AtOnce - 1) / AtOnce;
        var rows = Enumerable.Range(0, draws).Select(_ => new SetupRow[setups.Count]).ToArray();
        var sofar = 0;
        ParallelLoop.Each(each * draws, Math.Max(1, degree), k =>
        {
            var (draw, from) = (k / each, k % each * AtOnce);
            ImmutableArray<long> own = [.. Enumerable.Range(from, Math.Min(AtOnce, setups.Count - from)).Select(i => setups[i])];
            var answer = doer.Do(new Piece(stage, own, first + draw), cancellation);
            for (var i = 0; i < own.Length; i++)
            {
                rows[draw][from + i] = answer[i];
            }

            done?.Invoke(Interlocked.Add(ref sofar, own.Length));
        }, cancellation);
        return rows;
    }
}
