using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Heaveline.Files.Drives;
using Heaveline.Files.Garages;
using Heaveline.Studies;
using Heaveline.Tests.Drives.Lanes;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Drives;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;

namespace Heaveline.Tests.Cli;

/// <summary>Drives of a garage, with what drive.yaml says of them, given to 'drive' and 'prove' at the terminal.</summary>
public sealed class DescribedDriveTests : IDisposable
{
    private const string Phone = "phone: { behind-front-axle: 1.45 m ± 6 cm }\n";
    private readonly Scratch scratch = new();

    public DescribedDriveTests()
    {
        foreach (var name in new[] { "fern-saloon.yaml", "fern-saloon-cured.yaml" })
        {
            File.Copy(Path.Combine(Checkout.Root, "examples", "garage", name), scratch[name]);
        }

        Put("before", $"drive: Lane before\ncar: ../../fern-saloon.yaml\nload: {LarchLane.Load}\n{Phone}", LarchLane.Before.Log);
        Put(
            "after",
            $"drive: Lane after\ncar: ../../fern-saloon-cured.yaml\nload: {LarchLane.Load}\n{Phone}after: before\nsame: [load, fuel]\n",
            LarchLane.After.Log);
    }

    private string Before => Path.Combine(scratch["drives"], "before");

    private string After => Path.Combine(scratch["drives"], "after");

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void Drive_and_prove_give_the_numbers_of_the_report()
    {
        var report = Spoken.Of(
            "report", scratch["fern-saloon.yaml"], "--drive", Before, "--drive", After, "--parts", "drive,prove", "--out", scratch["r.html"]);
        Assert.Equal((0, ""), (report.Code, report.Remarks));
        var page = PageText.Plain(File.ReadAllText(scratch["r.html"]));

        foreach (var (folder, car) in new[] { (Before, "Fern saloon"), (After, "Fern saloon, cured") })
        {
            var said = Spoken.Of("drive", folder);
            Assert.Equal((0, ""), (said.Code, said.Remarks));
            var lines = said.Results.Split('\n');
            Assert.All(lines[..3], line => Assert.Contains(line.Trim(), page, StringComparison.Ordinal));
            Assert.Equal(
                $"As drive.yaml of Lane {Path.GetFileName(folder)} says: car {car}; load {LarchLane.Load}; phone 1.45 m behind the front axle.",
                lines[3].Trim());
        }

        var proof = Spoken.Of("prove", "--before", Before, "--after", After, "--what-changed", "--json");
        Assert.Equal(0, proof.Code);
        var json = JsonNode.Parse(proof.Results)!;
        Assert.Contains((string)json["sentence"]!, page, StringComparison.Ordinal);
        Assert.Equal("[\"load\",\"fuel\"]", json["same"]!.ToJsonString());
        Assert.Contains("Not said to be the same in both drives: pressures, temperature, tyres, phone.", page, StringComparison.Ordinal);
        Assert.EndsWith("; the same as before: load, fuel.", (string)json["drive-files"]![1]!, StringComparison.Ordinal);
        var changed = Regex.Replace(Spoken.Of("prove", "--before", Before, "--after", After, "--what-changed").Results, "\\s+", " ");
        Assert.Contains((string)json["sentence"]!, changed, StringComparison.Ordinal);
        foreach (var sentence in Sentences(json["car"]!))
        {
            Assert.Contains(sentence, page, StringComparison.Ordinal);
        }
    }

    // The page shows the passes at once, at the speeds of the logs, and the cars when they are found.
    [Fact]
    public async Task The_page_tells_the_cars_of_the_command()
    {
        var view = new GarageView(new ServeOptions { Garage = Path.GetDirectoryName(scratch["fern-saloon.yaml"])! });
        using var readings = new DriveReadings(view);
        using var queue = new StudyQueue(1);
        using var study = readings.ProofIn(queue);
        var (drive, problem) = DriveSource.Of(view.Garage, "after");
        Assert.True(drive is not null, problem);
        var earlier = new List<ProofView>();
        var shown = await study.Answer(
            new AskedReading<DriveSource> { Asked = drive, Objections = [], Key = drive.Key }, earlier.Add, null,
            TestContext.Current.CancellationToken);
        var first = Assert.Single(earlier).Answer;
        Assert.True(first is { IsAsLogged: true, Change: null });
        Assert.False(shown.Answer.IsAsLogged);

        var command = JsonNode.Parse(Spoken.Of("prove", "--before", Before, "--after", After, "--what-changed", "--json").Results)!;
        Assert.NotEmpty(Sentences(command["car"]!));
        var page = JsonNode.Parse(shown.Answer.Json("", "prove"))!;
        Assert.Equal(command["car"]!.ToJsonString(), page["car"]!.ToJsonString());
        Assert.Equal(command["numbers"]!.ToJsonString(), page["numbers"]!.ToJsonString());
    }

    [Fact]
    public void An_instant_that_nothing_answers_to_is_told_with_its_place_in_the_file()
    {
        var file = Path.Combine(Before, "drive.yaml");
        File.AppendAllText(file, "added: [5000 s]\nrejected: [3 s]\n");
        var line = File.ReadAllLines(file).Length - 1;
        var said = Spoken.Of("drive", Before);
        Assert.Equal(0, said.Code);
        Assert.Contains($"added at 5000.0 s (drives/before/drive.yaml, line {line}), outside what is read", said.Results, StringComparison.Ordinal);
        Assert.Contains($"rejected at 3.0 s (drives/before/drive.yaml, line {line + 1}), where none is", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void The_report_names_the_load_that_was_driven_beside_the_one_that_is_computed()
    {
        var said = Spoken.Of(
            "report", scratch["fern-saloon.yaml"], "--load", "driver", "--drive", Before, "--drive", After, "--parts", "finding,drive,prove", "--out",
            scratch["loads.html"]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        var page = PageText.Plain(File.ReadAllText(scratch["loads.html"]));
        Assert.Contains($"Measured on the road, load '{LarchLane.Load}', not 'driver' as computed above", page, StringComparison.Ordinal);
        Assert.Contains($"Driven, as written down with it: Fern saloon, cured, load '{LarchLane.Load}'.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Where the phone lay is not said", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_first_drive_of_another_car_or_load_is_refused_and_one_of_this_car_is_not_said_to_be_unknown()
    {
        string[] words = ["--hump", "short-bump", "--first", Before];
        var own = Spoken.Of(["plan", scratch["fern-saloon.yaml"], "--load", LarchLane.Load, .. words]);
        Assert.Equal((0, ""), (own.Code, own.Remarks));
        Assert.DoesNotContain("it is taken for", own.Results, StringComparison.Ordinal);
        var load = Spoken.Of(["plan", scratch["fern-saloon.yaml"], "--load", "driver", .. words]);
        Assert.NotEqual(0, load.Code);
        Assert.Contains($"driven with Fern saloon, {LarchLane.Load}; the plan is of Fern saloon, driver", load.Remarks, StringComparison.Ordinal);
        var car = Spoken.Of(["plan", scratch["fern-saloon-cured.yaml"], "--load", LarchLane.Load, .. words]);
        Assert.NotEqual(0, car.Code);
        Assert.Contains("the plan is of Fern saloon, cured", car.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void An_option_stands_before_what_was_written_down_and_is_said()
    {
        var written = Spoken.Of("drive", Path.Combine(Before, "drive.yaml"), "--json");
        var told = Spoken.Of("drive", Before, "--phone", "1.00 m behind front axle", "--load", "driver", "--json");
        var alone = Spoken.Of(
            "drive", Path.Combine(Before, "log.csv"), "--car", scratch["fern-saloon.yaml"], "--load", "driver", "--phone", "1.00 m behind front axle",
            "--json");
        Assert.Equal((0, 0, 0), (written.Code, told.Code, alone.Code));
        var (own, first, second) = (JsonNode.Parse(written.Results)!, JsonNode.Parse(told.Results)!, JsonNode.Parse(alone.Results)!);
        Assert.Equal(second["car"]!.ToJsonString(), first["car"]!.ToJsonString());
        Assert.Equal(second["events"]!.ToJsonString(), first["events"]!.ToJsonString());
        Assert.NotEqual(own["car"]!.ToJsonString(), first["car"]!.ToJsonString());
        Assert.Equal(
            "As drive.yaml of Lane before says: car Fern saloon. Instead of what it says: --load, --phone.", (string)first["story"]![0]!["text"]!);
    }

    [Fact]
    public void Bumps_and_decisions_that_were_written_down_hold_until_an_option_says_otherwise()
    {
        // What no bump answers to does not count.
        var events = DriveStudy.Run(new DriveAsked { Log = LarchLane.Before.Log, Settings = new() { Wheelbase = 2.7 } }).Events!.Events;
        var (named, rejected) = (FormattableString.Invariant($"{events[2].Seen:F2} s"), FormattableString.Invariant($"{events[4].Seen:F2} s"));
        Put(
            "bumps",
            $"drive: Lane with bumps\nwheelbase: 2.70 m\nsites: {{chapel hump: [{named}]}}\nrejected: [{rejected}]\ntake: {{lag: 0.8 s}}\n",
            LarchLane.Before.Log);
        var folder = Path.Combine(scratch["drives"], "bumps");
        var json = JsonNode.Parse(Spoken.Of("drive", folder, "--json").Results)!;
        Assert.Equal(
            "As drive.yaml of Lane with bumps says: wheelbase 2.700 m; site chapel hump; 1 bump left out; lag taken otherwise.",
            (string)json["story"]![0]!["text"]!);
        var alone = Spoken.Of(
            "drive", Path.Combine(folder, "log.csv"), "--wheelbase", "2.70 m", "--site", $"chapel hump: {named}", "--reject", rejected,
            "--take", "lag: 0.8 s", "--json");
        Assert.Equal(JsonNode.Parse(alone.Results)!["events"]!.ToJsonString(), json["events"]!.ToJsonString());
        var other = JsonNode.Parse(Spoken.Of("drive", folder, "--site", $"mill: {named}", "--take", "lag: 0.4 s", "--json").Results)!;
        Assert.Equal(
            "As drive.yaml of Lane with bumps says: wheelbase 2.700 m; 1 bump left out. Instead of what it says: --site, --take.",
            (string)other["story"]![0]!["text"]!);
    }

    [Fact]
    public void A_drive_whose_file_is_refused_or_that_stands_beside_other_logs_is_refused_by_name()
    {
        Put("bad", "drive: Follows nothing\nafter: missing\n", LarchLane.Before.Log);
        var bad = Spoken.Of("drive", Path.Combine(scratch["drives"], "bad"));
        Assert.Equal(1, bad.Code);
        Assert.Contains("after is missing, which is no drive beside this one", bad.Remarks, StringComparison.Ordinal);
        var two = Spoken.Of("drive", Before, Path.Combine(After, "log.csv"));
        Assert.Equal(2, two.Code);
        Assert.Contains("before is a drive with a drive.yaml; give it alone", two.Remarks, StringComparison.Ordinal);
    }

    private void Put(string name, string sheet, Heaveline.Drives.Log log)
    {
        var folder = Directory.CreateDirectory(Path.Combine(scratch["drives"], name)).FullName;
        File.WriteAllText(Path.Combine(folder, DriveFile.FileName), sheet);
        File.WriteAllText(Path.Combine(folder, "log.csv"), LaneWriter.Whole(log));
    }

    private static IEnumerable<string> Sentences(JsonNode car) =>
        car["sentences"] is JsonArray all ? all.Select(s => (string)s!) : throw new InvalidOperationException(car.ToJsonString());
}
