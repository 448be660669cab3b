using Heaveline.Numerics;

namespace Heaveline.Drives;

/// <summary>
/// The line about which the body turns over bumps driven straight: left, or right, of the car. Which of both is told by what comes first, for the
/// front axle meets a bump before the rear.
/// </summary>
/// <param name="Angle">Angle of left from the first horizontal axis, rad; of right as well as of left where <see cref="IsSided"/> is false.</param>
/// <param name="HalfWidth">Half-width of the angle's 90 % interval, rad.</param>
/// <param name="Bumps">How many bumps it rests on.</param>
/// <param name="Share">Share of the turning that goes about it, 0.5 to 1.</param>
/// <param name="Side">How surely left is told from right: the mean of the bumps' votes in its own standard errors.</param>
internal sealed record BumpLine(double Angle, double HalfWidth, int Bumps, double Share, double Side)
{
    // Proposals of this program, tried on planted drives.
    private const double Outstanding = 3.2;
    private const double LeastTurn = 0.05;
    private const double Apart = 2.0;
    private const double Straight = 0.12;
    private const double LeastShare = 0.75;
    private const double Sure = 3.0;
    private const int Fewest = 4;

    // A bump of one side turns the body about another line, all bumps alike on a road with a camber, rad.
    private const double Floor = 0.05;

    /// <summary>Whether left is told from right.</summary>
    public bool IsSided => Side > Sure;

    /// <summary>Looks for it; null where there are too few bumps, or they turn the body about no line in common.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="first">Turn rate about the first horizontal axis, rad/s.</param>
    /// <param name="second">About the second, to the left of the first.</param>
    /// <param name="yaw">About up.</param>
    /// <param name="vertical">Vertical acceleration, m/s².</param>
    public static BumpLine? Of(EvenGrid grid, double[] first, double[] second, double[] yaw, double[] vertical)
    {
        if (grid.Rate < Trust.LeastRate)
        {
            return null;
        }

        var rate = grid.Rate;
        var (slow1, slow2) = (ZeroPhase.Band(first, rate, 0.7, 4.0), ZeroPhase.Band(second, rate, 0.7, 4.0));
        var bumps = Found(grid, slow1, slow2, yaw);
        if (bumps.Count < Fewest)
        {
            return null;
        }

        var products = bumps.Select(b => Product(slow1, slow2, b)).ToArray();
        var all = products.Aggregate((a, b) => a + b);
        var (angle, share) = all.Line();
        if (share < LeastShare)
        {
            return null;
        }

        var square = products.Sum(p => Off((all - p).Line().Angle, angle) is var off ? off * off : 0.0);
        var student = LeastSquares.Student(bumps.Count - 1, 0.9);
        var half = student * Math.Sqrt(square * (bumps.Count - 1) / bumps.Count);
        double[] votes = [.. bumps.Select(b => Vote(first, second, vertical, angle, b, rate))];
        var mean = votes.Average();
        var deviation = Math.Sqrt(votes.Sum(v => (v - mean) * (v - mean)) / (votes.Length - 1));
        var side = mean / Math.Max(deviation / Math.Sqrt(votes.Length), 1e-6);
        return new BumpLine(side < 0.0 ? angle + Math.PI : angle, Math.Sqrt((half * half) + (Floor * Floor)), bumps.Count, share, Math.Abs(side));
    }

    // Lines have no ends: half a turn is none.
    private static double Off(double one, double other) => Math.IEEERemainder(one - other, Math.PI);

    private static List<(int From, int To)> Found(EvenGrid grid, double[] first, double[] second, double[] yaw)
    {
        var rate = grid.Rate;
        var square = new double[grid.Count];
        for (var i = 0; i < square.Length; i++)
        {
            square[i] = (first[i] * first[i]) + (second[i] * second[i]);
        }

        var swing = Meant(square, (int)Math.Round(0.2 * rate));
        var bend = Meant(yaw, (int)Math.Round(rate));
        if (grid.Covered.IsEmpty)
        {
            return [];
        }

        var least = Math.Max(Math.Pow(Outstanding, 2.0) * Middle.Of(grid.Covering(swing)), LeastTurn * LeastTurn);
        var (before, after) = ((int)(1.5 * rate), (int)(1.0 * rate));
        var found = new List<(int At, int From, int To)>();
        foreach (var (from, to) in grid.Covered)
        {
            for (var i = from + before; i <= to - after; i++)
            {
                var reach = (int)(Apart * rate);
                if (swing[i] >= least && Math.Abs(bend[i]) < Straight && IsMost(swing, i, Math.Max(i - reach, from), Math.Min(i + reach, to)))
                {
                    found.Add((i, i - before, i + after));
                }
            }
        }

        return [.. found.Select(f => (f.From, f.To))];

        static bool IsMost(double[] of, int at, int from, int to)
        {
            for (var i = from; i <= to; i++)
            {
                if (of[i] > of[at] || (of[i] == of[at] && i < at))
                {
                    return false;
                }
            }

            return true;
        }
    }

    // Means over so many samples on either side.
    private static double[] Meant(double[] values, int reach)
    {
        var sums = new double[values.Length + 1];
        for (var i = 0; i < values.Length; i++)
        {
            sums[i + 1] = sums[i] + values[i];
        }

        var result = new double[values.Length];
        for (var i = 0; i < result.Length; i++)
        {
            var (from, to) = (Math.Max(i - reach, 0), Math.Min(i + reach + 1, values.Length));
            result[i] = (sums[to] - sums[from]) / (to - from);
        }

        return result;
    }

    private static Turning Product(double[] first, double[] second, (int From, int To) bump)
    {
        double one = 0.0, both = 0.0, other = 0.0;
        for (var i = bump.From; i <= bump.To; i++)
        {
            one += first[i] * first[i];
            both += first[i] * second[i];
            other += second[i] * second[i];
        }

        // Each bump counts the same.
        var all = one + other;
        return new Turning(one / all, both / all, other / all);
    }

    // Up and nose up go together when the front axle meets a bump, up and nose down when the rear does (in a dip down and nose down, down and nose
    // up): the product of both accelerations comes below zero first, then above.
    private static double Vote(double[] first, double[] second, double[] vertical, double angle, (int From, int To) bump, double rate)
    {
        var from = Math.Max(bump.From - (int)(2.0 * rate), 0);
        var to = Math.Min(bump.To + (int)(2.0 * rate), vertical.Length - 1);
        double[] Near(double[] values) => ZeroPhase.Band(values.AsSpan(from, to - from + 1), rate, 0.7, 8.0);
        var (near1, near2, heave) = (Near(first), Near(second), Near(vertical));
        var (s, c) = Math.SinCos(angle);
        double Rate(int i) => (c * near1[i]) + (s * near2[i]);
        double size = 0.0, at = 0.0;
        for (var i = bump.From - from + 1; i < bump.To - from; i++)
        {
            var p = Math.Abs(heave[i] * (Rate(i + 1) - Rate(i - 1)));
            (size, at) = (size + p, at + (p * i));
        }

        at /= size;
        double moment = 0.0, most = 0.0;
        for (var i = bump.From - from + 1; i < bump.To - from; i++)
        {
            var p = heave[i] * (Rate(i + 1) - Rate(i - 1)) * (i - at) / rate;
            (moment, most) = (moment + p, most + Math.Abs(p));
        }

        return most > 0.0 ? moment / most : 0.0;
    }

    private readonly record struct Turning(double One, double Both, double Other)
    {
        public static Turning operator +(Turning a, Turning b) => new(a.One + b.One, a.Both + b.Both, a.Other + b.Other);

        public static Turning operator -(Turning a, Turning b) => new(a.One - b.One, a.Both - b.Both, a.Other - b.Other);

        public (double Angle, double Share) Line()
        {
            var apart = Math.Sqrt(((One - Other) * (One - Other)) + (4.0 * Both * Both));
            return (0.5 * Math.Atan2(2.0 * Both, One - Other), 0.5 + (0.5 * apart / (One + Other)));
        }
    }
}
