using System.Diagnostics;
using System.Globalization;
using System.Text;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

public class PlainOutputTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";

    [Theory]
    [InlineData("check")]
    [InlineData("describe")]
    [InlineData("pass")]
    [InlineData("compare")]
    [InlineData("road")]
    public void Help_shows_an_example_for_each_command(string command)
    {
        var said = Spoken.Of(command, "--help");
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Contains($"heaveline {command}", said.Results[said.Results.IndexOf("Example", StringComparison.Ordinal)..]);
        Assert.Contains($"Usage:\n  heaveline {command}", said.Results);
        Assert.Contains($"\n  {command} ", Spoken.Of("--help").Results);
    }

    // A name that would set a terminal's title, colour it and turn its writing round.
    [Fact]
    public void What_a_terminal_would_obey_is_spelled_out()
    {
        using var scratch = new Scratch();
        var name = "\"\\e]0;pwn\\a\\e[31mred\\u202e\\u009b31m\"";
        File.WriteAllText(scratch["esc.yaml"], StraightCar.Text.Replace(StraightCar.Text.Split('\n')[0], $"car: {name}", StringComparison.Ordinal));
        foreach (var said in new[] { Spoken.Of("describe", scratch["esc.yaml"]), Spoken.Of("pass", scratch["esc.yaml"], "--load", "\u001b[31m") })
        {
            Assert.DoesNotContain(said.Results + said.Remarks, c => (char.IsControl(c) && c is not ('\n' or '\t')) || c == '\u202e');
            Assert.Contains("\\u001B[31m", said.Results + said.Remarks);
        }
    }

    [Theory]
    [InlineData("new", "a\nb.yaml")]
    [InlineData("check", "a\u202eb.yaml")]
    [InlineData("pass", "examples/garage/fern-saloon.yaml", "--csv", "a\nheaveline: all is well.csv")]
    public void A_name_that_is_not_all_seen_is_refused_on_one_line(params string[] line)
    {
        var said = Spoken.Of(line);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.EndsWith("holds a character that is not seen; no name or value does.\n", said.Remarks, StringComparison.Ordinal);
        Assert.Equal(1, said.Remarks.Count(c => c == '\n'));
        Assert.Matches(@"\\u(000A|202E)", said.Remarks);
    }

    // Escaped in YAML a line end is no character of the file.
    [Theory]
    [InlineData("car: Test car", "car: \"Test\\ncar\"", 1)]
    [InlineData("  driver: {behind", "  \"dri\\nver\": {behind", 25)]
    [InlineData("what: driver,", "what: \"dri\\u2028ver\",", 28)]
    public void A_name_of_several_lines_in_a_file_is_refused_in_its_place(string name, string broken, int line)
    {
        var reading = Files.TextCar.Read(Files.TextCar.With(name, broken));
        var refusal = Assert.Single(reading.Refusals, r => r.Message.Contains("a line break; it must stand on one line.", StringComparison.Ordinal));
        Assert.Equal(line, refusal.Line);
        Assert.DoesNotContain(refusal.Message, Heaveline.Files.ControlCharacter.Is);
        Assert.Equal([], Files.TextCar.Read(Files.TextCar.Sound + "note: |\n  Weighed twice.\n  Tank full.\n").Refusals);
    }

    [Fact]
    public void Without_a_command_it_shows_what_there_is()
    {
        Assert.Equal(Spoken.Of("--help"), Spoken.Of());
        Assert.Contains("Exit codes: 0 done, 1 input refused, 2 wrong usage, 3 could not be computed.", Spoken.Of().Results);
    }

    [Fact]
    public void Numbers_have_a_decimal_point_wherever_the_program_runs()
    {
        var home = CultureInfo.CurrentCulture;
        var here = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        // As a German system has them; built by hand because the tests run without the systems' tables of cultures.
        (here.NumberFormat.NumberDecimalSeparator, here.NumberFormat.NumberGroupSeparator, here.NumberFormat.NegativeSign) = (",", ".", "~");
        string[][] lines =
        [
            ["describe", Saloon, "--modes"], ["pass", Saloon, "--speed", "40.5 km/h"], ["pass", Saloon, "--json"],
            ["compare", Saloon, "examples/garage/fern-saloon-cured.yaml"],
        ];
        try
        {
            var expected = lines.Select(line => Spoken.Of(line)).ToList();
            foreach (var (line, plain) in lines.Zip(expected))
            {
                CultureInfo.CurrentCulture = here;
                Assert.Equal(plain, Spoken.Of(line));
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = home;
        }
    }

    [Theory]
    [InlineData("de_DE.UTF-8", 0, "describe", Saloon)]
    [InlineData("C", 0, "pass", Saloon, "--load", "four up with luggage")]
    [InlineData("C", 1, "describe", "nowhere.yaml")]
    [InlineData("C", 2, "describe", Saloon, "--frobnicate")]
    public async Task A_pipe_gets_plain_UTF8_and_only_the_results(string language, int code, params string[] line)
    {
        using var process = Process.Start(new ProcessStartInfo(
            Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "Heaveline.Cli.exe" : "Heaveline.Cli"), line)
        {
            WorkingDirectory = Checkout.Root,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["LANG"] = language, ["LC_ALL"] = language },
        })!;
        var stop = TestContext.Current.CancellationToken;
        var saying = process.StandardError.ReadToEndAsync(stop);
        using var bytes = new MemoryStream();
        await process.StandardOutput.BaseStream.CopyToAsync(bytes, stop);
        await process.WaitForExitAsync(stop);
        var remarks = (await saying).ReplaceLineEndings("\n");
        Assert.Equal(code, process.ExitCode);
        var results = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes.ToArray()).ReplaceLineEndings("\n");
        Assert.DoesNotContain('\u001b', results + remarks);
        Assert.DoesNotContain('\uFEFF', results);
        var within = Spoken.Of(line);
        Assert.Equal((within.Results, within.Remarks), (results, remarks));
    }

    [Fact]
    public void Warnings_stand_beside_the_results_not_in_them()
    {
        using var scratch = new Scratch();
        // A front spring four times too stiff is possible, but doubtful.
        File.WriteAllText(scratch["stiff.yaml"], StraightCar.Text.Replace("19 N/mm", "140 N/mm", StringComparison.Ordinal));
        var said = Spoken.Of("describe", scratch["stiff.yaml"], "--json");
        Assert.Equal(0, said.Code);
        Assert.Contains("warning", said.Remarks);
        System.Text.Json.Nodes.JsonNode.Parse(said.Results);
    }
}
