using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Heaveline.Files.Drives;
using Heaveline.Files.Garages;
using Heaveline.Studies;
using Heaveline.Tests.Drives.Lanes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>What drives of a garage say of each other is held against what is said of both, at every door.</summary>
public sealed class UnlikeDriveTests : IDisposable
{
    private readonly Scratch scratch = new();

    public UnlikeDriveTests()
    {
        foreach (var name in new[] { "fern-saloon.yaml", "fern-saloon-cured.yaml" })
        {
            File.Copy(Path.Combine(Checkout.Root, "examples", "garage", name), scratch[name]);
        }
    }

    private string Before => Path.Combine(scratch["drives"], "before");

    private string After => Path.Combine(scratch["drives"], "after");

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void Nothing_is_believed_to_be_the_same_that_both_files_contradict()
    {
        Unlike();
        var plain = Proved();
        Assert.Equal(["fuel"], Same(plain));
        string[] cautions = [.. plain["cautions"]!.AsArray().Select(c => (string)c!)];
        string[] words = ["load", "pressures", "phone"];
        Assert.All(words, word => Assert.Single(
            cautions,
            c => c.StartsWith($"Not the same in both drives as written down with them: {word};", StringComparison.Ordinal)
                && c.EndsWith("is not believed.", StringComparison.Ordinal)));
        Assert.Equal(["temperature", "fuel", "tyres"], Same(Proved("--same", "all")));

        // Options stand instead of what was written down, for both drives.
        Assert.Equal(["load", "temperature", "fuel", "tyres", "phone"], Same(Proved(
            "--same", "all", "--load", "driver", "--phone", "1.45 m behind front axle")));

        var check = Spoken.Of("check", Path.Combine(After, DriveFile.FileName));
        Assert.Equal(0, check.Code);
        Assert.Contains("can be used, 3 doubtful", check.Results, StringComparison.Ordinal);
        Assert.Contains(":6:8: warning: Not the same in both drives as written down with them: load;", check.Remarks, StringComparison.Ordinal);
        Assert.Contains("in order", Spoken.Of("check", Path.Combine(Before, DriveFile.FileName)).Results, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_says_what_the_report_says()
    {
        Unlike();
        var report = Spoken.Of(
            "report", scratch["fern-saloon.yaml"], "--drive", Before, "--drive", After, "--parts", "prove", "--out", scratch["r.html"]);
        Assert.Equal(0, report.Code);
        var (source, _) = DriveSource.Of(new Garage(scratch[""]), "after");
        var unlike = source!.Recorded(new Garage(scratch[""]), name => name).Unlike;
        Assert.Equal(3, unlike.Count);
        var page = Regex.Replace(
            System.Net.WebUtility.HtmlDecode(Regex.Replace(File.ReadAllText(scratch["r.html"]), "<[^>]+>", " ")), "\\s+", " ");
        Assert.All(unlike, says => Assert.Equal(2, page.Split(says).Length));
    }

    [Fact]
    public void A_forecast_between_unlike_loads_is_refused()
    {
        Unlike();
        var said = Spoken.Of("prove", "--before", Before, "--after", After, "--change-by", "rear springs +20 %");
        Assert.Equal(1, said.Code);
        Assert.Contains("change-by: not to be judged; Lane before was driven", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void Drives_that_their_files_put_the_other_way_round_are_refused()
    {
        Alike();
        var said = Spoken.Of("prove", "--before", After, "--after", Before);
        Assert.Equal(1, said.Code);
        Assert.Contains(
            "before and after are turned round: Lane after is written down as driven after Lane before; give Lane before as --before.",
            Regex.Replace(said.Remarks, "\\s+", " "), StringComparison.Ordinal);
    }

    [Fact]
    public void A_phone_said_once_for_both_drives_is_the_same_in_both_and_one_far_outside_a_car_is_told()
    {
        Alike();
        var logs = new[] { Path.Combine(Before, "log.csv"), Path.Combine(After, "log.csv") };
        var said = Spoken.Of(
            "prove", "--before", logs[0], "--after", logs[1], "--wheelbase", "2.70 m", "--phone", "9 m behind front axle, 0.1 m left, 3 m up",
            "--json");
        Assert.Equal(0, said.Code);
        var json = JsonNode.Parse(said.Results)!;
        Assert.Equal(["phone"], Same(json));
        const string Behind = "The phone's place is given as 9.0 m behind the front axle; -1.5 m to 6 m is usual. "
            + "Check the number, its sign and its unit.";
        Assert.Single(json["cautions"]!.AsArray(), c => (string)c! == Behind);
        var drive = DriveStudy.Run(new DriveAsked
        {
            Log = LarchLane.Before.Log,
            Settings = new() { Phone = new() { BehindFrontAxle = 9.0, Left = -0.1, Up = 3.0 } },
        });
        Assert.Equal(2, drive.Cautions.Count(c => c.StartsWith("The phone's place is given as", StringComparison.Ordinal)));
        Assert.Contains(Behind, drive.Cautions);
    }

    [Fact]
    public void Instants_that_no_bump_answers_to_are_not_counted_and_one_instant_has_one_name()
    {
        var bump = DriveStudy.Run(new DriveAsked { Log = LarchLane.Before.Log, Settings = new() { Wheelbase = 2.7 } }).Events!.Events[3].Seen;
        Put(
            "before",
            "drive: Lane\nwheelbase: 2.70 m\nsites: {far: [9000 s]}\n"
                + FormattableString.Invariant($"rejected: [{bump:F2} s, 0.5 s, 9000 s]\nadded: [8000 s]\n"),
            LarchLane.Before.Log);
        var json = JsonNode.Parse(Spoken.Of("drive", Before, "--json").Results)!;
        Assert.Equal("As drive.yaml of Lane says: wheelbase 2.700 m; 1 bump left out.", (string)json["story"]![0]!["text"]!);

        Put("twice", "drive: Twice\nsites: {chapel: [84 s, 99 s], mill: [84.0 s]}\n", LarchLane.Before.Log);
        var check = Spoken.Of("check", Path.Combine(scratch["drives"], "twice", DriveFile.FileName));
        Assert.Equal(1, check.Code);
        Assert.Contains("the bump at 84 s is named twice, chapel and mill.", check.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_of_the_phone_without_unit_is_refused_by_an_example_in_metres()
    {
        const string Lengths = "a length is wanted, e.g.";
        Put("bare", "drive: Bare\nwheelbase: 2.70\nphone: { behind-front-axle: 1.45, left: 0.1, up: 0.2 }\n", LarchLane.Before.Log);
        var file = Spoken.Of("check", Path.Combine(scratch["drives"], "bare", DriveFile.FileName));
        Assert.Equal(1, file.Code);
        (string Key, string Bare)[] all = [("wheelbase", "2.70"), ("phone behind front axle", "1.45"), ("phone left", "0.1"), ("phone up", "0.2")];
        foreach (var (key, bare) in all)
        {
            Assert.Contains($"{key}: {bare} has no unit; {Lengths} {bare} m.", file.Remarks, StringComparison.Ordinal);
        }

        foreach (var (place, bare) in new[] { ("1.45 behind front axle", "1.45"), ("1.45 m behind front axle, 0.1 left", "0.1") })
        {
            var said = Spoken.Of("drive", Path.Combine(scratch["drives"], "bare", "log.csv"), "--phone", place);
            Assert.Equal(2, said.Code);
            Assert.Contains($"phone '{bare}': {bare} has no unit; {Lengths} {bare} m.", said.Remarks, StringComparison.Ordinal);
        }
    }

    private static string[] Same(JsonNode proof) => [.. proof["same"]!.AsArray().Select(word => (string)word!)];

    private JsonNode Proved(params string[] more)
    {
        var said = Spoken.Of(["prove", "--before", Before, "--after", After, "--json", .. more]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        return JsonNode.Parse(said.Results)!;
    }

    private void Alike()
    {
        Put("before", $"drive: Lane before\nload: {LarchLane.Load}\ncar: ../../fern-saloon.yaml\n", LarchLane.Before.Log);
        Put("after", $"drive: Lane after\nload: {LarchLane.Load}\ncar: ../../fern-saloon-cured.yaml\nafter: before\n", LarchLane.After.Log);
    }

    private void Unlike()
    {
        Put(
            "before",
            "drive: Lane before\nload: four up with luggage\ncar: ../../fern-saloon.yaml\nphone: { behind-front-axle: 1.45 m }\n"
            + "pressures: { front: 2.3 bar, rear: 2.1 bar }\n",
            LarchLane.Before.Log);
        Put(
            "after",
            "drive: Lane after\nload: driver\ncar: ../../fern-saloon-cured.yaml\nphone: { behind-front-axle: 1.00 m }\n"
            + "pressures: { front: 2.3 bar, rear: 2.6 bar }\nafter: before\nsame: [load, pressures, fuel, phone]\n",
            LarchLane.After.Log);
    }

    private void Put(string name, string sheet, Heaveline.Drives.Log log)
    {
        var folder = Directory.CreateDirectory(Path.Combine(scratch["drives"], name)).FullName;
        File.WriteAllText(Path.Combine(folder, DriveFile.FileName), sheet);
        File.WriteAllText(Path.Combine(folder, "log.csv"), LaneWriter.Whole(log));
    }
}
