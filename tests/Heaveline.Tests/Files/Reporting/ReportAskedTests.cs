using Heaveline.Files.Cars;
using Heaveline.Files.Reporting;
using Heaveline.Files.Roads;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files.Reporting;

public class ReportAskedTests
{
    private static readonly CarReading Saloon = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"));

    [Fact]
    public void Everything_that_is_wrong_is_said_at_once_in_the_order_of_the_options()
    {
        var asked = Asked("r.html") with { Speed = "fast", Speeds = "0 km/h", Load = "elephant", Class = "Z", Rule = "thumb", Samples = 3, Parts = "soup", Paper = "a3" };
        var reading = asked.Read([Saloon], NamedRoads.Find(asked.Road), 1);
        Assert.Null(reading.Choices);
        Assert.Equal(["speed", "speeds", "load", "class", "rule", "samples", "parts", "paper"], reading.Objections.Select(o => o.Choice));
        Assert.Equal([true, true, false, true, true, false, true, true], reading.Objections.Select(o => o.IsUsage));
    }

    [Fact]
    public void A_report_without_a_car_or_on_a_road_that_is_not_there_is_objected_to() =>
        Assert.Equal(["car", "road"], Asked("r.html").Read([], NamedRoads.Find("nowhere"), 1).Objections.Select(o => o.Choice));

    [Fact]
    public void One_computed_report_becomes_both_files_with_the_line_of_each()
    {
        var road = NamedRoads.Find(ReportAsked.UsualRoad);
        var html = (Asked("r.html") with { Parts = "cost" }).Read([Saloon], road, 1).Choices!;
        var pdf = (Asked("r.pdf") with { Parts = "cost", Paper = "letter" }).Read([Saloon], road, 1).Choices!;
        Assert.EndsWith("--paper letter --out r.pdf", pdf.Command, StringComparison.Ordinal);
        var made = Report.From(html).MadeBy(pdf);
        Assert.Equal(Heaveline.Press.Html.Of(Report.From(pdf)), Heaveline.Press.Html.Of(made));
        Assert.NotEqual(Heaveline.Press.Html.Of(Report.From(html)), Heaveline.Press.Html.Of(made));
    }

    private static ReportAsked Asked(string file) => new() { Out = file, Program = "Heaveline 0" };
}
