using Heaveline.Web.Pages.Reports;

namespace Heaveline.Tests.Web;

public class ReportQueryTests
{
    [Fact]
    public void An_address_without_a_query_says_what_is_usual()
    {
        var query = ReportQuery.Of("");
        Assert.Equal("", query.Address);
        Assert.Empty(query.Cars);
        Assert.Equal(
            ("village-hump", "50 km/h", "C", "ratio", "2000", "a4"), (query.Road, query.Speed, query.Class, query.Rule, query.Samples, query.Paper));
    }

    [Fact]
    public void What_is_chosen_comes_back_from_the_address()
    {
        var query = new ReportQuery
        {
            Cars = ["fern saloon & co", "b=c", "süd/été"],
            Road = "pothole-left",
            Speed = "30 mph",
            Speeds = "30 km/h, 40 km/h",
            Load = "four up with luggage",
            Class = "D",
            Rule = "damping",
            Samples = "50",
            Seed = "9",
            Parts = "",
            Title = "One + two = \"three\" #4",
            Author = "A. Fern",
            Date = "",
            Paper = "letter",
            File = "x",
        };
        var back = ReportQuery.Of(query.Address);
        Assert.Equal(query.Address, back.Address);
        Assert.Equal(query.Cars, back.Cars);
        Assert.Equal(query with { Cars = [] }, back with { Cars = [] });
    }

    [Fact]
    public void No_date_and_the_days_own_date_are_told_apart()
    {
        Assert.Null(ReportQuery.Of("?car=a").Date);
        Assert.Equal("", ReportQuery.Of("?car=a&date=").Date);
        Assert.Equal("?date=", (new ReportQuery { Date = "" }).Address);
    }

    [Fact]
    public void Every_part_that_a_report_can_hold_is_offered_once() =>
        Assert.Equal(Enum.GetValues<PartKind>().Order(), ReportPartChoice.All.Select(p => p.Kind).Order());
}
