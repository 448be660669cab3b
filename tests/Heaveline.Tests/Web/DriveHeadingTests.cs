using Heaveline.Drives.Events;
using Heaveline.Files.Drives;
using Heaveline.Studies;
using Heaveline.Tests.Drives.Lanes;
using Heaveline.Web.Pages.Drives;

namespace Heaveline.Tests.Web;

public class DriveHeadingTests
{
    private static readonly DriveSheet Sheet = new() { Name = "Lane" };

    [Fact]
    public void The_headline_counts_no_car_before_it_is_told()
    {
        var bumps = Bumps(2.7);
        Assert.Equal("Lane: a log good for single bumps and comfort; the car itself is being fitted", DriveHeading.Of(Sheet, bumps, null, true));
        Assert.Equal("Lane: a log good for single bumps and comfort", DriveHeading.Of(Sheet, bumps, null, false));
    }

    [Fact]
    public void Without_a_wheelbase_the_headline_says_the_same_before_the_car_is_looked_for_and_after()
    {
        var bumps = Bumps(null);
        var before = DriveHeading.Of(Sheet, bumps, null, false);
        Assert.Equal("Lane: a log good for single bumps and comfort; the car itself wants its wheelbase", before);
        Assert.Equal(before, DriveHeading.Of(Sheet, DriveStudy.WithCar(bumps, CancellationToken.None), null, false));
    }

    private static DriveAnswer Bumps(double? wheelbase) => DriveStudy.Bumps(
        new DriveAsked { Log = LarchLane.Before.Log, Settings = new EventSettings { Wheelbase = wheelbase } }, null, StudyRun.Plain);
}
