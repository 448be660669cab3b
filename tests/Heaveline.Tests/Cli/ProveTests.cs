using System.Globalization;
using System.Text.Json.Nodes;
using Heaveline.Drives;
using Heaveline.Tests.Drives.Lanes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>Two planted drives along Larch Lane, compared at the command line.</summary>
public sealed class ProveTests : IDisposable
{
    private readonly Scratch scratch = new();

    public ProveTests()
    {
        File.WriteAllText(scratch["before.csv"], LaneWriter.Whole(LarchLane.Before.Log));
        File.WriteAllText(scratch["same.csv"], LaneWriter.Whole(LarchLane.NoChange.Log));
        Directory.CreateDirectory(scratch["after"]);
        foreach (var (name, text) in LaneWriter.Apart(LarchLane.After.Log))
        {
            File.WriteAllText(Path.Combine(scratch["after"], name), text);
        }
    }

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void A_cured_car_is_said_to_be_better_in_the_first_sentence()
    {
        var said = Spoken.Of([.. Cured, "--same", "all"]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.StartsWith("It worked over 4 bumps together (", said.Results, StringComparison.Ordinal);
        Assert.Contains("pitch in the second after it fell by ", said.Results, StringComparison.Ordinal);
        Assert.DoesNotContain("Not said to be the same", said.Results, StringComparison.Ordinal);
        Assert.Contains("a passenger handles the phone", said.Results, StringComparison.Ordinal);
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(said.Results, "Intervals are of 90 %"));
        Assert.DoesNotMatch(@"how often by chance \(p\).*0\.000\b", said.Results);
        Assert.Contains("Intervals are of 95 % at each of two looks", Spoken.Of([.. Cured, "--looks", "2"]).Results, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_carries_the_verdict_the_change_and_every_pass()
    {
        var json = JsonNode.Parse(Spoken.Of([.. Cured, "--json"]).Results)!;
        Assert.Equal("prove", (string)json["command"]!);
        Assert.Equal("worked", (string)json["verdict"]!);
        var headline = json["numbers"]!["headline"]!;
        Assert.InRange((double)headline["change"]!["value"]!, -0.35, -0.08);
        Assert.Equal(4, headline["sites"]!.AsArray().Count);
        Assert.Equal((int)headline["before"]! + (int)headline["after"]!, headline["passes"]!.AsArray().Count(p => (bool)p!["counts"]!));
        Assert.Contains("load, pressures, temperature, fuel, tyres, phone", json["cautions"]!.ToJsonString(), StringComparison.Ordinal);
        Assert.All(json["sites"]!.AsArray(), s => Assert.Equal("name", (string)s!["by"]!));
    }

    [Fact]
    public void A_car_that_was_not_changed_is_never_said_to_be_better_or_worse()
    {
        var said = Spoken.Of([.. Unchanged, "--measure", "hit"]);
        Assert.Equal(0, said.Code);
        Assert.StartsWith("No difference that matters over 4 bumps", said.Results, StringComparison.Ordinal);
        Assert.Contains("10 % is the least that matters", said.Results, StringComparison.Ordinal);
        var json = JsonNode.Parse(Spoken.Of([.. Unchanged, "--json"]).Results)!;
        Assert.Contains((string)json["verdict"]!, new[] { "no-difference", "cannot-say" });
        var change = json["numbers"]!["headline"]!["change"]!;
        Assert.True((double)change["low"]! < 0.0 && (double)change["high"]! > 0.0);
    }

    [Fact]
    public void Every_pass_is_a_row_of_the_csv_and_a_mark_of_the_figure()
    {
        var said = Spoken.Of([.. Cured, "--csv", scratch["passes.csv"], "--figure", scratch["dots.svg"]]);
        Assert.Equal(0, said.Code);
        var rows = File.ReadAllLines(scratch["passes.csv"]);
        Assert.StartsWith("site,state,event,speed (km/h),RMS pitch in the second after the bump (°),counts,", rows[0], StringComparison.Ordinal);
        Assert.InRange(rows.Count(r => r.Contains(",before,", StringComparison.Ordinal)), 20, 24);
        Assert.InRange(rows.Count(r => r.Contains(",after,", StringComparison.Ordinal)), 20, 24);
        var figure = File.ReadAllText(scratch["dots.svg"]);
        Assert.All(
            ["Chapel hump", "Orchard dip", "speed (km/h)", "before", "after"], words => Assert.Contains(words, figure, StringComparison.Ordinal));
        Assert.Equal(0, Spoken.Of([.. Cured, "--draw", "power", "--figure", scratch["power.svg"]]).Code);
        Assert.Contains("you are here", File.ReadAllText(scratch["power.svg"]), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_names_it_is_said_which_bumps_were_taken_for_the_same()
    {
        var log = LarchLane.NoChange.Log;
        File.WriteAllText(scratch["nowhere.csv"], LaneWriter.Whole(log with { Tracks = [.. log.Tracks.Where(t => t.Kind != SensorKind.Position)] }));
        var said = Spoken.Of("prove", "--before", scratch["before.csv"], "--after", scratch["nowhere.csv"], "--wheelbase", "2.70 m");
        Assert.Equal(0, said.Code);
        Assert.Contains("taken for the same by their order and likeness", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void One_instant_in_one_drive_names_a_bump_of_both_and_nothing_tells_where_it_lies()
    {
        var instant = LarchLane.Before.Plan.Crossings[0].Time;
        var said = Spoken.Of(
            "prove", "--before", scratch["before.csv"], "--after", scratch["after"], "--wheelbase", "2.70 m", "--site",
            FormattableString.Invariant($"Chapel hump: before {instant:F1} s"), "--json");
        Assert.Equal(0, said.Code);
        var sites = JsonNode.Parse(said.Results)!["sites"]!.AsArray();
        Assert.True(sites.Count >= 4);
        Assert.All(sites, s => Assert.Equal("position", (string)s!["by"]!));
        var chapel = Assert.Single(sites, s => (string)s!["name"]! == "Chapel hump")!;
        Assert.Equal("Chapel hump", (string)chapel["before"]!);
        // The planted place is about 0.5° N, 30° W.
        Assert.DoesNotContain("-30.0", said.Results, StringComparison.Ordinal);
        Assert.DoesNotContain("29.99", said.Results, StringComparison.Ordinal);
        Assert.DoesNotContain("0.500", said.Results, StringComparison.Ordinal);
    }

    /// <summary>
    /// The cars are those that were driven: the planted truth is what is forecast. What changed in the car is told or refused in words.
    /// </summary>
    [Fact]
    public void A_forecast_is_held_against_the_drive_after()
    {
        var garage = Path.Combine(Checkout.Root, "examples", "garage");
        var said = Spoken.Of(
        [
            .. Cured.Where((_, k) => k is not 5 and not 6), "--car", Path.Combine(garage, "fern-saloon.yaml"), "--change",
            Path.Combine(garage, "fern-saloon-cured.yaml"), "--load", LarchLane.Load, "--what-changed", "--json",
        ]);
        Assert.Equal(0, said.Code);
        var json = JsonNode.Parse(said.Results)!;
        Assert.InRange((double)json["forecast"]!["value"]!, -0.35, -0.08);
        Assert.True((bool)json["forecast"]!["kept"]!);
        var what = (string)json["car"]!["sentences"]![0]!;
        Assert.True(what.StartsWith("What changed in the car is not told", StringComparison.Ordinal)
            ? json["car"]!["numbers"]!.AsObject().Count == 0
            : json["car"]!["numbers"]!.AsObject().Count > 3);
    }

    [Fact]
    public void A_change_in_words_is_forecast_without_a_car_file_and_drawn()
    {
        var said = Spoken.Of(
            [
                .. Cured,
                "--change-by",
                "front springs -11 %, rear springs +26 %, rear dampers +35 %",
                "--draw",
                "forecast",
                "--figure",
                scratch["f.svg"],
            ]);
        Assert.Equal(0, said.Code);
        Assert.Contains("The forecast for front springs −11 %, rear springs +26 %, rear dampers +35 % was kept: said −", said.Results,
            StringComparison.Ordinal);
        Assert.Contains("It drives the car that the drive before tells", said.Results, StringComparison.Ordinal);
        var figure = File.ReadAllText(scratch["f.svg"]);
        Assert.All(
            ["all passes", "Chapel hump", "forecast", "measured", "Pass by pass"], words => Assert.Contains(words, figure, StringComparison.Ordinal));
    }

    [Fact]
    public void A_change_in_words_that_means_nothing_is_refused()
    {
        var said = Spoken.Of([.. Cured, "--change-by", "rear springs +20"]);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains("'rear springs +20' is no change", said.Remarks, StringComparison.Ordinal);
        Assert.Contains("from -50 % to +100 %", Spoken.Of([.. Cured, "--change-by", "springs +300 %"]).Remarks, StringComparison.Ordinal);
        var alone = Spoken.Of([.. Cured.Where((_, k) => k is not 5 and not 6), "--change-by", "springs +10 %"]);
        Assert.Contains("give --wheelbase or --car", alone.Remarks, StringComparison.Ordinal);
        var empty = Spoken.Of([.. Cured, "--draw", "forecast", "--figure", scratch["none.svg"]]);
        Assert.Contains("--change or --change-by", empty.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void What_needs_a_car_or_a_wheelbase_asks_for_it()
    {
        var said = Spoken.Of(
            "prove", "--before", scratch["before.csv"], "--after", scratch["same.csv"], "--what-changed", "--change",
            Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon-cured.yaml"));
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains("give --car too, the car before it", said.Remarks, StringComparison.Ordinal);
        Assert.Contains("what-changed: give --wheelbase or --car", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void One_log_twice_is_refused()
    {
        var said = Spoken.Of("prove", "--before", scratch["before.csv"], "--after", scratch["before.csv"]);
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains("before and after are the same log", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void One_drive_cut_or_exported_again_is_refused()
    {
        // The first fifth is cut off, and the accelerations keep two digits behind the point.
        var lines = File.ReadAllLines(scratch["before.csv"]);
        File.WriteAllLines(scratch["again.csv"], lines[..1].Concat(lines[(lines.Length / 5)..].Select(line => string.Join(',', line.Split(',').Select(
            (cell, k) => k is 1 or 2 or 3
                ? double.Parse(cell, CultureInfo.InvariantCulture).ToString("F2", CultureInfo.InvariantCulture) : cell)))));
        var said = Spoken.Of("prove", "--before", scratch["before.csv"], "--after", scratch["again.csv"]);
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains("before and after are the same drive", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_at_no_bump_is_said_and_one_outside_a_log_refused()
    {
        string[] drives = ["prove", "--before", scratch["before.csv"], "--after", scratch["same.csv"], "--wheelbase", "2.70 m"];
        var said = Spoken.Of([.. drives, "--site", "mill: before 1 s"]);
        Assert.Equal(0, said.Code);
        Assert.Contains("Of the log before: No bump lies at 1.0 s: the name mill is given to none there.", said.Results, StringComparison.Ordinal);
        said = Spoken.Of([.. drives, "--site", "mill: before 1 s, after 5000 s"]);
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains("site 5000.0 s: outside the log after, which lasts from ", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_that_mean_nothing_are_refused_all_at_once()
    {
        var said = Spoken.Of(
        [
            "prove", "--before", scratch["before.csv"], "--after", scratch["same.csv"], "--matters", "0.5 %", "--site", "chapel", "--site",
            "mill: 3 s",
            "--same", "weather", "--looks", "3", "--measure", "comfort",
        ]);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.All(
            [
                "give 1 % to 50 %",
                "'chapel' names no bump",
                "of which drive 3 s is",
                "'weather' is no circumstance",
                "give 1 to 2",
                "is no measure of two drives",
            ],
            words => Assert.Contains(words, said.Remarks, StringComparison.Ordinal));
    }

    private string[] Cured => Line(scratch["after"], LarchLane.After);

    private string[] Unchanged => Line(scratch["same.csv"], LarchLane.NoChange);

    private string[] Line(string after, LarchLane lane) =>
    [
        "prove", "--before", scratch["before.csv"], "--after", after, "--wheelbase", "2.70 m",
        .. LarchLane.Before.Plan.Crossings.GroupBy(c => c.Site).SelectMany(site => new[]
        {
            "--site",
            $"{site.Key}: before {Instants(LarchLane.Before, site.Key)}, after {Instants(lane, site.Key)}",
        }),
    ];

    // The last dip lies behind the slip, where nothing is read.
    private static string Instants(LarchLane lane, string site) => string.Join(", ", lane.Plan.Crossings
        .Where(c => c.Site == site && c.Spoilt != "after the slip").Select(c => FormattableString.Invariant($"{c.Time:F2} s")));
}
