using System.Collections.Immutable;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Pages.Reports;
using Heaveline.Web.Tuning;

namespace Heaveline.Tests.Web;

public class CurrentCarTests
{
    private static readonly CurrentCar InHand = new()
    {
        Car = "lark & estate",
        Load = "two up",
        Road = "pothole-left",
        Speed = "37.5",
        Height = "60",
        Beside = "fern-saloon",
        Trial = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal)
            .Add("rear-spring", "52").Add("front-damping", "1.2").Add("luggage", "40").Add("springs", "frequencies"),
    };

    public static TheoryData<string, bool> Pages =>
    [
        .. new[] { "", "car", "pass", "rule", "link", "ride", "report", "drive" }.SelectMany(page => new[] { (page, true), (page, false) }),
    ];

    [Theory, MemberData(nameof(Pages))]
    public void The_address_of_every_page_says_all_that_is_in_hand(string page, bool isBump) => AssertSame(InHand, Read(InHand.On(page, isBump)));

    [Fact]
    public void The_pass_and_the_report_read_the_address_of_the_ride_as_their_own()
    {
        var query = InHand.On("ride")["ride".Length..];
        var pass = PassState.Of(query, "none");
        Assert.Equal(
            ("lark & estate", "two up", "pothole-left", "fern-saloon", 37.5),
            (pass.Car, pass.Load, pass.Road, pass.Beside, pass.KilometresPerHour));
        Assert.Equal(
            (52.0, 1.2, 40.0, 60.0),
            (pass.Values["rear-spring"], pass.Values["front-damping"], pass.Values["luggage"], pass.Values["height"]));
        Assert.True(pass.AsFrequencies);
        var report = ReportQuery.Of(query);
        Assert.Equal(["lark & estate", "fern-saloon"], report.Cars);
        Assert.Equal(("two up", "pothole-left", "37.5 km/h"), (report.Load, report.Road, report.Speed));
    }

    [Fact]
    public void What_is_tried_outlives_the_pass_and_the_report()
    {
        var pass = Read(PassState.Of(InHand.On("pass")["pass".Length..], "none").Query);
        AssertSame(InHand, pass);
        var report = Read(ReportQuery.Of(InHand.On("report")["report".Length..]).Address);
        AssertSame(InHand with { Speed = "37.5 km/h" }, report);
    }

    [Fact]
    public void The_road_of_a_ride_stands_beside_the_bump_in_hand()
    {
        var ride = CurrentCar.Of("?car=a&road=class-D&over=pothole-left&at=80");
        Assert.Equal(("pothole-left", "class-D", "80"), (ride.Road, ride.Ground, ride.Speed));
        Assert.Equal("ride?car=a&road=class-D&over=pothole-left&at=80", ride.On("ride"));
        Assert.Equal("pass?car=a&road=pothole-left&speed=80", ride.On("pass"));
        Assert.Equal("lane.yaml", CurrentCar.Of("?car=a&road=lane.yaml&over=pothole-left").Road);
    }

    [Fact]
    public void Another_car_brings_its_own_load_and_settings_and_keeps_road_and_speed()
    {
        var other = InHand.For("drover-van");
        Assert.Equal(
            ("drover-van", null, "pothole-left", "37.5", "60", null),
            (other.Car, other.Load, other.Road, other.Speed, other.Height, other.Beside));
        Assert.Equal(0, other.Tried);
        Assert.Equal(["springs"], other.Trial.Keys);
        Assert.Same(InHand, InHand.For("lark & estate"));
        Assert.Equal(3, InHand.Tried);
    }

    [Fact]
    public void The_drive_in_hand_goes_from_page_to_page_and_is_what_a_report_is_of()
    {
        var driven = InHand with { Drives = ["lane, after"] };
        Assert.EndsWith("&log=lane%2C%20after", driven.On("pass").Split("&front-damping")[0], StringComparison.Ordinal);
        foreach (var page in new[] { "", "car", "pass", "rule", "link", "ride", "report", "drive" })
        {
            Assert.Equal(["lane, after"], Read(driven.On(page)).Drives);
        }

        Assert.Equal(["lane, after"], ReportQuery.Of(driven.On("report")["report".Length..]).Drives);
        var pair = InHand with { Drives = ["before", "after"] };
        Assert.Equal(["before", "after"], ReportQuery.Of(pair.On("report")["report".Length..]).Drives);
        Assert.Equal(["after"], Read(pair.On("drive")).Drives);
    }

    [Fact]
    public void Two_drives_stay_in_hand_while_a_page_shows_the_one_after_and_one_that_is_not_here_is_let_go()
    {
        string[] known = ["before", "after", "third"];
        var pair = InHand with { Drives = ["before", "after"] };
        Assert.Equal(["before", "after"], pair.With([], "pass", known).Drives);
        Assert.Equal(["before", "after"], pair.With(["after"], "drive", known).Drives);
        Assert.Equal(["third"], pair.With(["third"], "drive", known).Drives);
        Assert.Equal(["before"], pair.With(["before"], "drive", known).Drives);
        Assert.Equal(["after"], pair.With(["after"], "report", known).Drives);
        Assert.Empty(pair.With([], "report", known).Drives);
        Assert.Equal(["before", "after"], pair.With([], "pass", known).For("drover-van").Drives);
        Assert.Empty(InHand.With(["gone"], "drive", known).Drives);
    }

    private static CurrentCar Read(string address) => CurrentCar.Of(address[address.IndexOf('?', StringComparison.Ordinal)..]);

    private static void AssertSame(CurrentCar one, CurrentCar other)
    {
        Assert.Equal(one.Trial, other.Trial);
        Assert.Equal(one with { Trial = other.Trial }, other);
    }
}
