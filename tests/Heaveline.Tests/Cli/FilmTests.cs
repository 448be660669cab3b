using System.Text.Json.Nodes;

namespace Heaveline.Tests.Cli;

/// <summary>The command that reads films.</summary>
public class FilmTests
{
    private const string Grey = "examples/films/grey-saloon-25.yaml";
    private const string Red = "examples/films/red-saloon-25.yaml";

    [Fact]
    public void A_film_tells_the_finding_first_then_the_car_with_intervals()
    {
        var said = Spoken.Of("film", Grey);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        var lines = said.Results.Split('\n');
        Assert.StartsWith("grey saloon at school hump, one film at 25 km/h, wheels lifted 7", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("It pitches more than it heaves: only 3", lines[1], StringComparison.Ordinal);
        Assert.Contains("Between its wheels the car swings at 1.2", said.Results, StringComparison.Ordinal);
        Assert.Contains("no film of a real car has tested them yet", said.Results, StringComparison.Ordinal);
        Assert.Contains("Drawn from a computed pass", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void Beside_the_car_that_it_was_drawn_from_the_film_differs_in_nothing_that_it_tells()
    {
        var said = Spoken.Of("film", Grey, "--car", "examples/garage/fern-saloon.yaml", "--load", "empty", "--over", "village-hump");
        Assert.Equal(0, said.Code);
        Assert.Contains("within what was filmed", said.Results, StringComparison.Ordinal);
        Assert.Contains("within the film's interval", said.Results, StringComparison.Ordinal);
        said = Spoken.Of("film", Grey, "--car", "examples/garage/fern-saloon-cured.yaml", "--load", "empty", "--over", "village-hump");
        Assert.Contains("less than was filmed", said.Results, StringComparison.Ordinal);
        Assert.Contains("outside the film's", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void At_a_place_the_car_that_pitches_less_comes_first_in_words_table_and_figure()
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("film", Grey, Red, "--at", "school hump", "--figure", scratch["seen.svg"]);
        Assert.Equal(0, said.Code);
        Assert.Contains("Least pitch after the bump for the lift of its wheels has red saloon", said.Results, StringComparison.Ordinal);
        Assert.True(said.Results.IndexOf("red saloon", StringComparison.Ordinal) < said.Results.LastIndexOf("grey saloon", StringComparison.Ordinal));
        Assert.Contains("Seen at school hump", File.ReadAllText(scratch["seen.svg"]), StringComparison.Ordinal);
    }

    [Fact]
    public void Films_of_one_car_say_the_same_in_whichever_order_they_are_given()
    {
        using var scratch = new Scratch();
        var root = House.Checkout.Root;
        File.Copy(Path.Combine(root, "examples", "films", "red-saloon-25.csv"), scratch["again.csv"]);
        File.WriteAllText(scratch["again.yaml"], File.ReadAllText(Path.Combine(root, Red)).Replace("seen: red", "seen: grey",
            StringComparison.Ordinal));
        string[] Heaves(params string[] films) =>
            [.. Spoken.Of(["film", .. films]).Results.Split('\n').Where(l => l.Contains("heaves", StringComparison.Ordinal))];
        Assert.NotEmpty(Heaves(Grey, scratch["again.yaml"]));
        Assert.Equal(Heaves(Grey, scratch["again.yaml"]), Heaves(scratch["again.yaml"], Grey));
        var said = Spoken.Of("film", Grey, scratch["again.yaml"]);
        Assert.Contains("numbers of one pass are those of film ", said.Results, StringComparison.Ordinal);
        Assert.Contains("Of the other films' motion ", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void One_car_before_and_after_a_change_is_told_with_an_interval()
    {
        using var scratch = new Scratch();
        var root = House.Checkout.Root;
        File.Copy(Path.Combine(root, "examples", "films", "red-saloon-25.csv"), scratch["after.csv"]);
        File.WriteAllText(scratch["after.yaml"], File.ReadAllText(Path.Combine(root, Red)).Replace("seen: red", "seen: grey",
            StringComparison.Ordinal));
        var said = Spoken.Of("film", Grey, "--after", scratch["after.yaml"]);
        Assert.Equal(0, said.Code);
        Assert.Contains("It pitches less after the change: 3", said.Results, StringComparison.Ordinal);
        Assert.Contains("Before and after (90 %)", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void A_kept_track_is_read_with_the_marks_of_a_sheet_and_json_carries_the_verdict()
    {
        var said = Spoken.Of("film", "examples/films/grey-saloon-25.csv", "--marks", Grey, "--json");
        Assert.Equal(0, said.Code);
        var json = JsonNode.Parse(said.Results)!;
        Assert.Equal("said", (string)json["verdict"]!);
        Assert.Equal(1, (int)json["cars"]![0]!["films"]!);
        Assert.Equal("front", (string?)json["cars"]![0]!["slower-end"]);
    }

    [Fact]
    public void The_track_can_be_written_again_and_is_the_same()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Spoken.Of("film", Grey, "--track", scratch["again.csv"]).Code);
        Assert.Equal(File.ReadAllText(Path.Combine(House.Checkout.Root, "examples/films/grey-saloon-25.csv")),
            File.ReadAllText(scratch["again.csv"]));
    }

    [Fact]
    public void A_kept_track_of_other_marks_is_not_used_and_a_named_track_that_is_not_there_is_said()
    {
        using var scratch = new Scratch();
        var sheet = File.ReadAllText(Path.Combine(House.Checkout.Root, Grey));
        var track = File.ReadAllLines(Path.Combine(House.Checkout.Root, "examples", "films", "grey-saloon-25.csv")).ToList();
        track.Insert(2, "from,bytes,12,ends,AB,at_s,1.698,front_px,1050.6,579.1,rear_px,873.2,577.9,box_px,870,520,1055,572");
        File.WriteAllLines(scratch["grey.csv"], track);
        File.WriteAllText(scratch["grey.yaml"], sheet);
        Assert.Equal(0, Spoken.Of("film", scratch["grey.yaml"]).Code);
        File.WriteAllText(scratch["grey.yaml"], sheet.Replace("[873.2, 577.9]", "[875.2, 577.9]", StringComparison.Ordinal));
        var said = Spoken.Of("film", scratch["grey.yaml"]);
        Assert.NotEqual(0, said.Code);
        Assert.Contains("is not used: it was followed from other marks than its sheet has now", said.Remarks, StringComparison.Ordinal);
        File.WriteAllText(scratch["lost.yaml"], sheet + "track: gone.csv\n");
        Assert.Contains("its track: gone.csv is not there", Spoken.Of("film", scratch["lost.yaml"]).Remarks, StringComparison.Ordinal);
        File.WriteAllText(scratch["file.yaml"], sheet + "file: grey.mp4\n");
        Assert.Contains("Did you mean video?", Spoken.Of("film", scratch["file.yaml"]).Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_film_whose_speed_nobody_said_is_asked_about_where_it_goes_as_slowly_as_slow_motion()
    {
        using var scratch = new Scratch();
        var rows = File.ReadAllLines(Path.Combine(House.Checkout.Root, "examples", "films", "grey-saloon-25.csv"));
        var from = Array.FindIndex(rows, r => r.StartsWith("time_s", StringComparison.Ordinal)) + 1;
        for (var i = from; i < rows.Length; i++)
        {
            var cells = rows[i].Split(',');
            cells[0] = (4.0 * double.Parse(cells[0], System.Globalization.CultureInfo.InvariantCulture))
                .ToString("R", System.Globalization.CultureInfo.InvariantCulture);
            rows[i] = string.Join(',', cells);
        }

        File.WriteAllLines(scratch["slow.csv"], rows);
        var sheet = File.ReadAllText(Path.Combine(House.Checkout.Root, Grey));
        File.WriteAllText(scratch["slow.yaml"], sheet.Replace("speed: 25 km/h\n", "", StringComparison.Ordinal));
        var said = Spoken.Of("film", scratch["slow.yaml"]);
        Assert.Contains("one film at 6 km/h as played", said.Results, StringComparison.Ordinal);
        Assert.Contains("the car went 25 km/h or 50 km/h", said.Results, StringComparison.Ordinal);
        File.WriteAllText(scratch["slow.yaml"], sheet);
        said = Spoken.Of("film", scratch["slow.yaml"]);
        Assert.Contains("one film at 25 km/h, wheels", said.Results, StringComparison.Ordinal);
        Assert.DoesNotContain("as played", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_the_dampers_the_film_says_what_it_tells_and_beside_a_car_file_which_of_its_loads_it_allows()
    {
        var said = Spoken.Of("film", Grey, "--car", "examples/garage/fern-saloon.yaml", "--load", "empty");
        Assert.Contains("Of the dampers the film says: they are stiffer in rebound than in bump, more than 1000 to 1", said.Results,
            StringComparison.Ordinal);
        Assert.Matches("the film's frequencies allow (it under .* too|this one alone)", said.Results.ReplaceLineEndings(" "));
        said = Spoken.Of("film", Grey, "--car", "examples/garage/fern-saloon-cured.yaml", "--load", "empty");
        Assert.Matches("under (none of its loads|.* it would have)", said.Results.ReplaceLineEndings(" "));
    }

    [Theory]
    [InlineData("needs a sheet", "examples/films/grey-saloon-25.csv")]
    [InlineData("show several cars", Grey, Red)]
    [InlineData("no film was taken at 'nowhere'; there are school hump", Grey, "--at", "nowhere")]
    [InlineData("--over is the bump", Grey, "--over", "village-hump")]
    [InlineData("refused", "examples/garage/fern-saloon.yaml")]
    [InlineData("not there", "examples/films/nothing.mp4", "--marks", Grey)]
    public void What_cannot_be_asked_is_said(string says, params string[] line)
    {
        var said = Spoken.Of(["film", .. line]);
        Assert.NotEqual(0, said.Code);
        Assert.Contains(says, said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_film_without_the_camera_part_says_how_to_get_it()
    {
        using var scratch = new Scratch();
        File.WriteAllBytes(scratch["a.mp4"], [0, 1, 2]);
        var said = Spoken.Of("film", scratch["a.mp4"], "--marks", Grey);
        Assert.Equal(1, said.Code);
        Assert.True(
            said.Remarks.Contains("camera part", StringComparison.Ordinal) || said.Remarks.Contains("is refused", StringComparison.Ordinal),
                said.Remarks);
    }

    [Fact]
    public void A_lamp_tells_its_rhythm_and_both_pitches_that_go_with_it_or_the_one()
    {
        var said = Spoken.Of("flash", "examples/films/lamp.csv", "--after", "0.5 s");
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Contains("The lamp flashes at 1.3", said.Results, StringComparison.Ordinal);
        Assert.Contains("The car pitches at 1.3", said.Results, StringComparison.Ordinal);
        Assert.NotEqual(0, Spoken.Of("flash", Grey).Code);
        Assert.NotEqual(0, Spoken.Of("flash", "examples/films/lamp.csv", "--after", "2.9 s").Code);
    }

    [Theory]
    [InlineData("say where its lamp is with --marks")]
    [InlineData("is no mark of a lamp", "--marks", "10, 20")]
    [InlineData("is no mark of a lamp", "--marks", "ten, 20, 0.5 s")]
    [InlineData("is refused|camera part", "--marks", "10, 20, 0.5 s")]
    public void A_film_of_a_lamp_is_followed_from_its_mark_or_it_is_said_what_is_missing(string says, params string[] words)
    {
        using var scratch = new Scratch();
        File.WriteAllBytes(scratch["night.mp4"], [0, 1, 2]);
        var said = Spoken.Of(["flash", scratch["night.mp4"], .. words]);
        Assert.NotEqual(0, said.Code);
        Assert.True(says.Split('|').Any(s => said.Remarks.Contains(s, StringComparison.Ordinal)), said.Remarks);
    }

    [Fact]
    public void Check_reads_the_sheet_of_a_film()
    {
        var said = Spoken.Of("check", Grey);
        Assert.Equal((0, "", $"{Grey}: in order\n"), (said.Code, said.Remarks, said.Results));
    }
}
