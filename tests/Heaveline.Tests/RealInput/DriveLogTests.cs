using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Files.Drives;
using Heaveline.Quantities;

namespace Heaveline.Tests.RealInput;

/// <summary>What real logs say, with what is known of them from their makers; each skips by name where it is not on the machine.</summary>
public class DriveLogTests
{
    private static (Drive Drive, Trust Trust) Read(string folder, params string[] files)
    {
        var reading = LogFile.Load([.. files.Select(f => SharedData.Require(folder, f))], TestContext.Current.CancellationToken);
        Assert.Empty(reading.Refusals);
        var drive = Drive.Of(reading.Log!, TestContext.Current.CancellationToken);
        return (drive, Trust.Of(drive));
    }

    private static double Off(Drive drive, Direction known) => In.Degrees.Of(drive.Mount.Forward!.Value.AngleTo(known));

    [Fact]
    public void The_shuttles_axes_gain_and_rate_are_those_that_are_documented()
    {
        var (drive, trust) = Read("shuttle-200hz-a", "acc.csv", "gyro.csv", "gps.csv");
        Assert.Equal(198.6, drive.Clock.Rate, 0.4);
        // Median length 9.48 m/s², 3.3 % below gravity.
        Assert.Equal(1.034, drive.Mount.Gain, 0.003);
        // x is forward, z up; the direction is known to ± 10° (90 %).
        Assert.InRange(Off(drive, new Direction(1, 0, 0)), 0.0, 10.0);
        Assert.InRange(In.Degrees.Of(drive.Mount.HalfWidth!.Value), 6.0, 13.0);
        Assert.True(drive.Mount.Up.Z > 0.99);
        Assert.Empty(drive.Mount.Moves);
        // The largest hit lies at 308.6 s; vibration above half the rate is there.
        Assert.Contains(trust.Flights, t => Math.Abs(t - 308.6) < 1.0);
        Assert.True(trust.IsFolded);
        Assert.Equal(420.0, drive.Length, 1.0);
    }

    [Fact]
    public void The_cars_axes_on_the_highway_are_those_that_are_documented()
    {
        var (drive, trust) = Read("car-highway-104hz", "imu.csv", "vehicle-bus.csv", "gnss.csv");
        Assert.Equal(104.3, drive.Clock.Rate, 0.3);
        Assert.Equal(1.011, drive.Mount.Gain, 0.002);
        Assert.InRange(Off(drive, new Direction(1, 0, 0)), 0.0, 6.0);
        Assert.True(drive.Mount.Up.Z < -0.99);
        Assert.True(drive.Mount.Explained > 0.7);
        Assert.Empty(drive.Mount.Moves);
        Assert.Equal(TrustLevel.Good, trust.For(TrustUse.Events).Level);
    }

    [Fact]
    public void The_phone_of_26_hertz_finds_forward_by_braking_and_turning_together()
    {
        var (drive, trust) = Read("phone-26hz-a", "trip.csv");
        Assert.Equal(25.6, drive.Clock.Rate, 0.3);
        // Its accelerometer reads −1 g on z with the screen up.
        Assert.True(drive.Mount.Up.Z < -0.99);
        Assert.InRange(drive.Mount.Explained!.Value, 0.85, 1.0);
        Assert.InRange(In.Degrees.Of(drive.Mount.HalfWidth!.Value), 0.0, 4.0);
        Assert.InRange(drive.Mount.Braking!.Value, 0.9, 1.2);
        Assert.InRange(drive.Mount.Turning!.Value, 0.9, 1.2);
        Assert.False(drive.Mount.IsHandTurned);
        Assert.Equal(
            (TrustLevel.Limited, TrustLevel.Limited, TrustLevel.None),
            (trust.For(TrustUse.Events).Level, trust.For(TrustUse.Car).Level, trust.For(TrustUse.Comfort).Level));
    }

    [Fact]
    public void The_phone_of_10_hertz_is_read_and_good_for_nothing()
    {
        var (drive, trust) = Read("phone-10hz-unit-headers", "log.csv");
        Assert.Equal(9.4, drive.Clock.Rate, 0.2);
        Assert.Equal("km/h", drive.Log.Of(SensorKind.Speed)!.UnitTaken);
        Assert.All(trust.Verdicts, v => Assert.Equal(TrustLevel.None, v.Level));
    }

    [Fact]
    public void Poses_without_acceleration_are_refused()
    {
        var reading = LogFile.Load([SharedData.Require("car-10hz-pose-a", "poses.csv")], TestContext.Current.CancellationToken);
        Assert.Contains("acceleration", Assert.Single(reading.Refusals).Message, StringComparison.Ordinal);
    }

    private static DriveEvents Bumps(string folder, params string[] files)
    {
        var (drive, trust) = Read(folder, files);
        return DriveEvents.Of(drive, trust, null, TestContext.Current.CancellationToken);
    }

    [Fact]
    public void What_stands_out_on_the_shuttles_rough_roads_is_hardly_ever_a_bump_of_both_axles()
    {
        var events = Bumps("shuttle-200hz-a", "acc.csv", "gyro.csv", "gps.csv");
        Assert.InRange(events.Events.Length, 14, 22);
        Assert.InRange(events.Kept.Count(), 0, 4);
        // The largest hit lies at 308.6 s; the phone leaves the floor there.
        Assert.Contains(events.Events, e => Math.Abs(e.Onset - 308.0) < 1.5 && e.Reason == "The phone left the floor.");
        Assert.Contains(events.Events, e => e.Reason.StartsWith("Front and rear do not move as over one bump", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_joints_of_the_highway_count_and_what_lies_at_its_ends_does_not()
    {
        var events = Bumps("car-highway-104hz", "imu.csv", "vehicle-bus.csv", "gnss.csv");
        Assert.InRange(events.Events.Length, 3, 8);
        Assert.InRange(events.Kept.Count(), 1, 4);
        Assert.All(events.Kept, e => Assert.InRange(e.Speed, 10.0, 18.0));
        Assert.Contains(events.Events, e => e.Onset < 1.5 && e.Reason == "The log begins or ends there.");
    }

    [Fact]
    public void The_phone_of_26_hertz_shows_some_bumps_and_one_that_is_braked_over()
    {
        var events = Bumps("phone-26hz-a", "trip.csv");
        Assert.InRange(events.Events.Length, 5, 12);
        Assert.InRange(events.Kept.Count(), 0, 3);
        Assert.Contains(events.Events, e => e.Reason.StartsWith("The car braked at", StringComparison.Ordinal));
    }

    [Fact]
    public void The_shuttles_and_the_cars_floors_are_weighted_and_the_slow_phones_is_not()
    {
        var (shuttle, trust) = Read("shuttle-200hz-a", "acc.csv", "gyro.csv", "gps.csv");
        var comfort = DriveComfort.Of(shuttle, trust)!;
        Assert.Equal(79.0, comfort.Top, 1.0);
        Assert.InRange(comfort.Axes[0].Rms, 0.45, 0.55);
        Assert.InRange(comfort.Lost, 0.0, 0.01);
        var (car, good) = Read("car-highway-104hz", "imu.csv", "vehicle-bus.csv", "gnss.csv");
        Assert.InRange(DriveComfort.Of(car, good)!.Axes[0].Rms, 0.38, 0.46);
        var (slow, bad) = Read("phone-26hz-a", "trip.csv");
        Assert.Null(DriveComfort.Of(slow, bad));
    }
}
