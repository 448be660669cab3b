using System.Numerics;
using Heaveline.Numerics;

namespace Heaveline.Drives;

/// <summary>
/// Forward found from braking and turning together: the slow horizontal acceleration h, as a complex number, is e^(ia)·(p·dv/dt + i·q·v·ψ̇) with p
/// and q not negative; a is the angle of forward.
/// </summary>
/// <remarks>
/// For a given angle the real and the imaginary part are two fits of one term each, so p and q are closed forms, and what they
/// explain is a quadratic form of (cos a, sin a): the angle is that form's eigenvector. The half-width is that of angles found from
/// blocks of the drive drawn with replacement.
/// </remarks>
internal sealed record ForwardFit
{
    /// <summary>The least drive that a forward is looked for in, s.</summary>
    public const double Shortest = 30.0;

    private const double Low = 0.03;
    private const double High = 0.35;
    private const double Sparse = 0.5;
    private const double MostLag = 2.0;
    private const double LagStep = 0.1;
    private const int Blocks = 16;
    private const int Draws = 200;
    private const double Ninety = 1.645;

    /// <summary>Angle of forward from the first horizontal axis, rad.</summary>
    public required double Angle { get; init; }

    /// <summary>Half-width of the angle's 90 % interval, rad.</summary>
    public required double HalfWidth { get; init; }

    /// <summary>By how much the speed comes late, s.</summary>
    public required double Lag { get; init; }

    /// <summary>Share of the slow horizontal acceleration that is explained.</summary>
    public required double Explained { get; init; }

    /// <summary>p: what braking counts for, 1 where speed and acceleration have their right units.</summary>
    public required double Braking { get; init; }

    /// <summary>q: what turning counts for, 1 where the turn rate has its right unit too.</summary>
    public required double Turning { get; init; }

    /// <summary>The same fit with the gyro's turning reversed; null in that fit itself.</summary>
    public ForwardFit? OtherHand { get; init; }

    /// <summary>Whether the lag was found inside the range that was searched.</summary>
    public bool IsLagFound => IsLagSaid || Math.Abs(Lag) < MostLag - (0.5 * LagStep);

    /// <summary>The drive's one turn of forward against the phone that is surest, if any is; null in the fit of the other hand.</summary>
    public ForwardTurn? Turn { get; init; }

    private bool IsLagSaid { get; init; }

    /// <summary>Fits the drive; null where it is too short.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="first">Acceleration along the first horizontal axis, m/s².</param>
    /// <param name="second">Along the second, to the left of the first.</param>
    /// <param name="yaw">Turn rate about up, rad/s.</param>
    /// <param name="speed">The speed.</param>
    /// <param name="stop">Stops it.</param>
    /// <param name="lag">By how much the speed comes late, s; null: what explains most is taken.</param>
    public static ForwardFit? Of(
        EvenGrid grid, double[] first, double[] second, double[] yaw, TimedTrack speed, CancellationToken stop, double? lag = null)
    {
        var every = Math.Max(1, (int)Math.Round(grid.Rate / 10.0));
        var rate = grid.Rate / every;
        var parts = new List<Part>();
        foreach (var (from, to) in grid.Covered)
        {
            var (least, most) = (speed.Times[0] + MostLag, speed.Times[^1] - MostLag);
            var a = Math.Max(from, (int)Math.Ceiling((least - grid.Start) * grid.Rate));
            var b = Math.Min(to, (int)Math.Floor((most - grid.Start) * grid.Rate));
            if (b - a > 10.0 * grid.Rate)
            {
                double[] Slow(double[] x) => Thinned(ZeroPhase.Low(x.AsSpan(a, b - a + 1), grid.Rate, 2.0), every);
                var (h1, h2) = (ZeroPhase.Band(Slow(first), rate, Low, High), ZeroPhase.Band(Slow(second), rate, Low, High));
                parts.Add(new Part(grid.Time(a), [.. h1.Zip(h2, (x, y) => new Complex(x, y))], Slow(yaw)));
            }
        }

        if (parts.Sum(p => p.Along.Length) / rate < Shortest)
        {
            return null;
        }

        ForwardFit? best = null;
        ForwardFit? turned = null;
        var steps = lag is null ? (int)Math.Round(MostLag / LagStep) : 0;
        Sums[] blocks = [];
        Sums[] turnedBlocks = [];
        foreach (var k in LagsOf(steps, () => (best!.Lag, turned!.Lag)))
        {
            stop.ThrowIfCancellationRequested();
            var late = lag ?? k * LagStep;
            var here = Gathered(parts, rate, speed, late);
            var fit = Solved(Total(here)) with { Lag = late, IsLagSaid = lag is not null };
            if (best is null || fit.Explained > best.Explained)
            {
                (best, blocks) = (fit, here);
            }

            // A gyro of the other hand gives the same sums, turning of the other sign.
            Sums[] other = [.. here.Select(s => s with { Turned = -s.Turned })];
            fit = Solved(Total(other)) with { Lag = late, IsLagSaid = lag is not null };
            if (turned is null || fit.Explained > turned.Explained)
            {
                (turned, turnedBlocks) = (fit, other);
            }
        }

        return best! with
        {
            HalfWidth = Ninety * Spread(blocks, best.Angle),
            Turn = TurnOf(blocks, parts, rate),
            OtherHand = turned! with { HalfWidth = Ninety * Spread(turnedBlocks, turned.Angle), Turn = TurnOf(turnedBlocks, parts, rate) },
        };
    }

    // A phone that slides round on the floor without tipping turns forward against it, and nothing else: the drive is fitted in two.
    private static ForwardTurn? TurnOf(Sums[] blocks, List<Part> parts, double rate)
    {
        const int fewest = 4;
        var whole = Solved(Total(blocks));
        var (best, at) = (0.0, -1);
        for (var k = fewest; k <= Blocks - fewest; k++)
        {
            var gain = Explains(blocks[..k]) + Explains(blocks[k..]) - (whole.Explained * Total(blocks).Square);
            (best, at) = gain > best ? (gain, k) : (best, at);
        }

        if (at < 0)
        {
            return null;
        }

        var (before, after) = (Solved(Total(blocks[..at])), Solved(Total(blocks[at..])));
        var angle = Math.IEEERemainder(after.Angle - before.Angle, 2.0 * Math.PI);
        var doubt = Math.Sqrt(Square(Jackknifed(blocks[..at])) + Square(Jackknifed(blocks[at..])));
        var starts = Starts(parts, rate);
        return new ForwardTurn(angle, doubt, starts[at - 1], starts[Math.Min(at + 1, Blocks - 1)], Math.Min(before.Explained, after.Explained));

        static double Explains(Sums[] some) => Total(some) is var sums ? Solved(sums).Explained * sums.Square : 0.0;

        static double Square(double x) => x * x;
    }

    // Standard deviation of the angle, leaving out one block after the other.
    private static double Jackknifed(Sums[] blocks)
    {
        var angle = Solved(Total(blocks)).Angle;
        var square = 0.0;
        for (var k = 0; k < blocks.Length; k++)
        {
            var off = Math.IEEERemainder(Solved(Total(blocks.Where((_, n) => n != k))).Angle - angle, 2.0 * Math.PI);
            square += off * off;
        }

        return Math.Sqrt(square * (blocks.Length - 1) / blocks.Length);
    }

    // Where each block begins, s.
    private static double[] Starts(List<Part> parts, double rate)
    {
        var every = Math.Max(1, (int)Math.Round(Sparse * rate));
        var all = parts.Sum(p => ((p.Along.Length - 1) / every) + 1);
        var starts = new double[Blocks];
        Array.Fill(starts, double.NaN);
        var n = 0;
        foreach (var part in parts)
        {
            for (var i = 0; i < part.Along.Length; i += every)
            {
                ref var start = ref starts[(int)((long)n++ * Blocks / all)];
                start = double.IsNaN(start) ? part.Start + (i / rate) : start;
            }
        }

        return starts;
    }

    // What is explained changes over the slow band's own time of seconds: every fourth lag first, then those beside the two best.
    private static IEnumerable<int> LagsOf(int steps, Func<(double, double)> best)
    {
        const int coarse = 4;
        for (var k = -steps; k <= steps; k += coarse)
        {
            yield return k;
        }

        if (steps == 0)
        {
            yield break;
        }

        var (one, other) = best();
        int[] middles = [(int)Math.Round(one / LagStep), (int)Math.Round(other / LagStep)];
        foreach (var k in middles.SelectMany(m => Enumerable.Range(m - coarse + 1, (2 * coarse) - 1)).Distinct())
        {
            if (Math.Abs(k) <= steps && (k + steps) % coarse != 0)
            {
                yield return k;
            }
        }
    }

    private static double[] Thinned(double[] values, int every) =>
        [.. Enumerable.Range(0, ((values.Length - 1) / every) + 1).Select(i => values[i * every])];

    // Sums over equal blocks of the drive: any draw of blocks is then a sum of sums.
    private static Sums[] Gathered(List<Part> parts, double rate, TimedTrack speed, double lag)
    {
        var every = Math.Max(1, (int)Math.Round(Sparse * rate));
        var all = parts.Sum(p => ((p.Along.Length - 1) / every) + 1);
        var blocks = new Sums[Blocks];
        var n = 0;
        foreach (var part in parts)
        {
            var v = ZeroPhase.Low(Speeds(part, rate, speed, lag), rate, 0.5);
            var growth = new double[v.Length];
            var turning = new double[v.Length];
            for (var i = 0; i < v.Length; i++)
            {
                var (before, after) = (Math.Max(i - 1, 0), Math.Min(i + 1, v.Length - 1));
                growth[i] = (v[after] - v[before]) * rate / (after - before);
                turning[i] = v[i] * part.Yaw[i];
            }

            (growth, turning) = (ZeroPhase.Band(growth, rate, Low, High), ZeroPhase.Band(turning, rate, Low, High));
            for (var i = 0; i < v.Length; i += every)
            {
                ref var block = ref blocks[(int)((long)n++ * Blocks / all)];
                block = block.With(part.Along[i], growth[i], turning[i]);
            }
        }

        return blocks;
    }

    private static double[] Speeds(Part part, double rate, TimedTrack speed, double lag)
    {
        var result = new double[part.Along.Length];
        var k = 0;
        for (var i = 0; i < result.Length; i++)
        {
            var t = part.Start + (i / rate) + lag;
            while (k + 2 < speed.Times.Length && speed.Times[k + 1] <= t)
            {
                k++;
            }

            var share = Math.Clamp((t - speed.Times[k]) / (speed.Times[k + 1] - speed.Times[k]), 0.0, 1.0);
            result[i] = speed.Values[0][k] + (share * (speed.Values[0][k + 1] - speed.Values[0][k]));
        }

        return result;
    }

    private static Sums Total(IEnumerable<Sums> blocks) => blocks.Aggregate(default(Sums), (a, b) => a + b);

    private static ForwardFit Solved(Sums sums)
    {
        const double nothing = 1e-12;
        var (braked, turned) = (sums.Braking > nothing ? 1.0 / sums.Braking : 0.0, sums.Turning > nothing ? 1.0 / sums.Turning : 0.0);
        var (x, y) = (sums.Braked, sums.Turned);
        var (cc, ss) = ((x.Real * x.Real * braked) + (y.Imaginary * y.Imaginary * turned),
            (x.Imaginary * x.Imaginary * braked) + (y.Real * y.Real * turned));
        var cs = (x.Real * x.Imaginary * braked) - (y.Real * y.Imaginary * turned);
        var both = 0.5 * Math.Atan2(2.0 * cs, cc - ss);
        // Where both terms want another sign, the best angle is that of one term alone.
        double[] angles = [both, both + Math.PI, x.Phase, y.Phase - (0.5 * Math.PI)];
        return angles.Select(At).MaxBy(f => f.Explained)!;

        ForwardFit At(double angle)
        {
            var turn = Complex.FromPolarCoordinates(1.0, -angle);
            var p = Math.Max((x * turn).Real * braked, 0.0);
            var q = Math.Max((y * turn).Imaginary * turned, 0.0);
            return new ForwardFit
            {
                Angle = angle,
                Braking = p,
                Turning = q,
                Explained = sums.Square > 0.0 ? ((p * p * sums.Braking) + (q * q * sums.Turning)) / sums.Square : 0.0,
                HalfWidth = Math.PI,
                Lag = 0.0,
            };
        }
    }

    private static double Spread(Sums[] blocks, double angle)
    {
        var square = 0.0;
        for (var draw = 0; draw < Draws; draw++)
        {
            var sums = default(Sums);
            for (var k = 0; k < Blocks; k++)
            {
                sums += blocks[(int)(SplitMix.Uniform(1, (ulong)((draw * Blocks) + k)) * Blocks)];
            }

            var off = Math.IEEERemainder(Solved(sums).Angle - angle, 2.0 * Math.PI);
            square += off * off;
        }

        return Math.Sqrt(square / Draws);
    }

    private sealed record Part(double Start, Complex[] Along, double[] Yaw);

    private readonly record struct Sums(double Square, double Braking, double Turning, Complex Braked, Complex Turned)
    {
        public Sums With(Complex h, double growth, double turning) => new(
            Square + (h.Real * h.Real) + (h.Imaginary * h.Imaginary),
            Braking + (growth * growth),
            Turning + (turning * turning),
            Braked + (h * growth),
            Turned + (h * turning));

        public static Sums operator +(Sums a, Sums b) =>
            new(a.Square + b.Square, a.Braking + b.Braking, a.Turning + b.Turning, a.Braked + b.Braked, a.Turned + b.Turned);
    }
}
