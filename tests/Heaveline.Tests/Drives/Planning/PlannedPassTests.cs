using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Planning;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Drives.Planning;

/// <summary>What a test day sends people over is read again as a phone would log it.</summary>
public class PlannedPassTests
{
    private const double Behind = 1.3;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("fern-saloon", "four up with luggage")]
    [InlineData("fern-saloon", "driver")]
    [InlineData("drover-van", "driver")]
    [InlineData("sprig-kit-car", "driver")]
    public void Every_planned_pass_is_read_where_it_stands_out_by_itself_else_with_its_instant_put_in(string file, string load)
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", file + ".yaml")).Value!;
        var model = RideModel.Of(car, car.LoadStates.Single(l => l.Name == load));
        var day = TestDay.Of(
            new TestDayWish
            {
                Model = model,
                Humps =
                [
                    .. TestHump.Low,
                    .. ((string[])["village-hump", "speed-table"]).Select(n => new TestHump { Name = n, Road = NamedRoads.Find(n).Value! }),
                ],
                HalfWidth = 0.02,
                Phone = Behind,
            },
            degree: 2,
            stop: Stop);
        Assert.NotEmpty(day.Drives);
        foreach (var planned in day.Drives)
        {
            Pass[] passes = [.. planned.Speeds.Concat(planned.Speeds).Select(v => Pass.Of(model, planned.Hump.Road, v))];
            var (motion, onsets) = PlantedPasses.Driven(passes, Behind);
            var drive = Drive.Of(motion.Log, Stop);
            var settings = new EventSettings
            {
                Wheelbase = car.Wheelbase.Si,
                Phone = new PhonePlace { BehindFrontAxle = Behind, BehindFrontAxleSpread = 0.05 },
                Added = planned.StandsOut ? [] : [.. onsets],
            };
            var read = DriveEvents.Of(drive, Trust.Of(drive), settings, Stop);
            Assert.All(onsets, t => Assert.True(
                read.Kept.Any(e => Math.Abs(e.Onset - t) < 0.7 && double.IsFinite(e.Numbers.Headline)), $"{planned.Hump.Name} at {t:F1} s"));
        }
    }

    [Fact]
    public void Slow_passes_of_a_full_car_over_a_low_hump_are_not_said_to_stand_out()
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;
        var model = RideModel.Of(car, car.LoadStates.Single(l => l.Name == "four up with luggage"));
        var low = TestHump.Low[0].Road;
        Assert.False(SeenPass.Is(model, low, [9.0 / 3.6], Behind, Stop));
        Assert.False(SeenPass.Is(model, low, [15.0 / 3.6], Behind, Stop));
        Assert.True(SeenPass.Is(model, low, [30.0 / 3.6], Behind, Stop));
    }
}
