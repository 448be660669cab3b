using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Pieces;
using Heaveline.Roads;

namespace Heaveline.Doubts;

/// <summary>Cars drawn together over a road at a speed, group by group.</summary>
/// <param name="doubts">The doubts.</param>
/// <param name="road">The road.</param>
/// <param name="speed">Speed, m/s.</param>
/// <param name="outputs">What to follow.</param>
/// <param name="seed">Seed.</param>
/// <param name="options">How to run the passes.</param>
internal sealed class DrawnPasses(
    JointDoubts doubts, Road road, double speed, IReadOnlyList<Measure<Pass>> outputs, ulong seed, PassOptions options) : IPieceDoer
{
    /// <summary>What comes of some draws.</summary>
    /// <param name="first">The first one.</param>
    /// <param name="count">How many.</param>
    /// <param name="cancellation">Stops the work.</param>
    public DrawnGroup Of(int first, int count, CancellationToken cancellation)
    {
        JointDraw[] draws = [.. Enumerable.Range(first, count).Select(i => JointDraw.Of(doubts, seed, i))];
        var cars = doubts.Cars.Count;
        PassRequest[] requests =
            [.. Enumerable.Range(0, cars).SelectMany(car => draws.Select(draw => new PassRequest(draw.Models[car], road, speed)))];
        var rows = BatchedMeasures.Of(requests, outputs, options, 1, cancellation);
        return new DrawnGroup(
            [.. draws.Select(draw => draw.Errors)],
            [.. draws.Select(draw => draw.Refused)],
            [.. rows.Select(row => row.All(double.IsNaN) ? [] : row).Chunk(count)]);
    }

    /// <inheritdoc/>
    public byte[] Do(byte[] piece, CancellationToken cancellation)
    {
        var (first, count) = DrawnGroup.Of(piece);
        return Of(first, count, cancellation).ToBytes();
    }
}
