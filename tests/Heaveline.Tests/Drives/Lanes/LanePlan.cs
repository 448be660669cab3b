using Heaveline.Drives.Recovery;
using Heaveline.Numerics;

namespace Heaveline.Tests.Drives.Lanes;

/// <summary>How Larch Lane is driven: a standstill, a firm brake, two bends, a rough stretch of 400 m, then laps of its sites.</summary>
internal sealed class LanePlan
{
    private const double Standstill = 8.0;
    private const double Hold = 5.5;
    private const double Change = 6.5;
    private const double Drift = 0.015;
    private const int BrakedLap = 4;
    private const int SlippedLap = 6;

    private readonly List<DrivePoint> points = [new(0.0, 0.0)];
    private readonly List<LaneCrossing> crossings = [];

    private readonly bool isSpoilt;

    private LanePlan(IReadOnlyList<LaneSite> sites, bool isSpoilt) => (Sites, this.isSpoilt) = (sites, isSpoilt);

    /// <summary>What lies on the lane, in the order of a lap.</summary>
    public IReadOnlyList<LaneSite> Sites { get; }

    public DriveLine Line => new() { Points = [.. points] };

    public IReadOnlyList<LaneCrossing> Crossings => crossings;

    /// <summary>Where the rough stretch is, m.</summary>
    public (double From, double To) Rough { get; private set; }

    /// <summary>When the phone slips, s; null: never.</summary>
    public double? Slip { get; private set; }

    /// <summary>The drive that follows from a seed.</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="speeds">How much faster it is driven over all sites.</param>
    /// <param name="sites">What lies on the lane, by the names of Larch Lane's sites; null: those themselves.</param>
    /// <param name="isSpoilt">Whether one crossing is braked and the phone slips before the last site of the sixth lap.</param>
    public static LanePlan Of(ulong seed, double speeds = 1.0, IReadOnlyList<LaneSite>? sites = null, bool isSpoilt = true)
    {
        var plan = new LanePlan(sites ?? LaneSite.All, isSpoilt);
        plan.Begin();
        for (var lap = 1; lap <= plan.Sites[0].Speeds.Length; lap++)
        {
            foreach (var (place, site) in plan.Sites.Index())
            {
                // The driver keeps no speed to better than a twentieth.
                var chance = SplitMix.Normals(seed, (ulong)(2 * ((4 * lap) + place))).First;
                var speed = site.Speeds[lap - 1] / 3.6 * speeds * (1.0 + Math.Clamp(0.05 * chance, -0.05, 0.05));
                plan.Cross(lap, site, speed, chance > 0.0 ? Drift : -Drift);
            }

            plan.Bend(25.0 / 3.6, lap % 2 == 0 ? 0.3 : -0.3);
        }

        plan.To(0.0, 5.0);
        plan.For(3.0);
        return plan;
    }

    private double Now => points[^1].Time;

    private double Speed => points[^1].Speed;

    private double Distance => Line.Distance(Now);

    private void To(double speed, double seconds, double yaw = 0.0) => points.Add(new(Now + seconds, speed, yaw));

    private void For(double seconds) => To(Speed, seconds, points[^1].YawRate);

    private void Begin()
    {
        For(Standstill);
        To(42.0 / 3.6, 7.0);
        For(2.0);
        To(15.0 / 3.6, 2.8);
        To(28.0 / 3.6, 5.0);
        Bend(28.0 / 3.6, 0.35);
        Bend(28.0 / 3.6, -0.35);
        To(30.0 / 3.6, 4.0);
        var from = Distance;
        For(400.0 / Speed);
        Rough = (from, Distance);
        For(2.0);
    }

    private void Bend(double speed, double yaw)
    {
        To(speed, Change);
        To(speed, 1.5, yaw);
        To(speed, 2.0, yaw);
        To(speed, 1.5);
    }

    private void Cross(int lap, LaneSite site, double speed, double drift)
    {
        var length = site.Obstacle.OverallLength;
        if (isSpoilt && lap == SlippedLap && site == Sites[^1])
        {
            To(speed, Change);
            Slip = Now;
            For(Hold);
        }
        else
        {
            To(speed * (1.0 - drift), Change);
        }

        if (isSpoilt && lap == BrakedLap && site == Sites[0])
        {
            // The foot goes to the brake as the hump comes.
            For(Hold);
            var before = (Now, Distance: Distance + (0.6 * Speed));
            To(0.55 * Speed, 1.6);
            Add(before.Distance, "braked");
            For(Hold);
            return;
        }

        var start = Now;
        To(speed * (1.0 + drift), (2.0 * Hold) + (length / speed));
        Add(Line.Distance(start + Hold), isSpoilt && lap == SlippedLap && site == Sites[^1] ? "after the slip" : "");

        void Add(double at, string spoilt)
        {
            var line = Line;
            var time = line.TimeAt(at);
            crossings.Add(new(lap, site.Name, at, time, line.Speed(time), spoilt));
        }
    }
}
