using Heaveline.Quantities;

namespace Heaveline.Drives;

/// <summary>Finds when the phone was moved in its place: gravity turns along its axes, at once and for good.</summary>
internal static class PhoneMoves
{
    // A phone that slips less than this is not told from the car's own leaning.
    private static readonly double Least = 2.0 / In.Degrees.Factor;
    private const int Window = 30;
    private const int Guard = 2;
    private const int Most = 12;

    // A phone slips at once: so much of the turn comes within this time, s. A road's slope comes over seconds.
    private const double Sudden = 0.6;
    private const double SuddenShare = 0.8;

    // What gyro and gravity may differ by, as a share of the turn.
    private const double Agreeing = 0.4;

    // Blocks of a second hang together for about as long as one braking lasts: so many of them count as one.
    private const double Together = 5.0;

    /// <summary>The instants, s since the log's start, rising.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="force">Specific force, three columns, m/s².</param>
    /// <param name="turns">Turn rate, three columns, rad/s; null without a gyro.</param>
    /// <param name="driven">What braking and turning account for between two samples, m/s²; null where that is not known.</param>
    /// <param name="ramp">Tells a road's ramp; null where the speed is not known.</param>
    /// <param name="isHandTurned">Whether the gyro counts turns the other way round.</param>
    public static IReadOnlyList<double> Of(
        EvenGrid grid, double[][] force, double[][]? turns, Func<int, int, Direction>? driven, RoadRamp? ramp = null,
        bool isHandTurned = false)
    {
        var blocks = Blocks(grid, force, turns, driven, isHandTurned ? -1.0 : 1.0);
        var moves = new List<double>();
        Search(blocks, 0, blocks.Count, turns is not null, ramp, moves);
        moves.Sort();
        return moves;
    }

    private static List<Block> Blocks(EvenGrid grid, double[][] force, double[][]? turns, Func<int, int, Direction>? driven, double hand)
    {
        var size = Math.Max(1, (int)Math.Round(grid.Rate));
        var bias = turns is null ? default : Bias(grid, turns);
        var angle = default(Direction);
        var angles = turns is null ? [] : new Direction[grid.Count];
        var blocks = new List<Block>();
        foreach (var (first, last) in grid.Covered)
        {
            for (var from = first; from + size - 1 <= last; from += size)
            {
                var sum = default(Direction);
                var turned = default(Direction);
                for (var i = from; i < from + size; i++)
                {
                    sum += Levelling.At(force, i);
                    if (turns is not null)
                    {
                        angle += (Levelling.At(turns, i) - bias) * (hand / grid.Rate);
                        turned += angle;
                        angles[i] = angle;
                    }
                }

                var other = driven is null ? default : driven(from, from + size - 1) * size;
                blocks.Add(new Block(grid.Time(from), (sum - other).Unit, turned * (1.0 / size), angles, from, size));
            }
        }

        return blocks;
    }

    private static Direction Bias(EvenGrid grid, double[][] turns)
    {
        var (sum, count) = (default(Direction), 0);
        foreach (var (first, last) in grid.Covered)
        {
            for (var i = first; i <= last; i++)
            {
                sum += Levelling.At(turns, i);
                count++;
            }
        }

        return sum * (1.0 / Math.Max(count, 1));
    }

    // The clearest place first, then both sides of it.
    private static void Search(List<Block> blocks, int from, int to, bool hasGyro, RoadRamp? ramp, List<double> moves)
    {
        var (best, at, instant) = (1.0, -1, 0.0);
        for (var k = from + (Window / 2); k <= to - (Window / 2); k++)
        {
            var ratio = Ratio(blocks, Math.Max(from, k - Window), k, Math.Min(to, k + Window), hasGyro, best, ramp, out var when);
            if (ratio > best)
            {
                (best, at, instant) = (ratio, k, when);
            }
        }

        if (at < 0 || moves.Count >= Most)
        {
            return;
        }

        moves.Add(instant);
        Search(blocks, from, at, hasGyro, ramp, moves);
        Search(blocks, at, to, hasGyro, ramp, moves);
    }

    // How clear a place is; when it was, s, by the gyro where there is one.
    private static double Ratio(
        List<Block> blocks, int from, int at, int to, bool hasGyro, double best, RoadRamp? ramp, out double instant)
    {
        instant = blocks[at].Start;
        var (before, after) = (Mean(blocks, from, at - Guard), Mean(blocks, at + Guard, to));
        var angle = before.AngleTo(after);
        if (angle / Least <= best)
        {
            // However little it scatters, it is no clearer.
            return 0.0;
        }

        var (scatterBefore, scatterAfter) = (Scatter(blocks, from, at - Guard, before), Scatter(blocks, at + Guard, to, after));
        var doubt = Math.Sqrt(
            (scatterBefore * Together / (at - Guard - from)) + (scatterAfter * Together / (to - at - Guard)));
        var ratio = angle / Math.Max(Least, 3.0 * doubt);
        if (hasGyro && ratio > best)
        {
            // The gyro must have felt the same: along the phone's axes up turns against the phone.
            var turned = blocks[Math.Min(at + Guard, blocks.Count - 1)].Turned - blocks[Math.Max(at - Guard, 0)].Turned;
            var felt = before.Cross(turned);
            var (most, middle) = blocks[at].Sudden(before, felt.Unit);
            if ((felt - (after - before)).Length > Agreeing * angle || most < SuddenShare * felt.Length
                || ramp?.Is(before, after, middle) == true)
            {
                return 0.0;
            }

            instant += (middle - blocks[at].First) / (double)blocks[at].Size;
        }

        return ratio;
    }

    private static Direction Mean(List<Block> blocks, int from, int to)
    {
        var sum = default(Direction);
        for (var k = from; k < to; k++)
        {
            sum += blocks[k].Along;
        }

        return sum.Unit;
    }

    private static double Scatter(List<Block> blocks, int from, int to, Direction mean)
    {
        var square = 0.0;
        for (var k = from; k < to; k++)
        {
            var off = mean.AngleTo(blocks[k].Along);
            square += off * off;
        }

        return square / Math.Max(to - from, 1);
    }

    private sealed record Block(double Start, Direction Along, Direction Turned, Direction[] Angles, int First, int Size)
    {
        // The greatest turn of up within a moment, by the gyro, towards a direction, rad, and the sample in its middle.
        public (double Most, int Middle) Sudden(Direction up, Direction towards)
        {
            var moment = Math.Max(1, (int)Math.Round(PhoneMoves.Sudden * Size));
            var (most, middle) = (0.0, First);
            for (var i = Math.Max(First - (Guard * Size), 0); i <= Math.Min(First + (Guard * Size), Angles.Length - 1 - moment); i++)
            {
                var turn = up.Cross(Angles[i + moment] - Angles[i]).Dot(towards);
                (most, middle) = turn > most ? (turn, i + (moment / 2)) : (most, middle);
            }

            return (most, middle);
        }
    }
}
