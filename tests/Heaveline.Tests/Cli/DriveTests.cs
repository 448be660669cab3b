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
        // How it was read is told on demand.
        Assert.DoesNotContain("decimal point", said.Results, StringComparison.Ordinal);
        Assert.Contains(
            "comma between 8 columns, decimal point", Spoken.Of("drive", scratch["trip.csv"], "--all").Results, StringComparison.Ordinal);
        Assert.Contains("a passenger handles the phone", said.Results, StringComparison.Ordinal);
    }

    // A hump, a dip and the hump again, twice over.
    private static (string Path, double[] Onsets) Bumpy(Scratch scratch)
    {
        var dip = new PlantedBump("versine", -0.04, 2.5);
        var (motion, onsets) = new PlantedRoad
        {
            Bumps = [(PlantedBump.Round, 5.5), (dip, 8.0), (PlantedBump.Round, 6.5), (dip, 8.5), (PlantedBump.Round, 7.0)],
        }.Driven();
        File.WriteAllText(scratch["bumpy.csv"], WrittenLog.Of(motion.Log));
        return (scratch["bumpy.csv"], onsets);
    }

    [Fact]
    public void Bumps_are_found_sorted_and_told_before_any_number()
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("drive", Bumpy(scratch).Path, "--wheelbase", "2.70 m");
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Contains("5 bumps were found at 2 sites; all count.", said.Results.Split('\n')[0], StringComparison.Ordinal);
        Assert.Contains("1  site 1, hump", said.Results, StringComparison.Ordinal);
        Assert.Contains("2  site 2, dip", said.Results, StringComparison.Ordinal);
        Assert.Contains("the floor shakes by", said.Results, StringComparison.Ordinal);
        Assert.Contains("Pitch angles are what lies above 0.1 Hz", said.Results, StringComparison.Ordinal);
        Assert.DoesNotContain("The wheelbase is not given", said.Results, StringComparison.Ordinal);
        Assert.Contains("The wheelbase is not given: 2.6 m was taken.", Spoken.Of("drive", Bumpy(scratch).Path).Results, StringComparison.Ordinal);
    }

    [Fact]
    public void Bumps_that_were_put_in_are_not_said_to_be_found()
    {
        using var scratch = new Scratch();
        var (path, onsets) = Bumpy(scratch);
        var one = FormattableString.Invariant($"{onsets[4] + 8.0:F1} s");
        var said = Spoken.Of("drive", path, "--wheelbase", "2.70 m", "--add", one);
        Assert.Contains("5 bumps were found and 1 put in by hand, at ", said.Results, StringComparison.Ordinal);
        var all = string.Join(", ", onsets.Select(t => FormattableString.Invariant($"{t:F1} s")));
        said = Spoken.Of("drive", path, "--wheelbase", "2.70 m", "--add", all);
        Assert.Contains("No bump was found, 5 were put in by hand, at 2 sites; all count.", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bumps_numbers_stand_in_the_rows_of_a_pass_and_all_of_them_on_demand()
    {
        using var scratch = new Scratch();
        var (path, onsets) = Bumpy(scratch);
        var some = Spoken.Of("drive", path).Results;
        var all = Spoken.Of("drive", path, "--all").Results;
        Assert.Contains("RMS pitch, 1st s", some, StringComparison.Ordinal);
        Assert.Contains("with --all", some, StringComparison.Ordinal);
        Assert.DoesNotContain("settling: cycles", some, StringComparison.Ordinal);
        Assert.Contains("settling: RMS pitch, first second", all, StringComparison.Ordinal);
        Assert.Contains("settling: cycles", all, StringComparison.Ordinal);
        Assert.Contains("Site 1: a hump about 3.6 m long, 3 bumps that count at 20 km/h to 25 km/h", all, StringComparison.Ordinal);
        Assert.Contains("Site 2: a dip about", all, StringComparison.Ordinal);
        var json = JsonNode.Parse(Spoken.Of("drive", path, "--json").Results)!;
        var events = json["events"]!.AsArray();
        Assert.Equal(5, events.Count);
        Assert.Equal(onsets[0], (double)events[0]!["onset"]!, 0.1);
        Assert.Equal("rad", (string)events[0]!["numbers"]!["settling-rms-pitch"]!["unit"]!);
        Assert.True((double)events[0]!["numbers"]!["settling-rms-pitch"]!["halfWidth"]! > 0.0);
    }

    [Fact]
    public void Sites_are_named_bumps_added_and_rejected_at_the_command_line()
    {
        using var scratch = new Scratch();
        var (path, onsets) = Bumpy(scratch);
        string At(double t) => FormattableString.Invariant($"{t:F1} s");
        var said = Spoken.Of(
            "drive", path, "--site", $"chapel: {At(onsets[0])}, {At(onsets[2])}", "--site", $"ford: {At(onsets[1])}", "--reject", At(onsets[3]),
            "--phone", "1.45 m behind front axle, 0.1 m left, 0.2 m up");
        Assert.Equal(0, said.Code);
        Assert.Contains("1  chapel, hump", said.Results, StringComparison.Ordinal);
        Assert.Contains("2  ford, dip", said.Results, StringComparison.Ordinal);
        Assert.Contains("Bump 4 does not count: rejected by hand.", said.Results, StringComparison.Ordinal);
        var seat = Spoken.Of(
            "drive", path, "--all", "--car", "examples/garage/fern-saloon.yaml", "--seat", "driver", "--phone", "1.45 m behind front axle");
        Assert.Contains("driver: RMS vertical", seat.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void A_printout_fits_a_screen_the_finding_before_the_bumps_and_the_safety_last()
    {
        using var scratch = new Scratch();
        var lines = Spoken.Of("drive", Bumpy(scratch).Path, "--wheelbase", "2.70 m").Results.TrimEnd().ReplaceLineEndings("\n").Split('\n');
        Assert.InRange(lines.Length, 20, 45);
        int[] places =
        [
            .. new[]
            {
                "Single bumps: ", "Comfort: ", "The car itself: ", "The car was sought from ", "Bumps that count",
                "Vibration of the floor", "Log ",
                "Pitch angles are", "What matters most", "Drive tests off",
            }.Select(start => Assert.Single(Enumerable.Range(0, lines.Length), i => lines[i].StartsWith(start, StringComparison.Ordinal))),
        ];
        Assert.Equal(places.Order(), places);
        Assert.Equal(lines.Length - 1, places[^1]);
    }

    [Fact]
    public void A_car_that_is_not_told_is_said_so_first_and_none_of_its_numbers_is_printed_unasked()
    {
        using var scratch = new Scratch();
        var (path, onsets) = Bumpy(scratch);
        string[] asked =
        [
            "drive", path, "--wheelbase", "2.70 m", "--reject",
            FormattableString.Invariant($"{onsets[0]:F1} s, {onsets[1]:F1} s, {onsets[2]:F1} s"),
        ];
        var said = Spoken.Of(asked).Results;
        Assert.Contains("\nThe car itself: not told by this drive. Two bumps with no other near them", said, StringComparison.Ordinal);
        Assert.Contains("The car was sought from the 2 bumps that count", said, StringComparison.Ordinal);
        Assert.DoesNotContain("as driven", said, StringComparison.Ordinal);
        Assert.DoesNotContain("The car itself: good", said, StringComparison.Ordinal);
        Assert.Contains("Bumps 1, 2 and 3 do not count: rejected by hand.", said, StringComparison.Ordinal);
        Assert.Contains("not believed", Spoken.Of([.. asked, "--all"]).Results, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--wheelbase", "9 kg", "kg")]
    [InlineData("--wheelbase", "40 m", "give 0.5 m to 12 m")]
    [InlineData("--phone", "1.45 m", "says no direction")]
    [InlineData("--phone", "0.2 m up", "how far behind the front axle")]
    [InlineData("--site", "chapel", "a colon and instants")]
    [InlineData("--site", "chapel: 84 m", "m")]
    [InlineData("--reject", "soon", "soon")]
    [InlineData("--seat", "driver", "give --car")]
    public void What_is_said_of_the_drive_is_refused_by_name(string option, string words, string why)
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("drive", Written(scratch), option, words);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains(why, said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void The_csv_has_a_row_a_bump_and_every_figure_is_drawn()
    {
        using var scratch = new Scratch();
        var (path, onsets) = Bumpy(scratch);
        Assert.Equal(0, Spoken.Of("drive", path, "--csv", scratch["bumps.csv"], "--reject", FormattableString.Invariant($"{onsets[1]:F1} s")).Code);
        var rows = File.ReadAllLines(scratch["bumps.csv"]);
        Assert.Equal(6, rows.Length);
        Assert.StartsWith("number,site,kind,counts,by hand,why not,seen [s],onset [s]", rows[0], StringComparison.Ordinal);
        Assert.Contains("settling-rms-pitch [°],settling-rms-pitch half-width [°]", rows[0], StringComparison.Ordinal);
        Assert.All(rows, r => Assert.Equal(rows[0].Split(',').Length, r.Split(',').Length));
        Assert.Contains(",dip,no,yes,Rejected by hand.,", rows[2], StringComparison.Ordinal);
        foreach (var (draw, words) in new[]
        {
            ("strip", "bumps that count"),
            ("events", "time from first touch"),
            ("distance", "distance from first touch"),
            ("spectra", "between"),
        })
        {
            var said = Spoken.Of("drive", path, "--draw", draw, "--figure", scratch[draw + ".svg"]);
            Assert.Equal(0, said.Code);
            Assert.Contains(words, File.ReadAllText(scratch[draw + ".svg"]), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_drive_without_bumps_has_nothing_to_lay_over_each_other()
    {
        using var scratch = new Scratch();
        var slow = new LogWriter { Drive = new PlantedDrive { Rate = 10.0, Jitter = 0.0 } };
        var said = Spoken.Of("drive", Written(scratch, slow), "--draw", "events", "--figure", scratch["events.svg"]);
        Assert.NotEqual(0, said.Code);
        Assert.Contains("bumps of the drive", said.Remarks, StringComparison.Ordinal);
        Assert.Null(JsonNode.Parse(Spoken.Of("drive", scratch["trip.csv"], "--json").Results)!["events"]);
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
        Assert.Equal(100.0, new AnswerJson(Spoken.Of("drive", Written(scratch), "--json")).Value("drive-rate", table: 1), 1.0);
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
