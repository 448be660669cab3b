using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

public class UnitsTests
{
    private const string Fern = "examples/garage/fern-saloon.yaml";
    private const string Cured = "examples/garage/fern-saloon-cured.yaml";
    private const string Loaded = "--load \"four up with luggage\"";

    // What stays by name: accelerations and their doses, the factor of ISO 2631-1, wave numbers and densities of ISO 8608.
    private static readonly Regex Metric = new(
        @"\d[ \u00a0](?:mm|cm|m|km/h|kg|N|kN|bar|MPa|L(?! f/V))(?![\w/²³^°])"
        + @"|(?<![\w^])(?:mm|km/h|kg|N/mm|N s/m|N m/°|MPa|bar)(?![\w²³])");

    public static TheoryData<string, string> Kept => new()
    {
        { "describe", $"describe {Fern} --doubt" },
        { "pass", $"pass {Fern} --speed \"20 mph\" --road pothole-left" },
        { "compare", $"compare {Fern} {Cured} --speed \"20 mph, 30 mph\" {Loaded}" },
        { "cost", $"cost {Fern} {Cured} {Loaded}" },
        { "why", $"why {Fern} --speed \"30 mph\" {Loaded}" },
    };

    public static TheoryData<string> Lines =>
    [
        .. KeptAnswers.Cars.SelectMany(car => new[]
        {
            $"describe examples/garage/{car}.yaml", $"pass examples/garage/{car}.yaml {KeptAnswers.Passes[car]} --all",
            $"why examples/garage/{car}.yaml --speed \"40 km/h\"",
        }),
        $"cost {Fern} {Cured}", $"ride {Fern} {Cured}", "road", "road examples/roads/country-lane.yaml", $"rule {Fern} --rule wheelbase",
        $"rule {Fern} --rule ratio", "link examples/garage/pebble-fluid-car.yaml",
        "worksheet bounce --swings 5 --time \"3.9 s\" --mass \"1360 kg\" --tyres \"840 N/mm\"",
        "worksheet ratio --stop \"-40 mm, -24.3 mm\" --stop \"-20 mm, -12.2 mm\" --stop \"0 mm, 0 mm\" --stop \"20 mm, 12.5 mm\" "
            + "--stop \"40 mm, 25.3 mm\"",
    ];

    [Theory, MemberData(nameof(Kept))]
    public void The_example_saloon_is_answered_in_imperial_units_as_before(string word, string line)
    {
        var path = Path.Combine(KeptAnswers.Folder, $"fern-saloon.{word}.imperial.txt");
        var said = Spoken.Typed($"{line} --units imperial");
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        var same = File.Exists(path) && IsSame(File.ReadAllText(path).ReplaceLineEndings("\n"), said.Results);
        if (KeptAnswers.Renew && !same)
        {
            File.WriteAllText(path, said.Results);
            return;
        }

        Assert.True(same, $"{path}: the answer has changed; docs/answers.md says how it may and how to renew it.\n{said.Results}");
    }

    [Theory, MemberData(nameof(Lines))]
    public void No_metric_unit_is_left_in_an_imperial_printout(string line)
    {
        var said = Spoken.Typed($"{line} --units imperial");
        Assert.Equal(0, said.Code);
        var printed = said.Results.Split("For the car file:")[0];
        Assert.DoesNotContain(printed.Split('\n'), one => Metric.IsMatch(one));
    }

    [Theory, MemberData(nameof(Kept))]
    public void Machines_are_answered_in_metric_units_whatever_the_reader_reads(string word, string line)
    {
        Assert.NotEmpty(word);
        Assert.Equal(Spoken.Typed($"{line} --json").Results, Spoken.Typed($"{line} --json --units imperial").Results);
    }

    [Fact]
    public void A_metric_printout_is_the_one_without_the_option() =>
        Assert.Equal(Spoken.Typed($"describe {Fern}").Results, Spoken.Typed($"describe {Fern} --units metric").Results);

    [Fact]
    public void A_speed_asked_in_miles_an_hour_is_told_so()
    {
        var said = Spoken.Typed($"pass {Fern} --speed \"20 mph\" --units imperial --all").Results;
        Assert.Contains("at 20 mph.", said, StringComparison.Ordinal);
        Assert.Matches(@"\nspeed +mph +20\.0\n", said);
    }

    [Fact]
    public void The_garage_remembers_the_units_and_an_option_overrules_it()
    {
        using var garage = new Scratch();
        File.Copy(Path.Combine(Checkout.Root, Fern), garage["fern.yaml"]);
        File.WriteAllText(garage["garage.yaml"], "units: imperial\n");
        Assert.Matches(@"\nmass +lb ", Spoken.Of("describe", garage["fern.yaml"]).Results);
        Assert.Matches(@"\nmass +kg ", Spoken.Of("describe", garage["fern.yaml"], "--units", "metric").Results);
        File.WriteAllText(garage["garage.yaml"], "units: imperal\n");
        var refused = Spoken.Of("describe", garage["fern.yaml"]);
        Assert.Equal((1, ""), (refused.Code, refused.Results));
        Assert.Contains("garage.yaml:1:8: refused: units is 'imperal'; it must be metric or imperial.", refused.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void Other_units_are_wrong_usage()
    {
        var said = Spoken.Typed($"describe {Fern} --units furlongs");
        Assert.Equal(2, said.Code);
        Assert.Contains("'furlongs' is no choice of units; there are metric, imperial.", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_follows()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Spoken.Of("pass", Fern, "--units", "imperial", "--figure", scratch["pass.svg"]).Code);
        var drawn = Regex.Replace(File.ReadAllText(scratch["pass.svg"]), "<svg[^>]*>", "");
        Assert.Contains("31.1", drawn, StringComparison.Ordinal);
        Assert.DoesNotContain("(mm)", drawn, StringComparison.Ordinal);
        Assert.DoesNotContain("km/h", drawn, StringComparison.Ordinal);
    }

    [Fact]
    public void A_report_follows_and_says_how_it_is_made_again()
    {
        using var scratch = new Scratch();
        var said = Spoken.Of(
            "report", Fern, Cured, "--parts", "car,modes,pass,compare,cost,why", "--units", "imperial", "--out", scratch["fern.html"]);
        Assert.Equal("", said.Remarks);
        var html = File.ReadAllText(scratch["fern.html"]);
        Assert.Contains("--units imperial", html, StringComparison.Ordinal);
        var parts = Regex.Replace(html.Split("To make this report again")[^2], "<style.*?</style>|<[^>]*>", " ", RegexOptions.Singleline);
        Assert.Contains("31.1 mph", parts, StringComparison.Ordinal);
        Assert.Empty(Metric.Matches(parts).Select(match => parts.Substring(Math.Max(0, match.Index - 40), 60)));
    }

    // Words and blanks exactly, numbers to one step of their last digit: another machine may round the other way.
    private static bool IsSame(string kept, string now)
    {
        var number = new Regex(@"\d+(?:\.\d+)?");
        string[] Words(string text) => number.Split(text);
        return Words(kept).SequenceEqual(Words(now)) && number.Matches(kept).Zip(number.Matches(now)).All(pair =>
        {
            double Read(Match match) => double.Parse(match.Value, CultureInfo.InvariantCulture);
            var decimals = pair.First.Value.Contains('.', StringComparison.Ordinal) ? pair.First.Length - pair.First.Value.IndexOf('.') - 1 : 0;
            return Math.Abs(Read(pair.First) - Read(pair.Second)) <= 1.001 * Math.Pow(10.0, -decimals);
        });
    }
}
