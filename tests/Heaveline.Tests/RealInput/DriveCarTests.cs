using System.Globalization;
using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Files.Drives;

namespace Heaveline.Tests.RealInput;

/// <summary>
/// No real log on this machine comes from a drive that could tell a car: each is refused by a named rule. The wheelbases are assumed; nothing is known of
/// these cars. Each skips by name where it is not on the machine.
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
        var car = CarIdentification.Of(
            windows, new IdentificationKnown { Wheelbase = wheelbase, HumpLengths = DriveWindows.Humps(events) }, TestContext.Current.CancellationToken);
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{folder}: {windows.Count(w => w.Site is not null)} bumps, {windows.Count(w => w.Site is null)} rough\n"
            + $"{string.Join("\n", car.Refusals.Select(r => $"{r.Kind}: {r.Says} {r.WouldTell}"))}\n"
            + $"{string.Join("\n", car.Estimates.Select(e => $"{e.Number} {e.Value:F3} {e.Low:F3} {e.High:F3} learned {e.Learned:F2}"))}\n"
            + $"{string.Join("\n", car.Starts)}\n{string.Join("\n", car.Residuals)}"));
        return car;
    }

    [Theory]
    [InlineData(3.6)]
    [InlineData(5.0)]
    [InlineData(6.5)]
    public void The_shuttle_is_refused(double wheelbase)
    {
        var car = Read(wheelbase, "shuttle-200hz-a", "acc.csv", "gyro.csv", "gps.csv");
        Assert.False(car.IsBelieved);
    }

    [Fact]
    public void A_minute_of_highway_is_refused()
    {
        var car = Read(2.8, "car-highway-104hz", "imu.csv", "vehicle-bus.csv", "gnss.csv");
        Assert.False(car.IsBelieved);
    }

    [Fact]
    public void The_phone_of_26_hertz_in_a_town_is_refused()
    {
        var car = Read(2.7, "phone-26hz-a", "trip.csv");
        Assert.False(car.IsBelieved);
    }

    [Fact]
    public void The_phone_of_10_hertz_is_refused()
    {
        var car = Read(2.7, "phone-10hz-unit-headers", "log.csv");
        Assert.False(car.IsBelieved);
    }
}
