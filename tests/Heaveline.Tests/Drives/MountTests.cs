using System.Collections.Immutable;
using Heaveline.Drives;
using Heaveline.Quantities;

namespace Heaveline.Tests.Drives;

public class MountTests
{
    private static double Degrees(double angle) => In.Degrees.Of(angle);

    [Theory]
    [InlineData(0.0, 0.0)]
    [InlineData(0.65, 0.14)]
    [InlineData(-2.8, 1.2)]
    [InlineData(1.6, 3.1)]
    public void Up_and_forward_are_found_however_the_phone_lies(double turned, double tipped)
    {
        var planted = new PlantedDrive { Turned = turned, Tipped = tipped };
        var mount = Drive.Of(planted.Log).Mount;
        var (forward, up) = planted.Axes;
        Assert.InRange(Degrees(mount.Up.AngleTo(up)), 0.0, 1.5);
        Assert.InRange(Degrees(mount.Forward!.Value.AngleTo(forward)), 0.0, 1.5);
        Assert.InRange(Degrees(mount.HalfWidth!.Value), 0.0, 3.0);
        Assert.InRange(mount.SpeedLag!.Value, 0.45, 0.75);
        Assert.InRange(mount.Braking!.Value, 0.9, 1.1);
        Assert.InRange(mount.Turning!.Value, 0.9, 1.1);
        Assert.False(mount.IsHandTurned);
        Assert.Empty(mount.Moves);
    }

    [Fact]
    public void However_the_phone_lies_the_car_moves_the_same()
    {
        var (flat, tipped) = (
            new PlantedDrive { Noise = 0.0, Turned = 0.0, Tipped = 0.0 }, new PlantedDrive { Noise = 0.0, Turned = 2.2, Tipped = -1.1 });
        var (one, other) = (Drive.Of(flat.Log), Drive.Of(tipped.Log));
        Same(one.Vertical, other.Vertical, 1e-6);
        Same(one.Forward, other.Forward, 1e-6);
        Same(one.PitchRate, other.PitchRate, 1e-6);
        Assert.Equal(one.Mount.HalfWidth!.Value, other.Mount.HalfWidth!.Value, 6);

        static void Same(IReadOnlyList<double> one, IReadOnlyList<double> other, double most) =>
            Assert.True(one.Zip(other).Max(p => Math.Abs(p.First - p.Second)) < most);
    }

    [Fact]
    public void Gravity_puts_the_accelerometers_scale_right() =>
        Assert.Equal(0.966, Drive.Of(new PlantedDrive { Gain = 0.966 }.Log).Mount.Gain, 2);

    [Fact]
    public void Vertical_and_pitch_are_those_that_were_planted()
    {
        var drive = Drive.Of(new PlantedDrive { Noise = 0.0, Jitter = 0.0 }.Log);
        var (worst, pitch) = (0.0, 0.0);
        for (var i = 100; i < drive.Vertical.Length - 100; i++)
        {
            worst = Math.Max(worst, Math.Abs(drive.Vertical[i] - PlantedDrive.Heave(drive.Time(i))));
            pitch = Math.Max(pitch, Math.Abs(drive.PitchRate[i] - PlantedDrive.Pitch(drive.Time(i))));
        }

        // A mean that is not quite up lets a hundredth of braking and turning in; the filter takes 2 % off at 11 Hz.
        Assert.InRange(worst, 0.0, 0.12);
        Assert.InRange(pitch, 0.0, 3e-3);
    }

    [Fact]
    public void An_accelerometer_that_reads_minus_one_g_gives_heave_and_pitch_of_the_right_sign()
    {
        var planted = new PlantedDrive();
        var log = planted.Log;
        var flipped = log with
        {
            Tracks =
            [
                log.Tracks[0] with { Values = [.. log.Tracks[0].Values.Select(v => v.Select(a => -a).ToImmutableArray())] },
                .. log.Tracks.Skip(1),
            ],
        };
        var (one, other) = (Drive.Of(log), Drive.Of(flipped));
        Assert.False(other.Mount.IsHandTurned);
        Assert.True(one.Vertical.Zip(other.Vertical).Max(p => Math.Abs(p.First - p.Second)) < 1e-6);
        Assert.True(one.PitchRate.Zip(other.PitchRate).Max(p => Math.Abs(p.First - p.Second)) < 1e-3);
    }

    [Fact]
    public void A_gyro_of_the_other_hand_is_turned_round()
    {
        var log = new PlantedDrive().Log;
        var turned = log with
        {
            Tracks =
            [
                log.Tracks[0],
                log.Tracks[1] with { Values = [.. log.Tracks[1].Values.Select(v => v.Select(a => -a).ToImmutableArray())] },
                log.Tracks[2],
            ],
        };
        var (one, other) = (Drive.Of(log), Drive.Of(turned));
        Assert.True(other.Mount.IsHandTurned);
        Assert.Contains(other.Story, s => s.About == "hand");
        Assert.True(one.PitchRate.Zip(other.PitchRate).Max(p => Math.Abs(p.First - p.Second)) < 1e-6);
    }

    [Theory]
    [InlineData(3.6, "km/h")]
    [InlineData(1.0 / 0.44704, "mph")]
    public void A_speed_without_a_unit_is_read_in_the_one_that_agrees_with_braking(double factor, string unit)
    {
        var log = new PlantedDrive().Log;
        var speed = log.Tracks[2] with { UnitSaid = "", Values = [[.. log.Tracks[2].Values[0].Select(v => v * factor)]] };
        var drive = Drive.Of(log with { Tracks = [.. log.Tracks.Take(2), speed] });
        Assert.Contains(drive.Story, s => s.About == "speed-unit" && s.Text.Contains(unit, StringComparison.Ordinal));
        Assert.True(drive.Speed.Zip(Drive.Of(log).Speed).Max(p => Math.Abs(p.First - p.Second)) < 1e-6);
    }

    [Theory]
    [InlineData(3.0)]
    [InlineData(12.0)]
    public void A_slip_of_the_phone_cuts_the_drive(double degrees)
    {
        var drive = Drive.Of(new PlantedDrive { Slip = degrees * Math.PI / 180.0, Length = 120.0 }.Log);
        Assert.InRange(Assert.Single(drive.Mount.Moves), 59.5, 60.5);
        Assert.InRange(drive.Length, 50.0, 62.0);
        Assert.Contains(drive.Story, s => s is { About: "moved", IsDoubtful: true });
    }

    [Fact]
    public void Without_a_gyro_or_a_speed_there_is_no_forward_and_it_is_said_why()
    {
        var log = new PlantedDrive().Log;
        var noGyro = Drive.Of(log with { Tracks = [log.Tracks[0], log.Tracks[2]] });
        var noSpeed = Drive.Of(log with { Tracks = [.. log.Tracks.Take(2)] });
        Assert.Null(noGyro.Mount.Forward);
        Assert.Contains("turn rate", noGyro.Mount.NoForward, StringComparison.Ordinal);
        Assert.Empty(noGyro.PitchRate);
        Assert.Null(noSpeed.Mount.Forward);
        Assert.Contains("speed", noSpeed.Mount.NoForward, StringComparison.Ordinal);
        Assert.NotEmpty(noSpeed.YawRate);
    }

    [Fact]
    public void Acceleration_without_gravity_and_gravity_beside_it_are_added()
    {
        var planted = new PlantedDrive();
        var log = planted.Log;
        var up = planted.Axes.Up * PlantedDrive.Gravity;
        double[] gravity = [up.X, up.Y, up.Z];
        var free = log.Tracks[0] with
        {
            Kind = SensorKind.AccelerationWithoutGravity,
            Values = [.. log.Tracks[0].Values.Select((v, k) => v.Select(a => a - gravity[k]).ToImmutableArray())],
        };
        var beside = log.Tracks[0] with
        {
            Kind = SensorKind.Gravity,
            Values = [.. log.Tracks[0].Values.Select((v, k) => v.Select(_ => gravity[k]).ToImmutableArray())],
        };
        var one = Drive.Of(log);
        var other = Drive.Of(log with { Tracks = [free, beside, .. log.Tracks.Skip(1)] });
        Assert.True(one.Vertical.Zip(other.Vertical).Max(p => Math.Abs(p.First - p.Second)) < 1e-6);
        Assert.Throws<RefusedValueException>(() => Drive.Of(log with { Tracks = [free, .. log.Tracks.Skip(1)] }));
    }

    [Fact]
    public void A_log_of_a_few_seconds_is_refused() => Assert.Throws<RefusedValueException>(() => Drive.Of(new PlantedDrive { Length = 6.0 }.Log));

    [Fact]
    public void A_sample_that_no_sensor_can_mean_is_refused_with_its_instant()
    {
        var log = new PlantedDrive { Length = 20.0 }.Log;
        var track = log.Tracks[0];
        var endless = track with { Values = [track.Values[0].SetItem(500, 1e200), track.Values[1], track.Values[2]] };
        var refused = Assert.Throws<RefusedValueException>(() => Drive.Of(log with { Tracks = [endless, .. log.Tracks.Skip(1)] }));
        Assert.Contains("5.00 s after the start", refused.Message, StringComparison.Ordinal);
    }

    // The phone turns by so much against the car, so forward turns the other way against the phone; the gyro tells when.
    [Theory]
    [InlineData(25.0)]
    [InlineData(-40.0)]
    [InlineData(90.0)]
    public void A_slide_round_in_place_cuts_the_drive(double degrees)
    {
        var drive = Drive.Of(new PlantedDrive { Slide = degrees * Math.PI / 180.0, Length = 240.0 }.Log);
        var move = Assert.Single(drive.Mount.Moves);
        Assert.Equal(120.0, move, 1.0);
        Assert.Contains(drive.Story, s => s.About == "turned-round");
        Assert.True(drive.Length < 125.0);
    }

    [Fact]
    public void A_phone_that_lies_still_is_not_said_to_slide()
    {
        for (ulong seed = 1; seed <= 12; seed++)
        {
            var drive = Drive.Of(new PlantedDrive { Seed = seed, Length = seed % 2 == 0 ? 90.0 : 240.0, Bends = 0.3 + (0.2 * (seed % 4)) }.Log);
            Assert.DoesNotContain(drive.Story, s => s.About == "turned-round");
        }
    }
}
