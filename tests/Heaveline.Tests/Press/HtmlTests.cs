using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Heaveline.Press;
using Heaveline.Tests.Figures;

namespace Heaveline.Tests.Press;

public class HtmlTests
{
    private static readonly Lazy<string> Computed = new(
        () => Text(Report.From(ReportSamples.Of(DrawnCars.Saloon, PartKind.Car, PartKind.Modes, PartKind.Pass, PartKind.Ride, PartKind.Cost))));

    [Fact]
    public void The_same_report_gives_the_same_bytes() =>
        Assert.Equal(Html.Of(ReportSamples.Everywhere("text")), Html.Of(ReportSamples.Everywhere("text")));

    [Fact]
    public void No_text_of_a_report_becomes_markup()
    {
        var page = Text(ReportSamples.Everywhere(ReportSamples.Attack));
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", page, StringComparison.OrdinalIgnoreCase);
        var harmless = Text(ReportSamples.Everywhere("harmless"));
        Assert.Equal(Tags(harmless), Tags(page));

        // And none is lost: wherever the harmless word stood, there stands the other.
        var times = Regex.Count(Figureless(harmless), "harmless");
        Assert.True(times > 20);
        Assert.Equal(times, Regex.Count(WebUtility.HtmlDecode(Figureless(page)), Regex.Escape(ReportSamples.Attack)));
    }

    [Fact]
    public void A_page_needs_nothing_from_outside_and_runs_nothing()
    {
        var page = Computed.Value;
        Assert.Empty(Regex.Matches(
            page.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal),
            "https?://|//[a-z]|@import|<script|<link|<iframe|<object| on[a-z]+=",
            RegexOptions.IgnoreCase)
            .Where(m => !Inside(page, m)).Select(m => m.Value));
        Assert.All(Regex.Matches(page, @"url\(([^)]{0,30})"), m => Assert.StartsWith("data:font/ttf;base64,", m.Groups[1].Value));
        Assert.Contains("default-src 'none'", page);
    }

    [Fact]
    public void Headings_come_in_order_and_the_language_is_said()
    {
        Assert.StartsWith("<!DOCTYPE html>\n<html lang=\"en\">", Computed.Value);
        var levels = Regex.Matches(Computed.Value, "<h([1-6])").Select(m => m.Groups[1].Value[0] - '0').ToList();
        Assert.Equal(1, levels[0]);
        Assert.Single(levels, 1);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 1));
    }

    [Fact]
    public void Tables_have_captions_and_their_headings_say_what_they_head()
    {
        var tables = Regex.Matches(Computed.Value, "<table>.*?</table>", RegexOptions.Singleline).Select(m => m.Value).ToList();
        Assert.True(tables.Count > 5);
        Assert.All(tables, table => Assert.Matches("<caption id=\"[^\"]+\">[^<]+</caption>", table));
        Assert.All(tables, table => Assert.Equal(Regex.Count(table, "<th "), Regex.Count(table, "<th scope=\"(col|row)\"")));
    }

    [Fact]
    public void Every_figure_is_told_to_those_who_cannot_see_it()
    {
        var figures = Regex.Matches(Computed.Value, "<svg [^>]*>").Select(m => m.Value).ToList();
        Assert.True(figures.Count >= 8);
        Assert.All(figures, figure => Assert.Matches("role=\"img\" aria-label=\"[^\"]{40,}\"", figure));
    }

    [Fact]
    public void Every_link_leads_somewhere_and_no_id_stands_twice()
    {
        var ids = Regex.Matches(Computed.Value, " id=\"([^\"]+)\"").Select(m => m.Groups[1].Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        var links = Regex.Matches(Computed.Value, "(?:href=\"#|aria-labelledby=\")([^\"]+)\"").Select(m => m.Groups[1].Value).ToList();
        Assert.True(links.Count > 20);
        Assert.Empty(links.Except(ids));
    }

    [Fact]
    public void A_figure_of_few_numbers_has_them_in_a_table() =>
        Assert.Contains("<summary>Numbers of figure", Computed.Value);

    private static string Text(Report report) => Encoding.UTF8.GetString(Html.Of(report));

    private static List<string> Tags(string page) => [.. Regex.Matches(Figureless(page), "</?([a-z0-9]+)").Select(m => m.Value)];

    // A long name makes another drawing: more lines, other places.
    private static string Figureless(string page) => Regex.Replace(page, "(<svg [^>]*>).*?</svg>", "$1", RegexOptions.Singleline);

    // Letters of a font's base64 may spell anything.
    private static bool Inside(string page, Match match) =>
        Regex.Matches(page, "base64,[^)]*").Any(m => m.Value.Contains(match.Value, StringComparison.Ordinal));
}
