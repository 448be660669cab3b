using System.Collections.Immutable;
using Heaveline.Drives;
using Heaveline.Quantities;

namespace Heaveline.Tests.Drives;

/// <summary>What forward rests on: whether speed and turn rate are of the drive, and what tells it where there is no speed.</summary>
public class ForwardWitnessTests
{
    private static bool Says(Drive drive, string about) => drive.Story.Any(s => s.About == about && s.IsDoubtful);

    private static Log With(Log log, SensorTrack track) => log with { Tracks = [.. log.Tracks.Select(t => t.Kind == track.Kind ? track : t)] };

    private static Log WithoutSpeed(Log log) => log with { Tracks = [.. log.Tracks.Where(t => t.Kind != SensorKind.Speed)] };

    private static Log Exchanged(Log log, int one, int other, int last)
    {
        var turn = log.Of(SensorKind.TurnRate)!;
        return With(log, turn with { Values = [turn.Values[one], turn.Values[other], turn.Values[last]] });
    }

    [Fact]
    public void The_speed_of_another_drive_is_noticed_and_not_used()
    {
        var (noticed, own) = (0, 0);
        for (ulong seed = 1; seed <= 8; seed++)
        {
            var (log, other) = (new PlantedJourney(seed, 300.0, 0.02).Log(), new PlantedJourney(seed + 1000, 300.0, 0.02).Log());
            var drive = Drive.Of(With(log, other.Of(SensorKind.Speed)!));
            noticed += Says(drive, "speed-fits") && drive.Speed.IsEmpty && drive.Mount.SpeedLag is null ? 1 : 0;
            own += Says(Drive.Of(log), "speed-fits") ? 1 : 0;
        }

        // In 5 minutes 92 of 100 are noticed (bench "forward" draws the same drives).
        Assert.InRange(noticed, 6, 8);
        Assert.Equal(0, own);
    }

    [Fact]
    public void A_speed_that_the_user_says_is_right_is_used()
    {
        var (log, other) = (new PlantedJourney(1, 300.0, 0.02).Log(), new PlantedJourney(1001, 300.0, 0.02).Log());
        var foreign = With(log, other.Of(SensorKind.Speed)!);
        Assert.Empty(Drive.Of(foreign).Speed);
        Assert.NotEmpty(Drive.Of(foreign with { Overrulings = [Overruling.Of("speed: m/s", out _)!] }).Speed);
    }

    [Theory]
    [InlineData(0, 2, 1)]
    [InlineData(2, 1, 0)]
    [InlineData(1, 2, 0)]
    public void Exchanged_axes_of_the_gyro_leave_no_pitch_and_are_told(int one, int other, int last)
    {
        for (ulong seed = 1; seed <= 4; seed++)
        {
            var log = new PlantedJourney(seed, 120.0, 0.02).Log();
            Assert.False(Says(Drive.Of(log), "gyro-axes"));
            var drive = Drive.Of(Exchanged(log, one, other, last));
            Assert.True(Says(drive, "gyro-axes"));
            Assert.Empty(drive.PitchRate);
            Assert.Equal(TrustLevel.None, Trust.Of(drive).For(TrustUse.Car).Level);
            Assert.Contains("axes are exchanged", drive.Mount.NoForward, StringComparison.Ordinal);
        }
    }

    private static PlantedMotion Bumpy(double roughness, ulong seed) => new PlantedRoad
    {
        Bumps = [.. Enumerable.Range(0, 6).Select(k => (PlantedBump.Round, 4.5 + (0.9 * k)))], Roughness = roughness, Seed = seed,
    }.Driven().Motion;

    // Both level axes of the gyro change places: yaw stays, and roll is taken for pitch.
    [Fact]
    public void Exchanged_level_axes_of_the_gyro_are_seen_by_the_bumps()
    {
        var motion = Bumpy(4e-6, 1) with { Turned = 0.0, Tipped = 0.0 };
        var drive = Drive.Of(motion.Log);
        Assert.Null(drive.Mount.BumpsAside);
        drive = Drive.Of(Exchanged(motion.Log, 1, 0, 2));
        Assert.InRange(In.Degrees.Of(drive.Mount.BumpsAside!.Value), 75.0, 90.0);
        Assert.True(Says(drive, "bump-line"));
        var trust = Trust.Of(drive);
        Assert.Equal((TrustLevel.Limited, TrustLevel.Limited), (trust.For(TrustUse.Events).Level, trust.For(TrustUse.Car).Level));
    }

    [Theory]
    [InlineData(1e-6, 0.0)]
    [InlineData(4e-6, 2.4)]
    [InlineData(16e-6, -1.9)]
    public void Without_a_speed_bumps_driven_straight_tell_forward(double roughness, double turned)
    {
        var motion = Bumpy(roughness, 3) with { Turned = turned, Tipped = 0.0, HasSpeed = false };
        var drive = Drive.Of(motion.Log);
        var forward = new Direction(Math.Cos(turned), -Math.Sin(turned), 0.0);
        Assert.True(drive.Mount.Forward!.Value.AngleTo(forward) <= drive.Mount.HalfWidth);
        Assert.InRange(In.Degrees.Of(drive.Mount.HalfWidth!.Value), 2.0, 12.0);
        Assert.NotEmpty(drive.PitchRate);
        Assert.Contains(drive.Story, s => s.About == "forward" && s.Text.Contains("bumps turn the body", StringComparison.Ordinal));
    }

    // The same gyro read backwards in time: the rear meets each bump first.
    [Fact]
    public void What_meets_a_bump_first_is_the_nose()
    {
        var motion = Bumpy(1e-6, 5) with { Turned = 0.7, Tipped = 0.0, HasSpeed = false, Yaw = new double[Bumpy(1e-6, 5).Yaw.Length] };
        var log = motion.Log;
        var ahead = Drive.Of(log).Mount.Forward!.Value;
        var back = log with
        {
            Tracks = [.. log.Tracks.Select(t => t with
            {
                Values = [.. t.Values.Select(v => v.Reverse().Select(x => t.Kind == SensorKind.TurnRate ? -x : x).ToImmutableArray())],
            })],
        };
        var forward = new Direction(Math.Cos(0.7), -Math.Sin(0.7), 0.0);
        Assert.True(ahead.Dot(forward) > 0.99);
        Assert.True(Drive.Of(back).Mount.Forward!.Value.Dot(forward) < -0.9);
    }

    [Fact]
    public void Without_speed_and_bumps_bends_alone_tell_forward()
    {
        var (said, held) = (0, 0);
        for (ulong seed = 1; seed <= 12; seed++)
        {
            var journey = new PlantedJourney(seed, 300.0, 0.02);
            var mount = Drive.Of(WithoutSpeed(journey.Log())).Mount;
            said += mount.Forward is null ? 0 : 1;
            held += mount.Forward?.AngleTo(journey.Forward) <= mount.HalfWidth ? 1 : 0;
        }

        Assert.InRange(said, 10, 12);
        Assert.InRange(held, said - 2, said);
    }

    // Of 90 in 100 that are promised, 24 of 30 leave three deviations of chance.
    [Theory]
    [InlineData(40.0, 0.0)]
    [InlineData(60.0, 0.03)]
    public void The_half_width_of_forward_holds_on_short_and_hilly_drives(double length, double slope)
    {
        var (said, held) = (0, 0);
        for (ulong seed = 501; seed <= 530; seed++)
        {
            var journey = new PlantedJourney(seed, length, slope);
            var mount = Drive.Of(journey.Log()).Mount;
            said += mount.Forward is null ? 0 : 1;
            held += mount.Forward?.AngleTo(journey.Forward) <= mount.HalfWidth ? 1 : 0;
        }

        Assert.InRange(said, 25, 30);
        Assert.InRange(held, 0.8 * said, said);
    }

    [Theory]
    [InlineData(0.05)]
    [InlineData(-0.05)]
    [InlineData(0.08)]
    public void A_road_that_begins_to_climb_or_to_fall_is_no_slip(double slope)
    {
        var drive = Drive.Of(new PlantedDrive { Ramp = slope, Length = 120.0 }.Log);
        Assert.Empty(drive.Mount.Moves);
        Assert.InRange(drive.Length, 115.0, 121.0);
    }
}
