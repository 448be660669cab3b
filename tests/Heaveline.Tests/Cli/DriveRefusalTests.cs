using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Studies;
using Heaveline.Tests.Drives;
using Heaveline.Tests.Files.Drives;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>What is asked of a drive and would lose a file, go unheeded or contradict itself is said by name.</summary>
public sealed class DriveRefusalTests : IDisposable
{
    private static readonly string Car = Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml");

    private readonly Scratch scratch = new();
    private readonly Log log;
    private readonly double[] onsets;

    public DriveRefusalTests()
    {
        (var motion, onsets) = new PlantedRoad { Bumps = [(PlantedBump.Round, 5.5), (PlantedBump.Round, 6.5), (PlantedBump.Round, 7.0)] }.Driven();
        log = motion.Log;
        File.WriteAllText(scratch["log.csv"], WrittenLog.Of(log));
    }

    public void Dispose() => scratch.Dispose();

    private Spoken Said(params string[] options) => Spoken.Of(["drive", scratch["log.csv"], .. options]);

    private static string At(double t) => FormattableString.Invariant($"{t:F2} s");

    [Fact]
    public void The_heights_beside_a_road_never_replace_the_log()
    {
        var text = File.ReadAllText(scratch["log.csv"]);
        var said = Said("--car", Car, "--road", "site 1", "--write", scratch["log.yaml"]);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains($"writes '{scratch["log.csv"]}' beside it: this file is read for the answer", said.Remarks, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(scratch["log.csv"]));
        Assert.False(File.Exists(scratch["log.yaml"]));
    }

    [Fact]
    public void The_heights_beside_a_road_are_no_other_output_either()
    {
        var said = Said("--car", Car, "--road", "site 1", "--write", scratch["road.yaml"], "--csv", scratch["road.csv"]);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains("this is the file of --write too", said.Remarks, StringComparison.Ordinal);
        said = Said("--car", Car, "--road", "site 1", "--twin", "--write", scratch["a.yaml"], "--write-twin", scratch["a.yaml"]);
        Assert.Equal(2, said.Code);
        Assert.Contains("this is the file of --write-twin too", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_twin_lies_in_the_folder_of_the_car_that_it_names()
    {
        var said = Said("--car", Car, "--twin", "--write-twin", scratch["as-driven.yaml"]);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains("it speaks of 'fern-saloon.yaml' and must lie in its folder, 'examples/garage'.", said.Remarks, StringComparison.Ordinal);
        Assert.False(File.Exists(scratch["as-driven.yaml"]));
        // By whatever way the folder is named.
        File.Copy(Car, scratch["fern.yaml"]);
        Directory.CreateDirectory(scratch["deeper"]);
        said = Said("--car", scratch["fern.yaml"], "--twin", "--write-twin", Path.Combine(scratch["deeper"], "..", "as-driven.yaml"));
        Assert.DoesNotContain("must lie in its folder", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_without_a_place_is_found_before_anything_is_computed()
    {
        var said = Said("--csv", Path.Combine(scratch["none"], "bumps.csv"));
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains($"there is no folder '{scratch["none"]}'", said.Remarks, StringComparison.Ordinal);
        Directory.CreateDirectory(scratch["bumps.csv"]);
        said = Said("--csv", scratch["bumps.csv"]);
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains("this is a folder, not a file", said.Remarks, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--add", "5000 s")]
    [InlineData("--add", "-3 s")]
    [InlineData("--reject", "5000 s")]
    [InlineData("--site", "chapel: 5000 s")]
    public void An_instant_outside_the_log_is_refused_with_the_logs_ends(string option, string words)
    {
        var said = Said(option, words);
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains("outside the log, which lasts from ", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bump_added_outside_the_log_or_at_its_ends_is_said_not_to_count_and_the_drive_is_told()
    {
        var drive = Drive.Of(log, TestContext.Current.CancellationToken);
        var bare = DriveStudy.Run(new DriveAsked { Log = log });
        foreach (var at in new[] { 5000.0, -5000.0, drive.Start, drive.Time(drive.Vertical.Length - 1), drive.Start - 0.5 })
        {
            var answer = DriveStudy.Run(new DriveAsked { Log = log, Settings = new EventSettings { Added = [at] } });
            Assert.Equal(bare.Events!.Kept.Select(e => e.Onset), answer.Events!.Kept.Select(e => e.Onset));
            Assert.Equal(
                at < drive.Start || at > 1000.0,
                answer.Cautions.Any(c => c.StartsWith("A bump was added at ", StringComparison.Ordinal)
                    && c.EndsWith("it does not count.", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void Instants_at_no_bump_are_said_by_name()
    {
        var between = At(0.5 * (onsets[0] + onsets[1]));
        var said = Said("--site", $"chapel: {between}", "--reject", between).Results;
        Assert.Contains("the name chapel is given to none there", said, StringComparison.Ordinal);
        Assert.Contains("where none is: nothing is left out for it", said, StringComparison.Ordinal);
        var met = Said("--site", $"chapel: {At(onsets[0])}", "--reject", At(onsets[1])).Results;
        Assert.DoesNotContain("is given to none", met, StringComparison.Ordinal);
        Assert.DoesNotContain("where none is", met, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_two_names_of_one_bump_the_one_that_counts_is_said() => Assert.Contains(
        "is named chapel and ford: ford counts.",
        Said("--site", $"chapel: {At(onsets[0])}", "--site", $"ford: {At(onsets[0] + 0.1)}").Results,
        StringComparison.Ordinal);

    [Fact]
    public void A_road_of_a_site_that_is_none_is_refused_by_name()
    {
        var said = Said("--wheelbase", "2.70 m", "--road", "nosuch");
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Contains("'nosuch'", said.Remarks, StringComparison.Ordinal);
        Assert.Contains("site 1", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wheelbase_beside_a_car_that_has_another_is_said_to_count()
    {
        const string words = "The wheelbase that is given counts, 2.500 m, not that of the car file, 2.700 m.";
        Assert.Contains(words, Said("--car", Car, "--wheelbase", "2.50 m").Results, StringComparison.Ordinal);
        Assert.DoesNotContain("that is given counts", Said("--car", Car, "--wheelbase", "2.70 m").Results, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("lay across", "--phone", "1.45 m behind front axle, 0.1 m left, 0.2 m right")]
    [InlineData("lay along", "--phone", "1.45 m behind front axle, 1.5 m behind front axle")]
    [InlineData("acceleration is taken otherwise twice", "--take", "acceleration: mg", "--take", "acceleration: g")]
    [InlineData("give an angle of -360° to 360°", "--take", "forward: 1e308°")]
    [InlineData("the bump at 9.0 s is in chapel and in ford", "--site", "chapel: 9 s", "--site", "ford: 9 s")]
    [InlineData("load: give --car too", "--load", "driver")]
    [InlineData("--draw speaks of the file of --figure", "--draw", "events")]
    public void What_contradicts_itself_is_wrong_usage(string why, params string[] options)
    {
        var said = Said(options);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.Contains(why, said.Remarks, StringComparison.Ordinal);
    }
}
