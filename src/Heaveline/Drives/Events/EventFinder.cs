namespace Heaveline.Drives.Events;

/// <summary>
/// Looks for bumps: a knock that both axles make, one after the other, or a swing of the body, either well above what is usual about it.
/// </summary>
/// <remarks>
/// Score = the larger of min(e(t), 1.6·e(t + L/V)) / usual knock and swing / usual swing. The numbers are proposals of this program, tried on planted
/// roads: docs/validation.md.
/// </remarks>
internal sealed class EventFinder
{
    /// <summary>By how many times a bump must stand above what is usual.</summary>
    public const double Least = 3.2;

    /// <summary>Below this speed the car stands or creeps, m/s.</summary>
    public const double Creeping = 1.5;

    // Bumps nearer than this are one, s.
    private const double Apart = 2.0;

    // Below these nothing is a bump, m/s² and rad/s, however smooth the road is.
    private const double LeastKnock = 0.5;
    private const double LeastSwing = 0.05;

    // Nothing is more usual than these: a car on a smooth road, a gyro's noise.
    private const double SmoothKnock = 0.12;
    private const double SmoothSwing = 0.012;

    // The rear axle may knock less than the front, by this much.
    private const double RearShare = 1.6;

    // Without a speed the rear axle may follow anywhere between: 12 to 90 km/h.
    private const double Slowest = 3.5;
    private const double Fastest = 25.0;

    private readonly Drive drive;
    private readonly double wheelbase;
    private readonly DriveStrip strip;
    private readonly bool[] moving;

    /// <summary>A finder for a drive.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="wheelbase">Wheelbase, m.</param>
    public EventFinder(Drive drive, double wheelbase)
    {
        (this.drive, this.wheelbase, strip) = (drive, wheelbase, DriveStrip.Of(drive));
        moving = new bool[drive.Vertical.Length];
        foreach (var (first, last) in drive.Covered)
        {
            for (var i = first; i <= last; i++)
            {
                moving[i] = drive.Speed.IsEmpty || drive.Speed[i] >= Creeping;
            }
        }
    }

    /// <summary>What stands out, in time.</summary>
    /// <param name="stop">Stops it.</param>
    public IReadOnlyList<Candidate> Found(CancellationToken stop)
    {
        var score = Score();
        stop.ThrowIfCancellationRequested();
        var tops = new List<int>();
        for (var i = 1; i + 1 < score.Length; i++)
        {
            if (score[i] >= Least && score[i] > score[i - 1] && score[i] >= score[i + 1])
            {
                tops.Add(i);
            }
        }

        // The highest first; what lies too near to it is the same bump.
        var apart = Apart * drive.Rate;
        var taken = new SortedSet<int>();
        foreach (var i in tops.OrderByDescending(i => score[i]).ThenBy(i => i))
        {
            if (taken.GetViewBetween((int)Math.Ceiling(i - apart), (int)Math.Floor(i + apart)).Count == 0)
            {
                taken.Add(i);
            }
        }

        return [.. taken.Select(i => new Candidate(drive.Time(i), score[i], false))];
    }

    /// <summary>By how many times a knock stands above what is usual; 0 where it is none.</summary>
    /// <param name="knock">The knock, m/s².</param>
    /// <param name="rear">The knock when the rear axle is there, m/s².</param>
    /// <param name="usual">What is usual, m/s².</param>
    public static double OfKnock(double knock, double rear, double usual) =>
        knock > LeastKnock ? Math.Min(knock, RearShare * rear) / Math.Max(usual, SmoothKnock) : 0.0;

    /// <summary>By how many times a swing stands above what is usual; 0 where it is none.</summary>
    /// <param name="swing">The swing, rad/s.</param>
    /// <param name="usual">What is usual, rad/s.</param>
    public static double OfSwing(double swing, double usual) => swing > LeastSwing ? swing / Math.Max(usual, SmoothSwing) : 0.0;

    private double[] Score()
    {
        var knock = strip.Knock;
        var usualKnock = UsualMotion.Of(knock.AsSpan(), moving, drive.Rate);
        var usualSwing = strip.Swing.IsEmpty ? [] : UsualMotion.Of(strip.Swing.AsSpan(), moving, drive.Rate);
        var follows = drive.Speed.IsEmpty ? Following() : null;
        var score = new double[knock.Length];
        for (var i = 0; i < score.Length; i++)
        {
            if (knock[i] > LeastKnock)
            {
                var rear = follows is not null ? follows[i] : At(i + (int)Math.Round(drive.Rate * wheelbase / Math.Max(drive.Speed[i], Creeping)));
                score[i] = OfKnock(knock[i], rear, usualKnock[i]);
            }

            if (usualSwing.Length > 0)
            {
                score[i] = Math.Max(score[i], OfSwing(strip.Swing[i], usualSwing[i]));
            }
        }

        return score;

        double At(int i) => i < knock.Length ? knock[i] : 0.0;
    }

    // The greatest knock that may be the rear axle's, whatever the speed: a running maximum over the lags.
    private double[] Following()
    {
        var (from, to) = ((int)Math.Round(drive.Rate * wheelbase / Fastest), (int)Math.Round(drive.Rate * wheelbase / Slowest));
        var knock = strip.Knock;
        var result = new double[knock.Length];
        var queue = new LinkedList<int>();
        for (var j = 0; j < knock.Length + to; j++)
        {
            if (j < knock.Length)
            {
                while (queue.Last is { Value: var last } && knock[last] <= knock[j])
                {
                    queue.RemoveLast();
                }

                queue.AddLast(j);
            }

            var i = j - to;
            if (i < 0 || i >= knock.Length)
            {
                continue;
            }

            while (queue.First is { Value: var first } && first < i + from)
            {
                queue.RemoveFirst();
            }

            result[i] = queue.First is { Value: var most } ? knock[most] : 0.0;
        }

        return result;
    }
}
