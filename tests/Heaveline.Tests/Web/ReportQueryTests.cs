using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Reports;
using Heaveline.Web.Serving;

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
            Drives = ["lane & before", "after"],
            IsForecast = true,
            Films = ["lane & one.yaml", "films/two.yaml"],
            FilmsAfter = ["three.yaml"],
            IsFilmedCar = true,
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
        Assert.Equal(query.Drives, back.Drives);
        Assert.Equal((query.Films, query.FilmsAfter), (back.Films, back.FilmsAfter), (one, other) =>
            one.Films.SequenceEqual(other.Films) && one.FilmsAfter.SequenceEqual(other.FilmsAfter));
        static ReportQuery Bare(ReportQuery of) => of with { Cars = [], Drives = [], Films = [], FilmsAfter = [] };
        Assert.Equal(Bare(query), Bare(back));
    }

    [Fact]
    public void No_date_and_the_days_own_date_are_told_apart()
    {
        Assert.Null(ReportQuery.Of("?car=a").Date);
        Assert.Equal("", ReportQuery.Of("?car=a&date=").Date);
        Assert.Equal("?date=", (new ReportQuery { Date = "" }).Address);
    }

    [Theory]
    [InlineData("drive")]
    [InlineData("Drive")]
    [InlineData("pass,PROVE")]
    [InlineData("all")]
    public void A_drive_is_asked_about_by_its_parts_however_they_are_written(string parts)
    {
        var options = new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") };
        var asked = ReportQuestion.Of(ReportQuery.Of($"?car=fern-saloon&drive=no-such-drive&parts={parts}&date=x"), new GarageView(options), options);
        Assert.Contains(asked.Objections, o => o is { Choice: "drive", IsMissing: true });
        Assert.DoesNotContain(asked.Objections, o => o.Choice == "parts" && o.Sentence.Contains("is no part", StringComparison.Ordinal));
        Assert.NotEmpty(asked.Parts.Intersect([PartKind.Drive, PartKind.Prove]));
    }

    [Fact]
    public void Every_part_that_a_report_can_hold_is_offered_once() =>
        Assert.Equal(Enum.GetValues<PartKind>().Order(), ReportPartChoice.All.Select(p => p.Kind).Order());

    [Theory]
    [InlineData("?car=fern-saloon", 2, "finding,car,modes,pass,compare,why,doubt,ride,cost")]
    [InlineData("?car=fern-saloon&parts=rule,cure", 2, "compare,cure,rule")]
    [InlineData("?car=fern-saloon&car=fern-saloon-cured", 1, "finding,car,why,ride,cost")]
    [InlineData("?car=fern-saloon&car=fern-saloon-cured", 3, null)]
    [InlineData("?car=fern-saloon&car=fern-saloon-cured&parts=finding,car,modes,pass,compare,why,doubt,ride,cost", 1, null)]
    public void Another_car_unticks_no_part_that_is_possible_with_it(string query, int cars, string? parts)
    {
        var options = new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") };
        var next = ReportQuestion.Of(ReportQuery.Of(query), new GarageView(options), options).PartsWith(cars);
        Assert.Equal(parts?.Split(',').Order(), next?.Split(',').Order());
    }

    [Theory]
    [InlineData("", "?car=fern-saloon", "finding, car, modes, pass, why, doubt, ride, cost")]
    [InlineData("fern-saloon-cured", "?car=fern-saloon&car=fern-saloon-cured", "finding, car, compare, why, ride, cost")]
    public void The_page_and_the_command_make_the_same_report_where_nothing_is_chosen(string beside, string query, string parts)
    {
        var options = new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") };
        var garage = new GarageView(options);
        string[] cars = beside.Length > 0 ? ["fern-saloon", beside] : ["fern-saloon"];
        var page = ReportQuestion.Of(ReportQuery.Of(query), garage, options).Html!;
        var command = ReportStudy.Question.Read(
            new Given([.. cars.Select(name => (ReportStudy.Cars.Name, (string?)name)), (ReportStudy.Out.Name, "r.html")]), garage).Asked!;
        Assert.Equal(parts, string.Join(", ", page.Parts).ToLowerInvariant());
        Assert.Equal(command.Parts, page.Parts);
        Assert.Equal(command.Cars.Select(c => (c.Name, c.Load.Name)), page.Cars.Select(c => (c.Name, c.Load.Name)));
        Assert.Equal((command.Speed, command.Draws, command.Seed, command.Paper), (page.Speed, page.Draws, page.Seed, page.Paper));
        Assert.Equal(command.Speeds, page.Speeds);
        Assert.Equal((command.RoadClass, command.Rule, command.Title), (page.RoadClass, page.Rule, page.Title));

        // A program that makes a report itself has the same, too.
        var library =
            new ReportAsked { Title = "t", Cars = page.Cars, Road = page.Road, Speed = page.Speed, Speeds = page.Speeds, Parts = page.Parts };
        Assert.Equal(
            (library.Draws, library.Seed, library.Paper, library.RoadClass, library.Rule),
            (page.Draws, page.Seed, page.Paper, page.RoadClass, page.Rule));
    }
}
