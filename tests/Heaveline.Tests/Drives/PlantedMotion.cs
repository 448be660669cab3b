using System.Collections.Immutable;
using Heaveline.Drives;
using Heaveline.Numerics;

namespace Heaveline.Tests.Drives;

/// <summary>
/// How a car moves, on one even grid, and what a phone on its floor writes down of it: turned, tipped, with noise, jitter and gains from a seed.
/// </summary>
internal sealed record PlantedMotion
{
    public const double Gravity = 9.80665;

    /// <summary>Time from one sample of the motion to the next, s.</summary>
    public required double Step { get; init; }

    /// <summary>Speed, m/s.</summary>
    public required double[] Speed { get; init; }

    /// <summary>Yaw rate, rad/s.</summary>
    public required double[] Yaw { get; init; }

    /// <summary>Vertical acceleration where the phone lies, m/s².</summary>
    public required double[] Vertical { get; init; }

    /// <summary>Pitch, rad, and pitch rate, rad/s.</summary>
    public required double[] Pitch { get; init; }

    public required double[] PitchRate { get; init; }

    public double[]? RollRate { get; init; }

    public double Rate { get; init; } = 100.0;

    public double Jitter { get; init; } = 1e-3;

    public double Noise { get; init; } = 0.05;

    public double TurnNoise { get; init; } = 0.004;

    public double Gain { get; init; } = 1.01;

    public double TurnGain { get; init; } = 1.0;

    public double Turned { get; init; } = 0.65;

    public double Tipped { get; init; } = 0.14;

    public double Hum { get; init; } = 0.15;

    public double Late { get; init; } = 0.6;

    /// <summary>What is added to every stamp, s.</summary>
    public double Offset { get; init; }

    public bool HasSpeed { get; init; } = true;

    public ulong Seed { get; init; } = 1;

    private double End => Step * (Vertical.Length - 2);

    public double[] Instants => [.. Enumerable.Range(0, (int)(End * Rate) - 2).Select(i => ((i + 1.0) / Rate) + (Jitter * Chance(i, 0)))];

    public Log Log
    {
        get
        {
            var times = Instants;
            SensorTrack[] tracks =
            [
                Track(SensorKind.Acceleration, times, Phone(times, Force, Noise, 10)),
                Track(SensorKind.TurnRate, times, Phone(times, Turn, TurnNoise, 20)),
            ];
            double[] fixes = [.. Enumerable.Range(0, (int)End).Select(i => (double)i)];
            double[] speeds = [.. fixes.Select(t => At(Speed, Math.Max(t - Late, 0.0)))];
            return new Log { Tracks = [.. tracks, .. HasSpeed ? [Track(SensorKind.Speed, fixes, [speeds])] : Array.Empty<SensorTrack>()] };
        }
    }

    public double At(double[] values, double t)
    {
        var place = Math.Clamp(t / Step, 0.0, values.Length - 1.001);
        var k = (int)place;
        return values[k] + ((place - k) * (values[k + 1] - values[k]));
    }

    private SensorTrack Track(SensorKind kind, double[] times, double[][] values) => new()
    {
        Kind = kind,
        File = "planted.csv",
        UnitSaid = kind == SensorKind.Speed ? "m/s" : "",
        UnitTaken = kind == SensorKind.Speed ? "m/s" : "SI",
        Times = [.. times.Select(t => t + Offset)],
        Values = [.. values.Select(v => v.ToImmutableArray())],
    };

    private Direction Force(double t)
    {
        var growth = (At(Speed, t + 0.05) - At(Speed, Math.Max(t - 0.05, 0.0))) / 0.1;
        return new Direction(
            growth - (Gravity * At(Pitch, t)),
            At(Speed, t) * At(Yaw, t),
            Gravity + At(Vertical, t) + (Hum * Math.Sin(2.0 * Math.PI * 31.0 * t))) * (1.0 / Gain);
    }

    private Direction Turn(double t) =>
        new Direction((RollRate is { } roll ? At(roll, t) : 0.0) + 0.003, At(PitchRate, t) + 0.003, At(Yaw, t)) * TurnGain;

    private double[][] Phone(double[] times, Func<double, Direction> ofCar, double noise, int lane)
    {
        var result = new[] { new double[times.Length], new double[times.Length], new double[times.Length] };
        var ((s1, c1), (s2, c2)) = (Math.SinCos(Turned), Math.SinCos(Tipped));
        for (var i = 0; i < times.Length; i++)
        {
            var car = ofCar(times[i]);
            car = new Direction((c1 * car.X) + (s1 * car.Y), (c1 * car.Y) - (s1 * car.X), car.Z);
            result[0][i] = car.X + (noise * Chance(i, lane));
            result[1][i] = (c2 * car.Y) + (s2 * car.Z) + (noise * Chance(i, lane + 1));
            result[2][i] = (c2 * car.Z) - (s2 * car.Y) + (noise * Chance(i, lane + 2));
        }

        return result;
    }

    private double Chance(int i, int lane) => SplitMix.Normals(Seed + (ulong)lane, 2UL * (ulong)i).First;
}
