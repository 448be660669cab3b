using System.Collections.Immutable;
using Heaveline.Drives;
using Heaveline.Numerics;

namespace Heaveline.Tests.Drives;

/// <summary>
/// A drive of which everything is known: closed forms of time for speed, turning, heave, pitch and roll, felt by a phone that lies anyhow. Noise and
/// jitter come from a seed.
/// </summary>
internal sealed record PlantedDrive
{
    public const double Gravity = 9.80665;

    public double Length { get; init; } = 90.0;

    public double Rate { get; init; } = 100.0;

    public double Jitter { get; init; } = 1e-3;

    public double Noise { get; init; } = 0.02;

    public double Gain { get; init; } = 1.0;

    /// <summary>The phone turned about up, then tipped about its own first axis, rad.</summary>
    public double Turned { get; init; } = 0.6;

    public double Tipped { get; init; } = 0.14;

    /// <summary>A slip of the phone by this angle at the middle of the drive, rad.</summary>
    public double Slip { get; init; }

    /// <summary>A slide of the phone round about up by this angle at the middle of the drive, rad.</summary>
    public double Slide { get; init; }

    /// <summary>A slope (–) that the road takes on within half a second at the middle of the drive and keeps.</summary>
    public double Ramp { get; init; }

    /// <summary>By how much the speed is late, s.</summary>
    public double Late { get; init; } = 0.6;

    public bool HasStops { get; init; } = true;

    /// <summary>How many times sharper than usual the bends are.</summary>
    public double Bends { get; init; } = 1.0;

    public ulong Seed { get; init; } = 1;

    public double[] Instants => [.. Enumerable.Range(0, (int)(Length * Rate)).Select(i => (i / Rate) + (Jitter * Chance(i, 0)))];

    public double[] Fixes => [.. Enumerable.Range(0, (int)Length).Select(i => (double)i)];

    public double Speed(double t) => 9.0 + (4.0 * Math.Sin(2.0 * Math.PI * t / 17.0)) + (2.0 * Math.Sin(2.0 * Math.PI * t / 7.3));

    public double SpeedAt(double fix) => Speed(fix - Late);

    private static double Growth(double t) =>
        (4.0 * 2.0 * Math.PI / 17.0 * Math.Cos(2.0 * Math.PI * t / 17.0)) + (2.0 * 2.0 * Math.PI / 7.3 * Math.Cos(2.0 * Math.PI * t / 7.3));

    public static double Yaw(double t) => (0.12 * Math.Sin(2.0 * Math.PI * t / 13.0)) + (0.05 * Math.Sin(2.0 * Math.PI * t / 5.1));

    public static double Pitch(double t) =>
        0.06 * Math.Sin(2.0 * Math.PI * 1.31 * t) * Math.Exp(-Math.IEEERemainder(t, 11.0) * Math.IEEERemainder(t, 11.0));

    public static double Roll(double t) => 0.02 * Math.Sin(2.0 * Math.PI * 1.7 * t);

    public static double Heave(double t) =>
        (0.5 * Math.Sin(2.0 * Math.PI * 1.2 * t)) + (0.3 * Math.Sin(2.0 * Math.PI * 6.7 * t)) + (0.2 * Math.Sin(2.0 * Math.PI * 10.9 * t));

    /// <summary>Specific force along the phone's axes, m/s², shape (3, n).</summary>
    public double[][] Force(double[] times) =>
        Phone(times, t => new Direction(
            Growth(t) + (Gravity * Ramp * Begun(t)), Speed(t) * Bends * Yaw(t), Gravity + Heave(t) + (Speed(t) * RampRate(t))) * (1.0 / Gain),
            Noise, 10);

    /// <summary>Turn rate about the phone's axes, rad/s, shape (3, n).</summary>
    public double[][] Turn(double[] times) =>
        Phone(times, t => new Direction(Roll(t), Pitch(t) - RampRate(t), Bends * Yaw(t)) + SlipRate(t), 0.05 * Noise, 20);

    /// <summary>Forward and up along the phone's axes at the start.</summary>
    public (Direction Forward, Direction Up) Axes => (At(0.0, new Direction(1, 0, 0)), At(0.0, new Direction(0, 0, 1)));

    public Log Log => LogOf(Instants);

    public Log LogOf(double[] times) => new()
    {
        Tracks =
        [
            Track(SensorKind.Acceleration, times, Force(times)), Track(SensorKind.TurnRate, times, Turn(times)),
            Track(SensorKind.Speed, Fixes, [[.. Fixes.Select(SpeedAt)]], "m/s"),
        ],
    };

    public static SensorTrack Track(SensorKind kind, double[] times, double[][] values, string said = "") => new()
    {
        Kind = kind,
        File = "planted.csv",
        UnitSaid = said,
        UnitTaken = kind == SensorKind.Speed ? "m/s" : "SI",
        Times = [.. times],
        Values = [.. values.Select(v => v.ToImmutableArray())],
    };

    private Direction SlipRate(double t) =>
        Math.Abs(t - (0.5 * Length)) < 0.25 ? new Direction(Slip / 0.5, 0, Slide / 0.5) : default;

    private double Begun(double t) => Math.Clamp(((t - (0.5 * Length)) / 0.5) + 0.5, 0.0, 1.0);

    private double RampRate(double t) => Math.Abs(t - (0.5 * Length)) < 0.25 ? Ramp / 0.5 : 0.0;

    private double[][] Phone(double[] times, Func<double, Direction> ofCar, double noise, int lane)
    {
        var result = new[] { new double[times.Length], new double[times.Length], new double[times.Length] };
        for (var i = 0; i < times.Length; i++)
        {
            var felt = At(times[i], ofCar(times[i]));
            result[0][i] = felt.X + (noise * Chance(i, lane));
            result[1][i] = felt.Y + (noise * Chance(i, lane + 1));
            result[2][i] = felt.Z + (noise * Chance(i, lane + 2));
        }

        return result;
    }

    // From the car's axes to the phone's, whose slip is a turn about the car's forward axis.
    private Direction At(double t, Direction car)
    {
        var slipped = Slip * Math.Clamp((t - (0.5 * Length)) / 0.5 + 0.5, 0.0, 1.0);
        var (s, c) = Math.SinCos(-slipped);
        car = new Direction(car.X, (c * car.Y) - (s * car.Z), (s * car.Y) + (c * car.Z));
        (s, c) = Math.SinCos(Turned + (Slide * Math.Clamp(((t - (0.5 * Length)) / 0.5) + 0.5, 0.0, 1.0)));
        car = new Direction((c * car.X) + (s * car.Y), (c * car.Y) - (s * car.X), car.Z);
        (s, c) = Math.SinCos(Tipped);
        return new Direction(car.X, (c * car.Y) + (s * car.Z), (c * car.Z) - (s * car.Y));
    }

    private double Chance(int i, int lane) => SplitMix.Normals(Seed + (ulong)lane, 2UL * (ulong)i).First;
}
