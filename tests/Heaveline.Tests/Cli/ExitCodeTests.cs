using Heaveline.Cli;
using Heaveline.Cli.Output;
using Heaveline.Files;

namespace Heaveline.Tests.Cli;

public class ExitCodeTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";

    [Fact]
    public void A_refused_car_ends_in_1_with_its_line()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["bad.yaml"], StraightCar.Text.Replace("wheelbase: 2.6 m", "wheelbase: 2.6", StringComparison.Ordinal));
        foreach (var command in new[] { "check", "describe", "pass" })
        {
            var said = Spoken.Of(command, scratch["bad.yaml"]);
            Assert.Equal(1, said.Code);
            Assert.Contains("bad.yaml:3:12: refused: ", said.Remarks);
            Assert.Contains(" 3 | wheelbase: 2.6\n", said.Remarks);
        }
    }

    [Theory]
    [InlineData("describe", "")]
    [InlineData("check", "")]
    [InlineData("pass", "", "--road", "", "--speed", "40 km/h")]
    [InlineData("pass", Saloon, "--road", "")]
    [InlineData("pass", Saloon, "--road", " ")]
    [InlineData("pass", Saloon, "--speed", "")]
    [InlineData("pass", Saloon, "--csv", "", "--figure", "")]
    [InlineData("compare", "", "")]
    [InlineData("ride", "")]
    [InlineData("road", "")]
    [InlineData("rule", "ratio", "")]
    [InlineData("why", "")]
    [InlineData("doubt", "")]
    [InlineData("cost", "", "")]
    [InlineData("link", "")]
    [InlineData("report", Saloon, "--out", "")]
    [InlineData("new", "")]
    [InlineData("serve", "")]
    [InlineData("describe", " ")]
    public void A_blank_where_a_name_should_stand_is_refused_in_words(params string[] line)
    {
        var said = Spoken.Of(line);
        Assert.InRange(said.Code, 1, 2);
        Assert.NotEmpty(said.Remarks);
        Assert.DoesNotContain("fault of the program", said.Remarks);
    }

    // The uppermost folder lies in none.
    [Theory]
    [InlineData("describe")]
    [InlineData("pass")]
    public void The_uppermost_folder_is_no_car(string command)
    {
        var said = Spoken.Of(command, "/");
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains("/: refused", said.Remarks);
    }

    [Fact]
    public void A_fault_of_the_program_ends_in_4_with_one_sentence_its_version_and_where_to_report_it()
    {
        using var remarks = new StringWriter();
        using var results = new Broken();
        Assert.Equal(4, Program.Run(["road"], new Streams(results, remarks, interactive: false)));
        var said = Assert.Single(remarks.ToString().TrimEnd().Split('\n'));
        Assert.StartsWith("heaveline: a fault of the program itself (NotImplementedException in Broken).", said, StringComparison.Ordinal);
        Assert.Contains($"Please report it where you got Heaveline {Release.Version}", said, StringComparison.Ordinal);
        Assert.EndsWith(": heaveline road", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_the_runtime_has_no_sentences_ours_stand_in()
    {
        Assert.Equal("access is denied.", FileTrouble.Words(new UnauthorizedAccessException("UnauthorizedAccess_IODenied_Path, /a b/c.yaml")));
        Assert.Equal("there is no such file.", FileTrouble.Words(new FileNotFoundException("IO_FileNotFound_FileName, c.yaml")));
        Assert.Equal("the disk is full.", FileTrouble.Words(new IOException("the disk is full.")));
        Assert.True(AppContext.TryGetSwitch("System.Resources.UseSystemResourceKeys", out var keys) && !keys);
    }

    private sealed class Broken : StringWriter
    {
        public override void WriteLine(string? value) => throw new NotImplementedException();
    }

    [Fact]
    public void A_missing_car_ends_in_1_without_a_marked_line()
    {
        var said = Spoken.Of("describe", "nowhere.yaml");
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.StartsWith("nowhere.yaml: refused: there is no such file.\n", said.Remarks);
        Assert.DoesNotContain("^", said.Remarks);
    }

    [Fact]
    public void A_name_too_many_ends_in_2_and_says_what_the_command_takes()
    {
        foreach (var (line, takes) in new (string[], string)[]
        {
            (["cost", Saloon, "b.yaml", "c.yaml"],
                "cost takes CAR, at most 2: The car before, then after the change; one car alone shows where it stands."),
            (["describe", Saloon, "c.yaml"], "describe takes CAR, at most 1: A car file or a variant."),
        })
        {
            var said = Spoken.Of(line);
            Assert.Equal((2, ""), (said.Code, said.Results));
            Assert.Equal(
                $"heaveline: Unrecognized command or argument 'c.yaml'.\nheaveline: {takes}\nTry 'heaveline {line[0]} --help'.\n", said.Remarks);
        }

        Assert.DoesNotContain("takes", Spoken.Of("describe", Saloon, "--laod").Remarks);
    }

    [Fact]
    public void An_unknown_load_state_ends_in_1_and_lists_the_known_ones()
    {
        foreach (var command in new[] { "describe", "pass" })
        {
            var said = Spoken.Of(command, Saloon, "--load", "four up");
            Assert.Equal((1, ""), (said.Code, said.Results));
            Assert.Equal("heaveline: 'four up' is no load state of Fern saloon; it has: empty, driver, four up with luggage.\n", said.Remarks);
        }
    }

    [Fact]
    public void An_unknown_road_ends_in_1_and_lists_the_known_ones()
    {
        var said = Spoken.Of("pass", Saloon, "--road", "vilage-hump");
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains("Did you mean village-hump?", said.Remarks);
        Assert.Contains("speed-table", said.Remarks);
    }

    [Fact]
    public void A_certified_run_of_a_curved_car_ends_in_1_and_names_what_is_curved()
    {
        var said = Spoken.Of("pass", Saloon, "--certified");
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains("front bump stop with an exponent", said.Remarks);
        Assert.Contains("rear friction", said.Remarks);
    }

    [Theory]
    [InlineData("40", "40 has no unit")]
    [InlineData("40 kmh", "Write it as 40 km/h")]
    [InlineData("40 kg", "km/h")]
    [InlineData("40 km/h, fast", "speed 'fast'")]
    public void A_speed_without_a_fitting_unit_ends_in_2_and_says_what_fits(string speed, string hint)
    {
        var said = Spoken.Of("compare", Saloon, Saloon, "--speed", speed);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains(hint, said.Remarks);
    }

    [Theory]
    [InlineData("0 km/h")]
    [InlineData("-40 km/h")]
    [InlineData("500 km/h")]
    public void A_speed_that_nobody_drives_ends_in_1(string speed)
    {
        var said = Spoken.Of("pass", Saloon, "--speed", speed);
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains("it must be between 1.8 and 432 km/h", said.Remarks);
    }

    [Theory]
    [InlineData("0.1 m/s", "between 0.5 and 120 m/s")]
    [InlineData("400 mph", "between 1.12 and 268 mph")]
    [InlineData("500 km/h", "between 1.8 and 432 km/h")]
    public void A_refused_speed_is_told_in_the_unit_that_was_typed(string speed, string limits)
    {
        var said = Spoken.Of("pass", Saloon, "--speed", speed).Remarks;
        Assert.Contains($"speed '{speed}': it must be {limits}.", said, StringComparison.Ordinal);
        Assert.DoesNotContain(speed.EndsWith("km/h", StringComparison.Ordinal) ? "m/s" : "km/h", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("pass examples/garage/fern-saloon.yaml --sped 3", "'--sped'", "heaveline pass --help")]
    [InlineData("describe", "'CAR'", "heaveline describe --help")]
    [InlineData("frobnicate", "'frobnicate'", "heaveline --help")]
    [InlineData("map examples/garage/fern-saloon.yaml", "'map'", "heaveline --help")]
    [InlineData("descirbe examples/garage/fern-saloon.yaml", "'descirbe' is no command. Did you mean describe?", "heaveline --help")]
    [InlineData("ride examples/garage/fern-saloon.yaml --road lane.yaml", "'--road' is no option of ride.", "heaveline ride --help")]
    [InlineData("compare examples/garage/fern-saloon.yaml --sped 3", "'--sped' is no option of compare. Did you mean --speed?", "compare --help")]
    [InlineData("check examples/garage/fern-saloon.yaml --strict", "'--strict' is no option of check.", "heaveline check --help")]
    [InlineData("serve --garage", "'--garage' is no option of serve.", "heaveline serve --help")]
    [InlineData("compare examples/garage/fern-saloon.yaml", "at least 2 cars", "must be given")]
    [InlineData("pass examples/garage/fern-saloon.yaml --csv-rate 100", "--csv-rate speaks of the file of --csv", "give that too")]
    public void Wrong_usage_ends_in_2_and_names_the_word_and_the_way_on(string line, string word, string way)
    {
        var said = Spoken.Typed(line);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains(word, said.Remarks);
        Assert.Contains(way, said.Remarks);
    }

    [Theory]
    [InlineData("pass", "examples/garage/fern-saloon.yaml")]
    [InlineData("compare", "examples/garage/fern-saloon.yaml", "examples/garage/fern-saloon-cured.yaml")]
    public void A_pass_that_leaves_the_models_range_ends_in_3_and_shows_no_settling(params string[] line)
    {
        var said = Spoken.Of([.. line, "--road", "village-hump-100", "--speed", "250 km/h"]);
        Assert.Equal(3, said.Code);
        Assert.Contains("passed its hard limit", said.Remarks);
        Assert.DoesNotContain("settling", said.Results);
    }

    [Theory]
    [InlineData("worksheet wheel-rate --up \"1 mm\"", "Try 'heaveline worksheet wheel-rate --help'.")]
    [InlineData("pass", "Try 'heaveline pass --help'.")]
    [InlineData("nothing", "Try 'heaveline --help'.")]
    public void Wrong_usage_names_the_help_as_it_is_typed(string line, string words)
    {
        var said = Spoken.Typed(line);
        Assert.Equal(2, said.Code);
        Assert.Contains(words, said.Remarks, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("80x")]
    [InlineData("99999999999")]
    [InlineData("-1")]
    [InlineData("65536")]
    public void A_port_that_is_none_is_refused_without_a_word_of_the_runtime(string port)
    {
        var said = Spoken.Of("serve", $"--port={port}");
        Assert.Equal(2, said.Code);
        Assert.Contains($"--port '{port}': a port is a whole number between 0 and 65535.", said.Remarks);
        Assert.DoesNotContain("System.", said.Remarks);
    }

    [Fact]
    public void A_title_that_is_too_long_is_refused_by_its_name()
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("report", Saloon, "--title", new string('a', 1000), "--out", scratch["x.html"]);
        Assert.Equal(2, said.Code);
        Assert.Contains("title: give one line of at most 200 signs; it has 1000.", said.Remarks);
    }
}
