using Heaveline.Drives;
using Heaveline.Numerics;

namespace Heaveline.Tests.Drives;

/// <summary>
/// A drive drawn at random: braking and getting going, bends, a road that climbs and leans; felt by a phone that lies flat, turned anyhow. All from
/// the seed.
/// </summary>
internal sealed record PlantedJourney
{
    private const double Gravity = 9.80665;
    private readonly Wave[] braking;
    private readonly Wave[] slopes;
    private readonly Wave[] camber;
    private readonly Wave[] heave;
    private readonly (double At, double Wide, double Angle)[] bends;

    /// <param name="seed">Whatever is drawn.</param>
    /// <param name="length">How long, s.</param>
    /// <param name="slope">Slope of the road, root mean square (–).</param>
    public PlantedJourney(ulong seed, double length, double slope)
    {
        (Seed, Length) = (seed, length);
        braking = Waves(100, 8, 0.01, 0.15, 2.2);
        slopes = Waves(200, 6, 0.004, 0.05, slope);
        camber = Waves(300, 6, 0.02, 0.15, 0.012);
        heave = Waves(400, 8, 0.8, 8.0, 0.4);
        bends =
        [
            .. Enumerable.Range(0, (int)(length / 14.0) + 1).Select(k => (
                At: (14.0 * k) + (14.0 * U(500, k)), Wide: 1.0 + (1.5 * U(501, k)),
                Angle: (U(502, k) < 0.5 ? -1.0 : 1.0) * (0.2 + (1.2 * U(503, k))))),
        ];
        Turned = 2.0 * Math.PI * (U(600, 0) - 0.5);
        Late = 1.2 * U(601, 0);
    }

    public ulong Seed { get; }

    public double Length { get; }

    /// <summary>Angle from the car's forward axis to the phone's first, clockwise seen from above, rad.</summary>
    public double Turned { get; }

    public double Late { get; }

    /// <summary>Forward along the phone's axes.</summary>
    public Direction Forward => new(Math.Cos(Turned), Math.Sin(Turned), 0.0);

    public double Speed(double t) => Math.Max(9.0 + Sum(braking, t), 0.5);

    public double Yaw(double t) =>
        Speed(t) / 9.0 * bends.Sum(b => b.Angle / (b.Wide * Math.Sqrt(2.0 * Math.PI)) * Math.Exp(-0.5 * Math.Pow((t - b.At) / b.Wide, 2.0)));

    public Log Log(double rate = 50.0)
    {
        double[] times = [.. Enumerable.Range(0, (int)(Length * rate)).Select(i => i / rate)];
        double[] fixes = [.. Enumerable.Range(0, (int)Length + 1).Select(i => (double)i)];
        var (force, turn) = (Three(times.Length), Three(times.Length));
        var (s, c) = Math.SinCos(Turned);
        for (var i = 0; i < times.Length; i++)
        {
            var t = times[i];
            var ahead = ((Speed(t + 0.05) - Speed(t - 0.05)) / 0.1) + (Gravity * Sum(slopes, t)) + (0.3 * Normal(10, i));
            var left = (Speed(t) * Yaw(t)) + (Gravity * Sum(camber, t)) + (0.3 * Normal(11, i));
            force[0][i] = (c * ahead) - (s * left);
            force[1][i] = (s * ahead) + (c * left);
            force[2][i] = Gravity + Sum(heave, t) + (0.3 * Normal(12, i));
            turn[0][i] = 0.02 * Normal(13, i);
            turn[1][i] = 0.02 * Normal(14, i);
            turn[2][i] = Yaw(t) + (0.005 * Normal(15, i));
        }

        return new Log
        {
            Tracks =
            [
                PlantedDrive.Track(SensorKind.Acceleration, times, force), PlantedDrive.Track(SensorKind.TurnRate, times, turn),
                PlantedDrive.Track(SensorKind.Speed, fixes, [[.. fixes.Select(t => Speed(t - Late) + (0.1 * Normal(16, (int)t)))]], "m/s"),
            ],
        };
    }

    private static double[][] Three(int count) => [new double[count], new double[count], new double[count]];

    private static double Sum(Wave[] waves, double t) => waves.Sum(w => w.Size * Math.Sin((2.0 * Math.PI * w.Frequency * t) + w.Phase));

    private double U(ulong lane, int k) => SplitMix.Uniform((Seed * 1000) + lane, (ulong)k);

    private double Normal(ulong lane, int k) => SplitMix.Normals((Seed * 1000) + lane, 2UL * (ulong)k).First;

    // Frequencies even on a scale of logarithms, so many to the root mean square.
    private Wave[] Waves(ulong lane, int count, double low, double high, double size) =>
    [
        .. Enumerable.Range(0, count).Select(k => new Wave(
            low * Math.Pow(high / low, (k + U(lane, k)) / count), 2.0 * Math.PI * U(lane + 1, k), size * Math.Sqrt(2.0 / count))),
    ];

    private readonly record struct Wave(double Frequency, double Phase, double Size);
}
