using System.Collections.Immutable;
using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// What a phone at a place of a car would write of a computed motion: specific force with gravity in it and turn rate along its own axes, speed by
/// the second. Between the samples of the run it reads straight lines, and nothing keeps what swings faster than half its rate out of its samples.
/// </summary>
public static class PhoneLog
{
    private const string File = "planted log";

    // Which chance: three axes of noise each of both sensors, the stamps, the fixes.
    private const ulong Places = 151;
    private const ulong Stamps = 101, Forces = 111, Turns = 121, Fixes = 131, Engine = 141;

    // In the open sea, where nobody drives, rad.
    private static readonly GroundPlace Sea = new(0.5 / In.Degrees.Factor, -30.0 / In.Degrees.Factor, double.NaN, 0.0);

    /// <summary>The log of a driven car.</summary>
    /// <param name="car">The car.</param>
    /// <param name="pose">How the phone lies.</param>
    /// <param name="faults">What it does to what it feels.</param>
    /// <param name="place">Metres east and north of the start at an instant, s; null: as speed and yaw rate lead, eastwards at first.</param>
    public static Log Of(DrivenCar car, PhonePose pose, PhoneFaults faults, Func<double, (double East, double North)>? place = null)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(pose);
        ArgumentNullException.ThrowIfNull(faults);
        var line = car.Line;
        return new Writing(car.Model, car.Trace, 0.0, car.SampleStep, car.Count, line.Speed, line.SpeedRate, line.YawRate, pose, faults)
            .Log(faults.PositionRate > 0.0 ? place ?? DrivenWay.Of(line) : null);
    }

    /// <summary>The log of a pass at its constant speed, times as those of the pass.</summary>
    /// <param name="pass">The pass.</param>
    /// <param name="pose">How the phone lies.</param>
    /// <param name="faults">What it does to what it feels.</param>
    public static Log Of(Pass pass, PhonePose pose, PhoneFaults faults)
    {
        ArgumentNullException.ThrowIfNull(pass);
        ArgumentNullException.ThrowIfNull(pose);
        ArgumentNullException.ThrowIfNull(faults);
        return new Writing(
            pass.Model, pass.Trace, pass.Start, pass.SampleStep, pass.Count, _ => pass.Speed, _ => 0.0, _ => 0.0, pose, faults)
            .Log(t => (pass.Speed * (t - pass.Start), 0.0));
    }

    private sealed class Writing(
        RideModel model,
        Func<RideSignal, ImmutableArray<double>> trace,
        double start,
        double step,
        int count,
        Func<double, double> speed,
        Func<double, double> speedRate,
        Func<double, double> yawRate,
        PhonePose pose,
        PhoneFaults faults)
    {
        private readonly ImmutableArray<double> vertical = trace(RideSignal.VerticalAcceleration(model, pose.BehindFrontAxle, pose.Left));
        private readonly ImmutableArray<double> pitch = trace(RideSignal.Pitch);
        private readonly ImmutableArray<double> roll = trace(RideSignal.Roll);
        private readonly ImmutableArray<double> pitchRate = trace(RideSignal.PitchRate);
        private readonly ImmutableArray<double> rollRate = trace(RideSignal.RollRate);
        private readonly ImmutableArray<double> pitchAcceleration = trace(RideSignal.PitchAcceleration);
        private readonly ImmutableArray<double> rollAcceleration = trace(RideSignal.RollAcceleration);
        private readonly double engine = 2.0 * Math.PI * SplitMix.Uniform(faults.Seed + Engine, 0);

        private double End => start + ((count - 1) * step);

        public Log Log(Func<double, (double East, double North)>? place)
        {
            double[] times = [.. Stamped()];
            var tracks = ImmutableArray.CreateBuilder<SensorTrack>();
            tracks.Add(Track(SensorKind.Acceleration, "m/s²", times, Axes(times, Force, faults.ForceNoise, Forces, faults.ForceStep)));
            if (faults.HasGyro)
            {
                tracks.Add(Track(SensorKind.TurnRate, "rad/s", times, Axes(times, Turn, faults.TurnNoise, Turns, 0.0)));
            }

            if (faults.SpeedRate > 0.0)
            {
                var fixes = Instants(faults.SpeedRate);
                tracks.Add(Track(SensorKind.Speed, "m/s", fixes, [[.. fixes.Select(Fix)]]));
            }

            if (faults.PositionRate > 0.0 && place is not null)
            {
                var fixes = Instants(faults.PositionRate);
                tracks.Add(Track(SensorKind.Position, "°", fixes, Positions(fixes, place)));
            }

            return new Log { Tracks = tracks.ToImmutable() };
        }

        private static SensorTrack Track(SensorKind kind, string unit, double[] times, double[][] values) => new()
        {
            Kind = kind,
            File = File,
            UnitTaken = unit,
            Times = [.. times],
            Values = [.. values.Select(v => v.ToImmutableArray())],
        };

        private double Chance(ulong lane, int i) => SplitMix.Normals(faults.Seed + lane, 2UL * (ulong)i).First;

        private IEnumerable<double> Stamped()
        {
            // Three deviations at most, and never past the neighbour.
            var most = Math.Min(3.0 * faults.Jitter, 0.49 / faults.Rate);
            var samples = (int)Math.Floor((End - start - (2.0 * most)) * faults.Rate) + 1;
            for (var i = 0; i < samples; i++)
            {
                var t = start + most + (i / faults.Rate);
                t += faults.Jitter > 0.0 ? Math.Clamp(faults.Jitter * Chance(Stamps, i), -most, most) : 0.0;
                if (!faults.Gaps.Any(gap => t > gap.From && t < gap.To))
                {
                    yield return t;
                }
            }
        }

        private double[] Instants(double rate) => [.. Enumerable.Range(0, (int)((End - start) * rate) + 1).Select(i => start + (i / rate))];

        // Latitude, longitude, and the radius that the phone says.
        private double[][] Positions(double[] fixes, Func<double, (double East, double North)> place)
        {
            var result = new[] { new double[fixes.Length], new double[fixes.Length], new double[fixes.Length] };
            for (var i = 0; i < fixes.Length; i++)
            {
                var (east, north) = place(Math.Max(fixes[i] - faults.SpeedLag, start));
                east += faults.PositionNoise * Chance(Places, i);
                north += faults.PositionNoise * Chance(Places + 1, i);
                (result[0][i], result[1][i]) = Sea.Beyond(east, north);
                result[2][i] = GroundPlace.TwoOfThree * faults.PositionNoise;
            }

            return result;
        }

        private double Fix(double time, int place)
        {
            var at = Math.Max(time - faults.SpeedLag, start);
            return Math.Max(0.0, speed(at) + (faults.SpeedNoise * Chance(Fixes, place)));
        }

        private double[][] Axes(double[] times, Func<double, Direction> felt, double noise, ulong lane, double counted)
        {
            var result = new[] { new double[times.Length], new double[times.Length], new double[times.Length] };
            for (var i = 0; i < times.Length; i++)
            {
                var at = felt(times[i]);
                for (var k = 0; k < 3; k++)
                {
                    var value = k switch { 0 => at.X, 1 => at.Y, _ => at.Z } + (noise > 0.0 ? noise * Chance(lane + (ulong)k, i) : 0.0);
                    result[k][i] = counted > 0.0 ? counted * Math.Round(value / counted) : value;
                }
            }

            return result;
        }

        // Specific force of the place in level axes, turned into those of the body, nose down and right side down, then into the phone's.
        private Direction Force(double t)
        {
            var up = At(vertical, t) + Gravity.Standard + (faults.EngineSize * Math.Sin((2.0 * Math.PI * faults.EngineFrequency * t) + engine));
            var forward = speedRate(t) + (pose.Up * At(pitchAcceleration, t));
            var left = (speed(t) * yawRate(t)) - (pose.Up * At(rollAcceleration, t));
            var (s, c) = Math.SinCos(At(pitch, t));
            (forward, up) = ((c * forward) - (s * up), (s * forward) + (c * up));
            (s, c) = Math.SinCos(At(roll, t));
            (left, up) = ((c * left) + (s * up), (c * up) - (s * left));
            var offset = new Direction(faults.ForceOffset, faults.ForceOffset, faults.ForceOffset);
            return (InPhone(t, new Direction(forward, left, up)) * faults.ForceGain) + offset;
        }

        private Direction Turn(double t)
        {
            var slipping = faults.Slip is { } slip && t > slip.At && t < slip.At + PhoneSlip.Lasts ? slip.Angle / PhoneSlip.Lasts : 0.0;
            var offset = new Direction(faults.TurnOffset, faults.TurnOffset, faults.TurnOffset);
            return (InPhone(t, new Direction(At(rollRate, t) + slipping, At(pitchRate, t), yawRate(t))) * faults.TurnGain) + offset;
        }

        private Direction InPhone(double t, Direction car)
        {
            var slipped = faults.Slip is { } slip ? slip.Angle * Math.Clamp((t - slip.At) / PhoneSlip.Lasts, 0.0, 1.0) : 0.0;
            var (s, c) = Math.SinCos(slipped);
            car = new Direction(car.X, (c * car.Y) + (s * car.Z), (c * car.Z) - (s * car.Y));
            (s, c) = Math.SinCos(pose.Turned);
            car = new Direction((c * car.X) + (s * car.Y), (c * car.Y) - (s * car.X), car.Z);
            (s, c) = Math.SinCos(pose.Tipped);
            return new Direction(car.X, (c * car.Y) + (s * car.Z), (c * car.Z) - (s * car.Y));
        }

        private double At(ImmutableArray<double> values, double t)
        {
            var at = Math.Clamp((t - start) / step, 0.0, count - 1.0);
            var k = Math.Min((int)at, count - 2);
            return values[k] + ((at - k) * (values[k + 1] - values[k]));
        }
    }
}
