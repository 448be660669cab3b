using System.Net;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>Films from the roadside in a report: what is told, what is asked of whoever makes it, and that no picture of a film is in it.</summary>
public sealed class FilmReportTests : IDisposable
{
    private const string Car = "examples/garage/fern-saloon.yaml";
    private const string Grey = "examples/films/grey-saloon-25.yaml";
    private const string Red = "examples/films/red-saloon-25.yaml";
    private readonly Scratch scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void A_films_own_sentences_and_numbers_stand_in_the_report_and_no_car_file_stands_beside_it_unasked()
    {
        var page = Report("--film", Grey);
        var plain = PageText.Plain(page);
        Assert.Contains("The film: grey saloon at school hump", plain, StringComparison.Ordinal);
        foreach (var line in Spoken.Of("film", Grey).Results.Split('\n').Take(5).Where(line => line.EndsWith('.')))
        {
            Assert.Contains(line.Trim(), plain, StringComparison.Ordinal);
        }

        Assert.Contains("No car file stands beside the film", plain, StringComparison.Ordinal);
        Assert.DoesNotContain("by the car file the settling", plain, StringComparison.Ordinal);
        Assert.Contains("which hold neither faces nor number plates", plain, StringComparison.Ordinal);
        Assert.Contains("off the carriageway", plain, StringComparison.Ordinal);
        Assert.Contains("read off their tracks", plain, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", page, StringComparison.Ordinal);
        Assert.DoesNotContain("data:image", page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_car_stands_beside_its_film_where_that_is_said_and_its_forecast_is_held_to_the_films_interval()
    {
        var plain = PageText.Plain(Report("--film", Grey, "--filmed-car", "--load", "empty", "--road", "village-hump"));
        Assert.Contains("within what was filmed", plain, StringComparison.Ordinal);
        Assert.Contains("within the film's interval", plain, StringComparison.Ordinal);
        Assert.Contains("is taken from whoever made this report, not from the film", plain, StringComparison.Ordinal);
    }

    [Fact]
    public void Cars_of_one_bump_are_put_in_order_and_one_filmed_elsewhere_stands_by_itself()
    {
        var root = Checkout.Root;
        File.Copy(Path.Combine(root, "examples", "films", "red-saloon-25.csv"), scratch["lane.csv"]);
        var text = File.ReadAllText(Path.Combine(root, "examples", "films", "red-saloon-25.csv")).Split('\n');
        // Another track than the other one: a row less.
        File.WriteAllText(scratch["lane.csv"], string.Join('\n', text[..^2]) + "\n");
        File.WriteAllText(
            scratch["lane.yaml"],
            File.ReadAllText(Path.Combine(root, Red)).Replace("seen: red saloon", "seen: blue saloon", StringComparison.Ordinal)
                .Replace("place: school hump", "place: mill lane", StringComparison.Ordinal));
        var plain = PageText.Plain(Report("--film", Grey, "--film", Red, "--film", scratch["lane.yaml"]));
        Assert.Contains("Seen at school hump", plain, StringComparison.Ordinal);
        Assert.Contains("Least pitch after the bump for the lift of its wheels has red saloon", plain, StringComparison.Ordinal);
        Assert.Contains("The film: blue saloon at mill lane", plain, StringComparison.Ordinal);
        Assert.DoesNotContain("The film: red saloon", plain, StringComparison.Ordinal);
    }

    [Fact]
    public void Before_and_after_a_change_are_told_with_an_interval()
    {
        After();
        var plain = PageText.Plain(Report("--film", Grey, "--film-after", scratch["after.yaml"]));
        Assert.Contains("It pitches less after the change: 3", plain, StringComparison.Ordinal);
        Assert.Contains("Before and after (90 %)", plain, StringComparison.Ordinal);
    }

    [Fact]
    public void The_line_of_a_report_makes_it_again_elsewhere_to_the_last_byte()
    {
        After();
        File.Copy(Path.Combine(Checkout.Root, Car), scratch["fern-saloon.yaml"]);
        string[] line = ["--film-after", scratch["after.yaml"], "--parts", "film", "--out", scratch["r.html"]];
        File.Copy(Path.Combine(Checkout.Root, Grey), scratch["grey.yaml"]);
        File.Copy(Path.Combine(Checkout.Root, "examples", "films", "grey-saloon-25.csv"), scratch["grey.csv"]);
        Assert.Equal(0, Spoken.Of(["report", scratch["fern-saloon.yaml"], "--film", scratch["grey.yaml"], .. line]).Code);
        var page = File.ReadAllText(scratch["r.html"]);
        Assert.Contains("--film grey.yaml --film-after after.yaml --parts film", WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.Contains("grey.csv", page, StringComparison.Ordinal);
        Assert.DoesNotContain(Path.GetDirectoryName(scratch["r.html"])!, page, StringComparison.Ordinal);
        Assert.Equal(0, Spoken.Of(["report", scratch["fern-saloon.yaml"], "--film", scratch["grey.yaml"], .. line]).Code);
        Assert.Equal(page, File.ReadAllText(scratch["r.html"]));
    }

    [Theory]
    [InlineData("The part film needs a film", "--parts", "film")]
    [InlineData("film: no part is of it", "--film", Grey, "--parts", "car")]
    [InlineData("film-after: it speaks of films", "--film-after", Grey, "--parts", "car")]
    [InlineData("filmed-car: it speaks of films", "--filmed-car", "--parts", "car")]
    [InlineData("a film is given twice", "--film", Grey, "--film", Grey)]
    [InlineData("is given twice, frame by frame", "--film", Grey, "--film-after", "examples/films/../films/grey-saloon-25.yaml")]
    [InlineData("the films show several cars", "--film", Grey, "--film", Red, "--filmed-car")]
    [InlineData("the films show several cars", "--film", Grey, "--film-after", Red)]
    public void What_films_of_a_report_are_not_made_for_is_said(string words, params string[] more)
    {
        var said = Spoken.Of(["report", Car, .. more, "--out", scratch["r.html"]]);
        Assert.NotEqual(0, said.Code);
        Assert.Contains(words, said.Remarks, StringComparison.Ordinal);
        Assert.False(File.Exists(scratch["r.html"]));
    }

    [Fact]
    public void A_film_that_tells_nothing_says_so_in_its_part_and_the_rest_of_the_report_is_made()
    {
        var rows = File.ReadAllText(Path.Combine(Checkout.Root, "examples", "films", "grey-saloon-25.csv")).Split('\n');
        File.WriteAllText(scratch["short.csv"], string.Join('\n', rows[..40]) + "\n");
        File.Copy(Path.Combine(Checkout.Root, Grey), scratch["short.yaml"]);
        var said = Spoken.Of("report", Car, "--film", scratch["short.yaml"], "--parts", "cost,film", "--out", scratch["r.html"]);
        Assert.Equal(0, said.Code);
        Assert.Contains("Nothing is told: ", PageText.Plain(File.ReadAllText(scratch["r.html"])), StringComparison.Ordinal);
    }

    private void After()
    {
        File.Copy(Path.Combine(Checkout.Root, "examples", "films", "red-saloon-25.csv"), scratch["after.csv"]);
        File.WriteAllText(
            scratch["after.yaml"],
            File.ReadAllText(Path.Combine(Checkout.Root, Red)).Replace("seen: red", "seen: grey", StringComparison.Ordinal));
    }

    private string Report(params string[] more)
    {
        var said = Spoken.Of(["report", Car, .. more, "--parts", "film", "--out", scratch["r.html"]]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        return File.ReadAllText(scratch["r.html"]);
    }
}
