using System.Text.Json.Nodes;
using Heaveline.Tests.Drives;
using Heaveline.Tests.Files.Drives;

namespace Heaveline.Tests.Cli;

public class DriveTests
{
    private static string Written(Scratch scratch, LogWriter? writer = null, string name = "trip.csv")
    {
        File.WriteAllText(scratch[name], (writer ?? new LogWriter()).Whole);
        return scratch[name];
    }

    [Fact]
    public void A_good_log_is_said_to_be_good_before_any_number()
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("drive", Written(scratch));
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.StartsWith("Single bumps: good.", said.Results, StringComparison.Ordinal);
        Assert.Contains("comma between 8 columns, decimal point", said.Results, StringComparison.Ordinal);
        Assert.Contains("a passenger handles the phone", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_done_yet_is_not_promised()
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("drive", Written(scratch)).Results;
        Assert.Contains("does not pick bumps out of a log", said, StringComparison.Ordinal);
        Assert.Contains("does not work a car's frequencies and damping out", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_carries_verdict_story_and_axes()
    {
        using var scratch = new Scratch();
        var json = JsonNode.Parse(Spoken.Of("drive", Written(scratch), "--json").Results)!;
        Assert.Equal("drive", (string)json["command"]!);
        Assert.Equal(["events", "comfort", "car"], json["verdict"]!.AsObject().Select(v => v.Key));
        Assert.Equal("good", (string)json["verdict"]!["car"]!["level"]!);
        Assert.Equal(3, json["axes"]!["forward"]!.AsArray().Count);
        Assert.NotEmpty(json["story"]!.AsArray());
        Assert.Equal(100.0, new AnswerJson(Spoken.Of("drive", Written(scratch), "--json")).Value("drive-rate"), 1.0);
    }

    [Fact]
    public void The_figure_has_speed_knock_and_swing_and_greys_a_gap()
    {
        using var scratch = new Scratch();
        var rows = new LogWriter().Whole.Split("\r\n").Where((_, i) => i is < 2000 or > 2200);
        File.WriteAllText(scratch["gap.csv"], string.Join('\n', rows));
        var said = Spoken.Of("drive", scratch["gap.csv"], "--figure", scratch["strip.svg"]);
        Assert.Equal(0, said.Code);
        var figure = File.ReadAllText(scratch["strip.svg"]);
        Assert.All(
            ["speed (km/h)", "knock (m/s²)", "swing (°/s)", "nothing is read there"],
            words => Assert.Contains(words, figure, StringComparison.Ordinal));
        Assert.Contains("nothing is read across", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_that_says_no_is_an_answer_too()
    {
        using var scratch = new Scratch();
        var slow = new LogWriter { Drive = new PlantedDrive { Rate = 10.0, Jitter = 0.0 } };
        var said = Spoken.Of("drive", Written(scratch, slow));
        Assert.Equal(0, said.Code);
        Assert.Contains("10 samples a second: body motion is just seen, nothing else.", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_files_are_one_drive_in_any_order()
    {
        using var scratch = new Scratch();
        foreach (var (name, text) in new LogWriter().Apart)
        {
            File.WriteAllText(scratch[name], text);
        }

        var one = Spoken.Of("drive", scratch["Accelerometer.csv"], scratch["Gyroscope.csv"], scratch["Location.csv"]);
        Assert.Equal(0, one.Code);
        Assert.Equal(one.Results, Spoken.Of("drive", scratch["Location.csv"], scratch["Gyroscope.csv"], scratch["Accelerometer.csv"]).Results);
    }

    [Theory]
    [InlineData("time,lat\n0,1\n1,2\n2,3\n", "acceleration")]
    [InlineData("time,ax,ay,az\n0.00,0.1,0.2,9.8\n0.01,0.1,0.2,9.8\n0.02,0.1,0.2,9.8\n", "length of the log")]
    [InlineData("time,accUserX,accUserY,accUserZ\n0.00,0.1,0.2,0.3\n0.01,0.1,0.2,0.3\n0.02,0.1,0.2,0.1\n", "without gravity")]
    public void A_log_that_cannot_be_read_ends_with_1_and_says_why(string text, string why)
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["log.csv"], text);
        var said = Spoken.Of("drive", scratch["log.csv"]);
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains(why, said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void No_file_at_all_is_wrong_usage() => Assert.Equal(2, Spoken.Of("drive").Code);

    [Fact]
    public void The_figure_never_replaces_the_log()
    {
        using var scratch = new Scratch();
        var log = Written(scratch, name: "trip.svg.csv");
        File.Move(log, scratch["trip.svg"]);
        var said = Spoken.Of("drive", scratch["trip.svg"], "--figure", scratch["trip.svg"]);
        Assert.NotEqual(0, said.Code);
        Assert.StartsWith("time", File.ReadAllText(scratch["trip.svg"]), StringComparison.Ordinal);
    }
}
