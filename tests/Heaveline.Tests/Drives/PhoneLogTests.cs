using Heaveline.Drives;
using Heaveline.Drives.Recovery;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Tests.Drives.Lanes;

namespace Heaveline.Tests.Drives;

public class PhoneLogTests
{
    private const double Gravity = PlantedDrive.Gravity;
    private static readonly RideModel Fern = Loaded();
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.06), Length = new(3.7) });

    [Fact]
    public void A_car_driven_at_a_constant_speed_moves_as_its_pass()
    {
        const double speed = 8.0;
        var pass = Pass.Of(Fern, Hump, speed, new PassOptions { Method = FixedStep.Once, Record = new PassRecord { SettlingTime = 2.0 } });
        var ahead = Shifted(Hump, 8.0);
        var driven = DrivenCar.Of(Fern, ahead, Constant(speed, 5.0));
        var (pitch, heave) = (driven.Trace(RideSignal.Pitch), driven.Trace(RideSignal.HeaveAcceleration));
        var shift = (int)Math.Round((8.0 / speed / driven.SampleStep) + (pass.Start / driven.SampleStep));
        Assert.True(pass.Pitch.Max(Math.Abs) > 0.01);
        for (var k = 0; k < 900; k++)
        {
            Assert.Equal(pass.Pitch[k], pitch[k + shift], 1e-6);
            Assert.Equal(pass.HeaveAcceleration[k], heave[k + shift], 1e-3);
        }
    }

    [Fact]
    public void Distance_is_the_integral_of_the_speed_and_the_speed_that_of_its_rate()
    {
        var line = new DriveLine { Points = [new(0, 0), new(3, 0), new(8, 12), new(10, 12), new(14, 5, 0.3), new(20, 0)] };
        var (distance, speed) = (0.0, 0.0);
        const double step = 1e-3;
        for (var k = 0; k < 20_000; k++)
        {
            var middle = (k + 0.5) * step;
            distance += step * line.Speed(middle);
            speed += step * line.SpeedRate(middle);
            if (k % 1000 == 999)
            {
                Assert.Equal(line.Distance((k + 1) * step), distance, 1e-4);
                Assert.Equal(line.Speed((k + 1) * step), speed, 1e-4);
            }
        }

        Assert.Equal(7.0, line.TimeAt(line.Distance(7.0)), 1e-9);
        Assert.Equal(0.15, line.YawRate(12.0), 1e-12);
    }

    [Fact]
    public void A_phone_that_stands_feels_gravity_along_up_whatever_way_it_lies()
    {
        var pose = new PhonePose { Turned = 1.1, Tipped = -0.4 };
        var log = PhoneLog.Of(DrivenCar.Of(Fern, Road.Flat, Constant(0.0, 12.0)), pose, PhoneFaults.None);
        var force = log.Of(SensorKind.Acceleration)!;
        for (var i = 0; i < force.Times.Length; i++)
        {
            Assert.Equal(0.0, force.Values[0][i], 1e-9);
            Assert.Equal(Gravity * Math.Sin(-0.4), force.Values[1][i], 1e-9);
            Assert.Equal(Gravity * Math.Cos(-0.4), force.Values[2][i], 1e-9);
        }
    }

    [Fact]
    public void A_phone_along_the_car_writes_what_the_pass_says_of_its_place()
    {
        var pass = Pass.Of(Fern, Hump, 8.0, new PassOptions { Record = new PassRecord { SamplesPerSecond = 400.0, SettlingTime = 2.0 } });
        var pose = new PhonePose { BehindFrontAxle = 2.0, Left = 0.3 };
        var log = PhoneLog.Of(pass, pose, PhoneFaults.None with { Rate = 400.0 });
        var (force, turn) = (log.Of(SensorKind.Acceleration)!, log.Of(SensorKind.TurnRate)!);
        var vertical = pass.VerticalAcceleration(2.0, 0.3);
        Assert.True(vertical.Max(Math.Abs) > 1.0);
        for (var i = 0; i < force.Times.Length; i++)
        {
            Assert.Equal(pass.Time[i], force.Times[i], 1e-9);
            // Up in the body, tilted by at most 3 degrees: 1 − cos of it is 0.14 %.
            Assert.Equal(vertical[i] + Gravity, force.Values[2][i], 0.002 * Gravity);
            Assert.Equal(-Math.Sin(pass.Pitch[i]) * (vertical[i] + Gravity), force.Values[0][i], 1e-9);
            Assert.Equal(pass.PitchRate[i], turn.Values[1][i], 1e-12);
        }
    }

    [Fact]
    public void Braking_is_felt_backwards_and_a_bend_to_the_left_to_the_left()
    {
        var line = new DriveLine { Points = [new(0, 10), new(4, 10), new(8, 4), new(12, 4), new(14, 4, 0.4), new(18, 4, 0.4)] };
        var log = PhoneLog.Of(DrivenCar.Of(Fern, Road.Flat, line), new PhonePose(), PhoneFaults.None);
        var force = log.Of(SensorKind.Acceleration)!;
        Assert.Equal(-6.0 / 4.0 * 1.5, force.Values[0][600], 1e-2);
        Assert.Equal(4.0 * 0.4, force.Values[1][1600], 1e-3);
        Assert.Equal(0.4, log.Of(SensorKind.TurnRate)!.Values[2][1600], 1e-9);
        Assert.Equal(4.0, log.Of(SensorKind.Speed)!.Values[0][10], 1e-9);
    }

    [Fact]
    public void The_faults_are_those_asked_for_and_come_again_with_the_seed()
    {
        var car = DrivenCar.Of(Fern, Road.Flat, Constant(0.0, 60.0));
        var faults = new PhoneFaults
        {
            Rate = 50.0,
            Jitter = 2e-3,
            ForceGain = 1.02,
            ForceNoise = 0.05,
            TurnNoise = 0.004,
            TurnOffset = 0.01,
            ForceStep = 0.0049,
            EngineSize = 0.2,
            EngineFrequency = 12.0,
            Gaps = [new(20.0, 21.0)],
            Seed = 5,
        };
        var log = PhoneLog.Of(car, new PhonePose(), faults);
        var (force, turn) = (log.Of(SensorKind.Acceleration)!, log.Of(SensorKind.TurnRate)!);
        var steps = force.Times.Zip(force.Times.Skip(1), (a, b) => b - a).ToArray();
        Assert.Equal(1.0, steps.Max(), 0.05);
        Assert.Equal(0.02, steps.Order().ElementAt(steps.Length / 2), 2e-4);
        Assert.Equal(2e-3 * Math.Sqrt(2.0), Deviation(steps.Where(s => s < 0.5)), 3e-4);
        Assert.Equal(1.02 * Gravity, force.Values[2].Average(), 0.02);
        Assert.Equal(Math.Sqrt((0.05 * 0.05) + (0.5 * 0.204 * 0.204)), Deviation(force.Values[2]), 0.01);
        Assert.All(force.Values[0], v => Assert.Equal(0.0, Math.IEEERemainder(v, 0.0049), 1e-9));
        Assert.Equal(0.01, turn.Values[0].Average(), 5e-4);
        Assert.Equal(0.004, Deviation(turn.Values[0]), 4e-4);
        Assert.Equal(force.Values[1], PhoneLog.Of(car, new PhonePose(), faults).Of(SensorKind.Acceleration)!.Values[1]);
        Assert.NotEqual(force.Values[1], PhoneLog.Of(car, new PhonePose(), faults with { Seed = 6 }).Of(SensorKind.Acceleration)!.Values[1]);
    }

    [Fact]
    public void Positions_lie_where_speed_and_yaw_lead_with_the_noise_that_is_said()
    {
        // A quarter of a circle at 10 m/s and 0.1 rad/s has a radius of 100 m; before and after it straight on.
        var quarter = 0.5 * Math.PI / 0.1;
        var line = new DriveLine
        {
            Points =
            [
                new(0.0, 10.0), new(2.0, 10.0), new(2.001, 10.0, 0.1), new(2.0 + quarter, 10.0, 0.1), new(2.001 + quarter, 10.0), new(40.0, 10.0),
            ],
        };
        var driven = DrivenCar.Of(Fern, Road.Flat, line);
        var plain = PhoneLog.Of(driven, new PhonePose(), PhoneFaults.None with { PositionRate = 1.0 }).Of(SensorKind.Position)!;
        var start = new GroundPlace(plain.Values[0][0], plain.Values[1][0], 0.0, 0.0);
        var end = (int)Math.Ceiling(2.0 + quarter) + 1;
        var (east, north) = (120.0, 100.0 + (10.0 * (end - 2.0 - quarter)));
        Assert.Equal(Math.Sqrt((east * east) + (north * north)), start.DistanceTo(start with
        {
            Latitude = plain.Values[0][end],
            Longitude = plain.Values[1][end],
        }), 0.05);
        var noisy = PhoneLog.Of(driven, new PhonePose(), PhoneFaults.None with { PositionRate = 5.0, PositionNoise = 3.0 }).Of(SensorKind.Position)!;
        var same = PhoneLog.Of(driven, new PhonePose(), PhoneFaults.None with { PositionRate = 5.0 }).Of(SensorKind.Position)!;
        double[] off = [.. noisy.Values[0].Zip(same.Values[0], (a, b) => GroundPlace.EarthRadius * (a - b))];
        Assert.Equal(3.0, Math.Sqrt(off.Average(o => o * o)), 0.5);
        // Two of three lie within the radius that is said.
        Assert.Equal(3.0 * Math.Sqrt(2.0 * Math.Log(1.0 / 0.32)), noisy.Values[2][0], 1e-9);
        Assert.Null(PhoneLog.Of(driven, new PhonePose(), PhoneFaults.None).Of(SensorKind.Position));
    }

    [Fact]
    public void The_reader_finds_how_the_planted_phone_lies_and_how_late_its_speed_is()
    {
        var drive = Drive.Of(LarchLane.After.Log);
        var truth = LarchLane.Pose;
        var (s, c) = Math.SinCos(truth.Turned);
        var (st, ct) = Math.SinCos(truth.Tipped);
        var forward = new Direction(c, -s * ct, s * st);
        var up = new Direction(0.0, st, ct);
        Assert.InRange(drive.Mount.Up.AngleTo(up) * 180.0 / Math.PI, 0.0, 0.5);
        Assert.InRange(drive.Mount.Forward!.Value.AngleTo(forward) * 180.0 / Math.PI, 0.0, 3.0);
        Assert.InRange(drive.Mount.Gain, 0.995 / 0.985, 1.005 / 0.985);
    }

    private static double Deviation(IEnumerable<double> values)
    {
        var all = values.ToArray();
        var mean = all.Average();
        return Math.Sqrt(all.Average(v => (v - mean) * (v - mean)));
    }

    private static DriveLine Constant(double speed, double length) => new() { Points = [new(0.0, speed), new(length, speed)] };

    private static Road Shifted(Road road, double by) =>
        Road.From(new Versine { Height = new(1e-9), Length = new(0.1) }).Then(road, new(by - 0.1));

    private static RideModel Loaded()
    {
        var car = LarchLane.Fern("fern-saloon.yaml");
        return RideModel.Of(car, car.LoadStates.Single(l => l.Name == LarchLane.Load));
    }
}
