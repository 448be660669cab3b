using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Files.Drives;

namespace Heaveline.Tests.RealInput;

/// <summary>
/// No real log on this machine comes from a drive that could tell a car: each is refused by a named rule. The wheelbases are assumed; nothing is
/// known of these cars. Each skips by name where it is not on the machine.
/// </summary>
public class DriveCarTests
{
    private static CarFromDrive Read(double wheelbase, string folder, params string[] files)
    {
        var reading = LogFile.Load([.. files.Select(f => SharedData.Require(folder, f))], TestContext.Current.CancellationToken);
        Assert.Empty(reading.Refusals);
        var drive = Drive.Of(reading.Log!, TestContext.Current.CancellationToken);
        var trust = Trust.Of(drive);
        var events = DriveEvents.Of(drive, trust, new EventSettings { Wheelbase = wheelbase }, TestContext.Current.CancellationToken);
        var windows = DriveWindows.Of(drive, events, trust);
        return CarIdentification.Of(
            windows,
            new IdentificationKnown { Wheelbase = wheelbase, HumpLengths = DriveWindows.Humps(events) },
            TestContext.Current.CancellationToken);
    }

    private static void Refused(CarFromDrive car, RefusalKind by)
    {
        Assert.False(car.IsBelieved);
        Assert.All(car.Estimates, e => Assert.False(e.IsSaid));
        Assert.Contains(car.Refusals, r => r.Kind == by);
        // A car that misfits turned round as well says nothing of forward.
        Assert.DoesNotContain(car.Refusals, r => r.Kind == RefusalKind.Reversed);
    }

    [Theory]
    [InlineData(3.6)]
    [InlineData(5.0)]
    [InlineData(6.5)]
    public void The_shuttle_is_refused_whatever_its_wheelbase_for_its_pitch_rate_is_no_half_cars(double wheelbase) =>
        Refused(Read(wheelbase, "shuttle-200hz-a", "acc.csv", "gyro.csv", "gps.csv"), RefusalKind.Misfit);

    [Fact]
    public void A_minute_of_highway_holds_too_few_bumps() =>
        Refused(Read(2.8, "car-highway-104hz", "imu.csv", "vehicle-bus.csv", "gnss.csv"), RefusalKind.TooFew);

    [Fact]
    public void The_phone_of_26_hertz_in_a_town_meets_too_few_bumps_that_stand_alone() =>
        Refused(Read(2.7, "phone-26hz-a", "trip.csv"), RefusalKind.TooFew);

    [Fact]
    public void The_phone_of_10_hertz_shows_no_car() =>
        Refused(Read(2.7, "phone-10hz-unit-headers", "log.csv"), RefusalKind.TooFew);
}
