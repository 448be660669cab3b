using Heaveline.Files.Reporting;
using Heaveline.Press;
using Heaveline.Studies;
using Heaveline.Tests.Studies;

namespace Heaveline.Tests.Reports;

public class ReportStudyTests
{
    [Fact]
    public void Everything_that_is_wrong_is_said_at_once_and_of_each_choice_for_itself()
    {
        var reading = Read(
            ("car", "hazel"),
            ("speed", "fast"),
            ("speeds", "0 km/h"),
            ("load", "elephant"),
            ("class", "Z"),
            ("rule", "thumb"),
            ("samples", "3"),
            ("parts", "soup"),
            ("paper", "a3"),
            ("title", "one\ntwo"), ("out", "r.doc"));
        Assert.Null(reading.Asked);
        Assert.Equal(
            new[] { "class", "load", "out", "paper", "parts", "rule", "samples", "speed", "speeds", "title" },
            reading.Objections.Select(o => o.Choice).Order(StringComparer.Ordinal));
        Assert.Equal(["load", "speeds"], reading.Objections.Where(o => !o.IsUsage).Select(o => o.Choice).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_report_without_a_car_or_on_a_road_that_is_not_there_is_objected_to() =>
        Assert.Equal(["car", "road"], Read(("road", "nowhere"), ("out", "r.html")).Objections.Select(o => o.Choice));

    [Theory]
    [InlineData("compare", "needs two cars")]
    [InlineData(",", "is empty")]
    public void Parts_that_make_no_report_are_objected_to(string parts, string why) =>
        Assert.Contains(
            why, Assert.Single(Read(("car", "hazel"), ("parts", parts), ("out", "r.html")).Objections).Sentence, StringComparison.Ordinal);

    [Fact]
    public void A_car_chosen_twice_is_objected_to() =>
        Assert.Contains(
            "twice", Assert.Single(Read(("car", "hazel"), ("car", "hazel"), ("out", "r.html")).Objections).Sentence, StringComparison.Ordinal);

    [Fact]
    public void Its_line_says_every_choice_that_was_left_as_usual() => Assert.Equal(
        "heaveline report hazel.yaml --road village-hump --speed \"50 km/h\" --speeds \"30 km/h, 50 km/h, 80 km/h, 110 km/h\" --class C "
        + "--rule ratio --samples 2000 --seed 1"
        + " --parts finding,car,modes,pass,why,doubt,ride,cost --title \"Hazel saloon\" --out r.html",
        Read(("car", "hazel"), ("out", "r.html")).Asked!.Command);

    [Fact]
    public void One_computed_report_becomes_both_files_with_the_line_of_each()
    {
        var html = Read(("car", "hazel"), ("parts", "cost"), ("paper", "letter"), ("out", "r.html")).Asked!;
        var pdf = Read(("car", "hazel"), ("parts", "cost"), ("paper", "letter"), ("out", "r.pdf")).Asked!;
        Assert.EndsWith("--paper letter --out r.pdf", pdf.Command, StringComparison.Ordinal);
        Assert.Equal(pdf.Command, html.To("r.pdf").Command);
        var made = Report.From(html).MadeBy(html.To("r.pdf"));
        Assert.Equal(Html.Of(Report.From(pdf)), Html.Of(made));
        Assert.NotEqual(Html.Of(Report.From(html)), Html.Of(made));
    }

    [Fact]
    public void Files_are_named_from_the_folder_that_holds_them_all()
    {
        string At(params string[] names) => Path.Combine([Path.GetTempPath(), "somewhere", .. names]);
        var asked = Read(("car", "hazel"), ("car", "softer"), ("out", At("reports", "r.html"))).Asked!;
        asked = asked with
        {
            Inputs = [.. asked.Inputs.Select(i => i.BuiltIn ? i : i with { Name = At("cars", i.Name) })],
            Words = asked.Words.With(ReportStudy.Cars, name => At("cars", name)),
        };
        var named = ReportFiles.Named(asked);
        Assert.Equal(["hazel.yaml", "softer.yaml", "village-hump.yaml"], named.Inputs.Select(i => i.Name));
        Assert.StartsWith("heaveline report hazel.yaml softer.yaml --road village-hump ", named.Command, StringComparison.Ordinal);
        Assert.EndsWith(" --out r.html", named.Command, StringComparison.Ordinal);
    }

    private static AskedReading<ReportAsked> Read(params (string Name, string? Words)[] words) =>
        ReportStudy.Question.Read(new Given(words), new DrawnThings());
}
