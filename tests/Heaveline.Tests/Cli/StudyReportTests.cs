using System.Net;
using System.Text.RegularExpressions;

namespace Heaveline.Tests.Cli;

/// <summary>What to buy as a part of a report: from a study to a shopping list.</summary>
public class StudyReportTests
{
    private const string Report = "report examples/garage/fern-saloon.yaml --study examples/studies/fern-four-up.yaml";

    [Fact]
    public void A_report_of_a_study_says_what_to_buy_where_and_for_how_much()
    {
        using var scratch = new Scratch();
        var said = Spoken.Of([.. Spoken.Words(Report), "--parts", "choose", "--out", scratch["r.html"]]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        var page = WebUtility.HtmlDecode(File.ReadAllText(scratch["r.html"]));
        Assert.Contains("What to buy: Fern saloon", page, StringComparison.Ordinal);
        Assert.Contains("Worth buying: A, ", page, StringComparison.Ordinal);
        Assert.Contains("To buy for A:", page, StringComparison.Ordinal);
        Assert.Matches(
            new Regex(@"2 × Wren W3 \(at click \d+\) as rear damper, 148 EUR each, 296 EUR; Village motor factors, autumn: 4 days\."), page);
        Assert.Contains("Together 464 EUR, fitting not counted", page, StringComparison.Ordinal);
        Assert.Contains("studies/fern-four-up.yaml", page, StringComparison.Ordinal);
        Assert.Contains("parts/village-autumn.yaml", page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_finding_of_a_study_stands_in_short_and_what_was_kept_of_it_makes_the_same_report()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Spoken.Of("choose", "examples/studies/fern-four-up.yaml", "--kept-in", scratch["."]).Code);
        string[] line = [.. Spoken.Words(Report), "--parts", "finding,choose", "--out"];
        var kept = Spoken.Of([.. line, scratch["r.html"], "--kept-in", scratch["."]]);
        Assert.Equal(0, kept.Code);
        Assert.Contains("heaveline: what to buy is taken from what is kept of this very study, ", kept.Remarks, StringComparison.Ordinal);
        Assert.Matches(@"pieces of before, 0 more\.\n", kept.Remarks);
        var page = WebUtility.HtmlDecode(File.ReadAllText(scratch["r.html"]));
        Assert.Contains("What to buy for Fern saloon: worth buying: A, ", page, StringComparison.Ordinal);
        Assert.Matches("Side effects, standing under 'four up with luggage'", page);
        Assert.DoesNotContain("kept-in", page, StringComparison.Ordinal);

        File.Move(scratch["r.html"], scratch["first.html"]);
        using var empty = new Scratch();
        var anew = Spoken.Of([.. line, scratch["r.html"], "--kept-in", empty["."]]);
        Assert.Contains("heaveline: nothing is kept in ", anew.Remarks, StringComparison.Ordinal);
        Assert.Equal(File.ReadAllText(scratch["first.html"]), File.ReadAllText(scratch["r.html"]));
        Assert.Empty(empty.Contents);
    }

    [Fact]
    public void What_is_kept_is_of_a_study() => Assert.Equal(
        (2, "heaveline: --kept-in takes what was kept of a study: give --study too, or leave it out.\n"),
        (Spoken.Of("report", "examples/garage/fern-saloon.yaml", "--out", "r.html", "--kept-in", ".").Code,
            Spoken.Of("report", "examples/garage/fern-saloon.yaml", "--out", "r.html", "--kept-in", ".").Remarks));

    [Fact]
    public void A_report_of_a_study_in_which_nothing_should_be_bought_has_no_shopping_list()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Spoken.Of(
            "report", "examples/garage/fern-saloon.yaml", "--study", "examples/studies/fern-front-springs.yaml", "--parts", "choose", "--out",
            scratch["r.html"]).Code);
        var page = WebUtility.HtmlDecode(File.ReadAllText(scratch["r.html"]));
        Assert.Contains("Leave it as it is: ", page, StringComparison.Ordinal);
        Assert.DoesNotContain("To buy for", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_report_of_one_car_takes_no_study_of_another()
    {
        var said = Spoken.Of(
            "report", "examples/garage/tarn-off-roader.yaml", "--study", "examples/studies/fern-front-springs.yaml", "--parts", "choose",
            "--out", "r.html");
        Assert.Equal(1, said.Code);
        Assert.Contains("asks what to buy for Fern saloon, and the report is of Tarn off-roader", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void The_part_needs_its_study_and_the_study_its_part()
    {
        var without = Spoken.Of("report", "examples/garage/fern-saloon.yaml", "--parts", "choose", "--out", "r.html");
        Assert.Equal(2, without.Code);
        Assert.Contains("The part choose needs a study of what to buy.", without.Remarks, StringComparison.Ordinal);
        var unused = Spoken.Typed(Report + " --parts car --out r.html");
        Assert.Equal(2, unused.Code);
        Assert.Contains("study: no part is of it", unused.Remarks, StringComparison.Ordinal);
    }
}
