using System.Collections.Immutable;
using Heaveline.Drives.Identification;

namespace Heaveline.Tests.Drives.Identification;

public class ExpectedInformationTests
{
    private static readonly double[] Round = [.. Enumerable.Range(0, 38).Select(k => 0.075 * 4.0 * (k / 37.0) * (1.0 - (k / 37.0)))];

    private static PlannedDrive Plan(int times, params double[] speeds) => new()
    {
        Passes = [.. speeds.Select(v => new PlannedPass { Speed = v, Count = times, Site = "hump" })],
        Humps = ImmutableDictionary<string, PlannedHump>.Empty.Add("hump", new PlannedHump(3.7, [.. Round])),
        Roughness = 32e-6,
    };

    private static double Half(IEnumerable<CarEstimate> estimates, CarNumber number) =>
        estimates.First(e => e.Number == number) is var e ? 0.5 * Math.Log(e.High / e.Low) : 0.0;

    [Fact]
    public void A_planned_drive_promises_about_the_intervals_that_such_a_drive_gives()
    {
        var (car, known, windows) = new PlantedCrossings { Seed = 61, Roughness = 32e-6 }.Drawn();
        var found = CarIdentification.Of(windows, known, TestContext.Current.CancellationToken);
        var planned = CarIdentification.Expected(car, Plan(4, 4.2, 6.5, 9.5), known);
        foreach (var number in CarNumbers.Headlines)
        {
            Assert.InRange(Half(planned, number) / Half(found.Estimates, number), 0.5, 1.4);
        }
    }

    [Fact]
    public void More_passes_and_a_first_drive_narrow_and_a_missing_gyro_widens()
    {
        var (car, known, windows) = new PlantedCrossings { Seed = 62, Each = 2 }.Drawn();
        var few = CarIdentification.Expected(car, Plan(2, 4.2, 6.5, 9.5), known);
        var many = CarIdentification.Expected(car, Plan(8, 4.2, 6.5, 9.5), known);
        var blind = CarIdentification.Expected(car, Plan(2, 4.2, 6.5, 9.5) with { HasTurnRate = false }, known);
        var first = CarIdentification.Of(windows, known, TestContext.Current.CancellationToken);
        var second = CarIdentification.Expected(car, Plan(2, 4.2, 6.5, 9.5), known, first);
        foreach (var number in CarNumbers.Headlines)
        {
            Assert.True(Half(many, number) < 0.8 * Half(few, number), $"{number}");
            Assert.True(Half(second, number) < Half(few, number), $"{number}");
            Assert.True(Half(blind, number) > Half(few, number), $"{number}");
        }
    }
}
