using System.Numerics;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Drives;

/// <summary>
/// Forward found from braking and turning together: the slow horizontal acceleration h, as a complex number, is e^(ia)·(p·dv/dt + i·q·v·ψ̇) with p
/// and q not negative; a is the angle of forward.
/// </summary>
/// <remarks>
/// For a given angle the real and the imaginary part are two fits of one term each, so p and q are closed forms, and what they
/// explain is a quadratic form of (cos a, sin a): the angle is that form's eigenvector. The half-width is Student's of the larger of two
/// deviations: of angles found from stretches of the drive drawn with replacement, and from all stretches but one.
/// </remarks>
internal sealed record ForwardFit
{
    /// <summary>The least drive that a forward is looked for in, s.</summary>
    public const double Shortest = 30.0;

    // Braking between bends counts against turning alone, and takes longer to even out.
    private const double ShortestTurning = 90.0;

    // Tried on planted drives: what scatters between stretches is that much too little.
    private const double TurningWidth = 1.15;

    // Stretches hang together over a braking or a bend, s: those of the half-width are no shorter.
    private const double Together = 10.0;
    private const double LagStep = 0.1;
    private const int Draws = 200;

    // Braking and turning count for 1; for so little in no drive of the accelerometer's own (common practice, no source).
    private const double LeastCount = 0.65;

    // What the fit leaves out (a lag that drifts, camber, the phone's own bearing), rad.
    private static readonly double Floor = 1.0 / In.Degrees.Factor;

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
    public bool IsLagFound => IsLagSaid || Math.Abs(Lag) < SlowMotion.MostLag - (0.5 * LagStep);

    /// <summary>The drive's one turn of forward against the phone that is surest, if any is; null in the fit of the other hand.</summary>
    public ForwardTurn? Turn { get; init; }

    private bool IsLagSaid { get; init; }

    /// <summary>Half-widths of the 90 % intervals of <see cref="Braking"/> and <see cref="Turning"/>, either sign allowed.</summary>
    public (double Braking, double Turning) CountWidths { get; private init; } = (double.PositiveInfinity, double.PositiveInfinity);

    /// <summary>
    /// Whether the speed is surely not this drive's: the accelerometer did not feel its growth, nor do bends at that speed go better with what it
    /// felt than bends at any one speed. (A coarse speed has false growth, but its height goes with the bends.)
    /// </summary>
    public bool IsSpeedForeign => SignedCounts.Braking + CountWidths.Braking < LeastCount && !AreBendsBetter;

    /// <summary>Whether the turn rate about up is surely not what the accelerometer felt in bends.</summary>
    public bool IsTurnForeign => SignedCounts.Turning + CountWidths.Turning < LeastCount && !AreBendsFelt;

    private bool AreBendsBetter { get; init; }

    private bool AreBendsFelt { get; init; }

    private (double Braking, double Turning) SignedCounts { get; init; }

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
        var slow = SlowMotion.Of(grid, first, second, yaw, speed);
        if (slow.Length < Shortest)
        {
            return null;
        }

        ForwardFit? best = null;
        ForwardFit? turned = null;
        var steps = lag is null ? (int)Math.Round(SlowMotion.MostLag / LagStep) : 0;
        SlowSums[] blocks = [];
        SlowSums[] turnedBlocks = [];
        foreach (var k in LagsOf(steps, () => (best!.Lag, turned!.Lag)))
        {
            stop.ThrowIfCancellationRequested();
            var late = lag ?? k * LagStep;
            var here = slow.Gathered(late);
            var fit = Solved(SlowSums.Of(here)) with { Lag = late, IsLagSaid = lag is not null };
            if (best is null || fit.Explained > best.Explained)
            {
                (best, blocks) = (fit, here);
            }

            // A gyro of the other hand gives the same sums, turning of the other sign.
            SlowSums[] other = [.. here.Select(s => s with { Turned = -s.Turned })];
            fit = Solved(SlowSums.Of(other)) with { Lag = late, IsLagSaid = lag is not null };
            if (turned is null || fit.Explained > turned.Explained)
            {
                (turned, turnedBlocks) = (fit, other);
            }
        }

        var bends = slow.Gathered(null);
        var alone = Doubted(Solved(SlowSums.Of(bends)), bends, slow);
        ForwardFit Judged(ForwardFit fit, SlowSums[] of) => Doubted(fit, of, slow) with
        {
            AreBendsBetter = Solved(SlowSums.Of(of).OfTurning).Explained > alone.Explained,
            AreBendsFelt = alone.HalfWidth < Mount.Refused,
        };
        return Judged(best!, blocks) with { OtherHand = Judged(turned!, turnedBlocks) };
    }

    /// <summary>Fits turning alone, at whatever speed; null where it is too short. Its turning counts in m/s, not in shares.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="first">Acceleration along the first horizontal axis, m/s².</param>
    /// <param name="second">Along the second, to the left of the first.</param>
    /// <param name="yaw">Turn rate about up, rad/s.</param>
    public static ForwardFit? OfTurning(EvenGrid grid, double[] first, double[] second, double[] yaw)
    {
        var slow = SlowMotion.Of(grid, first, second, yaw, null);
        if (slow.Length < ShortestTurning)
        {
            return null;
        }

        var blocks = slow.Gathered(null);
        var fit = Doubted(Solved(SlowSums.Of(blocks)), blocks, slow);
        return fit with { HalfWidth = TurningWidth * fit.HalfWidth };
    }

    private static ForwardFit Doubted(ForwardFit fit, SlowSums[] blocks, SlowMotion slow)
    {
        // So many neighbours make one stretch that stands by itself.
        var each = 1;
        while (each < 4 && slow.Length * each / SlowMotion.Blocks < Together)
        {
            each *= 2;
        }

        SlowSums[] stretches = [.. blocks.Chunk(each).Select(SlowSums.Of)];
        var all = SlowSums.Of(stretches);
        var counts = all.Counts(fit.Angle);
        var student = LeastSquares.Student(stretches.Length - 1, 0.9);
        SlowSums[] less = [.. stretches.Select(s => all - s)];
        // Few braking and few bends show less scatter than they have: tried on planted drives.
        var deviation = (1.0 + (1.2 * Together / slow.Length)) * Math.Max(Spread(stretches, fit.Angle), Jackknifed(stretches));
        return fit with
        {
            HalfWidth = Math.Min(Math.Sqrt((student * deviation * student * deviation) + (Floor * Floor)), Math.PI),
            SignedCounts = counts,
            CountWidths = (
                student * Deviation(less.Select(s => s.Counts(fit.Angle).Braking - counts.Braking)),
                student * Deviation(less.Select(s => s.Counts(fit.Angle).Turning - counts.Turning))),
            Turn = TurnOf(blocks, slow),
        };
    }

    // From what leaving out one after the other changes.
    private static double Deviation(IEnumerable<double> changes)
    {
        double[] all = [.. changes];
        return Math.Sqrt(all.Sum(c => c * c) * (all.Length - 1) / all.Length);
    }

    // A phone that slides round on the floor without tipping turns forward against it, and nothing else: the drive is fitted in two.
    private static ForwardTurn? TurnOf(SlowSums[] blocks, SlowMotion slow)
    {
        const int fewest = 4;
        var whole = Solved(SlowSums.Of(blocks));
        var (best, at) = (0.0, -1);
        for (var k = fewest; k <= SlowMotion.Blocks - fewest; k++)
        {
            var gain = Explains(blocks[..k]) + Explains(blocks[k..]) - (whole.Explained * SlowSums.Of(blocks).Square);
            (best, at) = gain > best ? (gain, k) : (best, at);
        }

        if (at < 0)
        {
            return null;
        }

        var (before, after) = (Solved(SlowSums.Of(blocks[..at])), Solved(SlowSums.Of(blocks[at..])));
        var angle = Math.IEEERemainder(after.Angle - before.Angle, 2.0 * Math.PI);
        var doubt = Math.Sqrt(Square(Jackknifed(blocks[..at])) + Square(Jackknifed(blocks[at..])));
        var starts = slow.Starts();
        return new ForwardTurn(
            angle, doubt, starts[at - 1], starts[Math.Min(at + 1, SlowMotion.Blocks - 1)], Math.Min(before.Explained, after.Explained));

        static double Explains(SlowSums[] some) => SlowSums.Of(some) is var sums ? Solved(sums).Explained * sums.Square : 0.0;

        static double Square(double x) => x * x;
    }

    // Standard deviation of the angle, leaving out one block after the other.
    private static double Jackknifed(SlowSums[] blocks)
    {
        var all = SlowSums.Of(blocks);
        var angle = Solved(all).Angle;
        return Deviation(blocks.Select(b => Math.IEEERemainder(Solved(all - b).Angle - angle, 2.0 * Math.PI)));
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

    private static ForwardFit Solved(SlowSums sums)
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

    private static double Spread(SlowSums[] blocks, double angle)
    {
        var square = 0.0;
        for (var draw = 0; draw < Draws; draw++)
        {
            var sums = default(SlowSums);
            for (var k = 0; k < blocks.Length; k++)
            {
                sums += blocks[(int)(SplitMix.Uniform(1, (ulong)((draw * blocks.Length) + k)) * blocks.Length)];
            }

            var off = Math.IEEERemainder(Solved(sums).Angle - angle, 2.0 * Math.PI);
            square += off * off;
        }

        return Math.Sqrt(square / Draws);
    }
}
