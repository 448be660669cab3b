using System.Diagnostics;
using Heaveline.Cli;
using Heaveline.Cli.Output;
using Heaveline.Numerics;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>A choice that is kept while it is worked out, stopped, killed and gone on with, says the same to the byte.</summary>
public class KeptStudyTests
{
    private const string Car = "examples/garage/fern-saloon.yaml";
    private const string List = "examples/parts/village-autumn.yaml";

    private static readonly string[] Small =
        ["choose", Car, "--parts", List, "--use", "village-hump at 40 km/h", "--load", "driver", "--budget", "400 EUR", "--draws", "10"];

    private static readonly Lazy<string> Whole = new(() => Spoken.Of(Small).Results);

    [Fact]
    public void What_is_kept_is_not_done_again_and_the_answer_is_the_same_to_the_byte()
    {
        using var scratch = new Scratch();
        Assert.NotEqual("", Whole.Value);
        var first = Spoken.Of([.. Small, "--kept-in", scratch["."]]);
        Assert.Equal((0, Whole.Value), (first.Code, first.Results));
        Assert.Matches(@"heaveline: kept in '.*\.heaveline.studies.[0-9a-f]{16}\.pieces': \d+ pieces\.", first.Remarks);
        var again = Spoken.Of([.. Small, "--kept-in", scratch["."]]);
        Assert.Equal((ExitCode.Refused, ""), (again.Code, again.Results));
        Assert.Contains("give --resume to go on from there, or delete that file", again.Remarks, StringComparison.Ordinal);
        var resumed = Spoken.Of([.. Small, "--kept-in", scratch["."], "--resume"]);
        Assert.Equal((0, Whole.Value), (resumed.Code, resumed.Results));
        Assert.Matches(@"\d+ pieces of before, 0 more\.", resumed.Remarks);
    }

    [Fact]
    public void The_same_texts_under_other_names_are_the_same_study_and_another_seed_is_another()
    {
        using var scratch = new Scratch();
        File.Copy(Path.Combine(Checkout.Root, Car), scratch["car.yaml"]);
        File.Copy(Path.Combine(Checkout.Root, List), scratch["list.yaml"]);
        Assert.Equal(0, Spoken.Of([.. Small, "--kept-in", scratch["."]]).Code);
        string[] moved = [.. Small.Select(word => word == Car ? scratch["car.yaml"] : word == List ? scratch["list.yaml"] : word)];
        Assert.Contains(", 0 more.", Spoken.Of([.. moved, "--kept-in", scratch["."], "--resume"]).Remarks, StringComparison.Ordinal);
        var other = Spoken.Of([.. moved, "--seed", "2", "--kept-in", scratch["."], "--resume"]);
        Assert.Equal(ExitCode.Refused, other.Code);
        Assert.Matches("of this study, [0-9a-f]{64}; kept there: [0-9a-f]{64}\\. ", other.Remarks);
    }

    [Fact]
    public void A_study_of_a_file_is_known_by_its_text_and_those_of_the_files_that_it_names()
    {
        using var scratch = new Scratch();
        foreach (var file in new[] { Car, List, "examples/studies/fern-four-up.yaml" })
        {
            Directory.CreateDirectory(Path.GetDirectoryName(scratch[file])!);
            File.Copy(Path.Combine(Checkout.Root, file), scratch[file]);
        }

        var study = scratch["examples/studies/fern-four-up.yaml"];
        Assert.Equal(0, Spoken.Of("choose", study, "--draws", "10", "--kept-in", scratch["."]).Code);
        var same = Spoken.Of("choose", "examples/studies/fern-four-up.yaml", "--draws", "10", "--kept-in", scratch["."], "--resume");
        Assert.Contains(", 0 more.", same.Remarks, StringComparison.Ordinal);
        File.AppendAllText(scratch[List], "# Looked up again in November.\n");
        var other = Spoken.Of("choose", study, "--draws", "10", "--kept-in", scratch["."], "--resume");
        Assert.Contains("nothing is kept in", other.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void Draws_over_a_road_are_kept_too()
    {
        using var scratch = new Scratch();
        string[] line = ["doubt", Car, "--road", "village-hump", "--load", "driver", "--samples", "300"];
        var whole = Spoken.Of(line).Results;
        var kept = Spoken.Of([.. line, "--kept-in", scratch["."]]);
        Assert.Equal((0, whole), (kept.Code, kept.Results));
        Assert.Contains(": 5 pieces.", kept.Remarks, StringComparison.Ordinal);
        var resumed = Spoken.Of([.. line, "--kept-in", scratch["."], "--resume"]);
        Assert.Equal((0, whole), (resumed.Code, resumed.Results));
        Assert.Contains(": 5 pieces of before, 0 more.", resumed.Remarks, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ratio")]
    [InlineData("damping")]
    public void Maps_of_a_rule_are_kept_too_those_of_the_other_loads_among_them(string rule)
    {
        using var scratch = new Scratch();
        string[] line = ["rule", Car, "--rule", rule, "--load", "driver", "--speeds", "9", "--from", "20 km/h", "--to", "60 km/h"];
        var whole = Spoken.Of([.. line, "--csv", scratch["whole.csv"]]).Results;
        string[] kept = [.. line, "--csv", scratch["kept.csv"], "--kept-in", scratch["."]];
        var first = Spoken.Of(kept);
        Assert.Equal((0, whole.Replace("whole.csv", "kept.csv", StringComparison.Ordinal)), (first.Code, first.Results));
        Assert.Equal(File.ReadAllBytes(scratch["whole.csv"]), File.ReadAllBytes(scratch["kept.csv"]));
        var resumed = Spoken.Of([.. kept, "--resume"]);
        Assert.Equal((0, first.Results), (resumed.Code, resumed.Results));
        Assert.Matches(@": \d+ pieces of before, 0 more\.", resumed.Remarks);
        Assert.Equal(File.ReadAllBytes(scratch["whole.csv"]), File.ReadAllBytes(scratch["kept.csv"]));
    }

    [Fact]
    public void Words_that_do_not_go_together_are_refused()
    {
        using var scratch = new Scratch();
        Assert.Equal(ExitCode.WrongUsage, Spoken.Of([.. Small, "--resume"]).Code);
        Assert.Equal(ExitCode.WrongUsage, Spoken.Of([.. Small, "--kept-in", scratch["."], "--on", "gpu"]).Code);
        var nowhere = Spoken.Of([.. Small, "--kept-in", scratch["nowhere"]]);
        Assert.Equal(ExitCode.Refused, nowhere.Code);
        Assert.Contains("there is no such folder", nowhere.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_takes_no_file_is_refused_before_anything_is_worked_out()
    {
        // Even root makes nothing there.
        Assert.SkipUnless(OperatingSystem.IsLinux(), "No folder is known here in which nobody may write.");
        foreach (var more in new string[][] { [], ["--resume"] })
        {
            var refused = Spoken.Of([.. Small, "--kept-in", "/proc", .. more]);
            Assert.Equal((ExitCode.Refused, ""), (refused.Code, refused.Results));
            Assert.StartsWith("heaveline: --kept-in /proc: nothing can be kept there. ", refused.Remarks, StringComparison.Ordinal);
            Assert.EndsWith("Name a folder in which you may write, or leave --kept-in out.\n", refused.Remarks, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Two_runs_of_one_study_do_not_write_one_file()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Spoken.Of([.. Small, "--kept-in", scratch["."]]).Code);
        var file = Directory.EnumerateFiles(scratch["."], "*.pieces", SearchOption.AllDirectories).Single();
        using var held = new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        var second = Spoken.Of([.. Small, "--kept-in", scratch["."], "--resume"]);
        Assert.Equal(ExitCode.Refused, second.Code);
        Assert.Contains("which another run is writing", second.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Killed_again_and_again_at_any_moment_it_is_gone_on_with_and_says_the_same_to_the_byte()
    {
        using var scratch = new Scratch();
        var (kills, watch) = (0, Stopwatch.StartNew());
        for (var life = 0; ; life++)
        {
            using var process = Start([.. Small, "--kept-in", scratch["."], "--resume"]);
            var said = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
            var remarks = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            // At any moment between the start of the program and about its end.
            var patience = 3_000.0 * SplitMix.Uniform(5UL, (ulong)life);
            if ((kills < 3 || (kills < 25 && watch.Elapsed < TimeSpan.FromSeconds(15.0)))
                && !process.WaitForExit(TimeSpan.FromMilliseconds(patience)))
            {
                process.Kill();
                kills++;
                await process.WaitForExitAsync(TestContext.Current.CancellationToken);
                continue;
            }

            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.Equal((0, Whole.Value), (process.ExitCode, (await said).ReplaceLineEndings("\n")));
            Assert.Contains("heaveline: kept in", await remarks, StringComparison.Ordinal);
            if (kills >= 3)
            {
                break;
            }

            Assert.True(life < 200, "It is done before it can be killed.");
            Directory.Delete(scratch[".heaveline"], recursive: true);
        }
    }

    [Fact]
    public void Stopped_once_it_tells_the_best_so_far_or_that_all_is_kept_and_goes_on_to_the_same_answer()
    {
        using var scratch = new Scratch();
        foreach (var after in new[] { 1, 200, 600, 1200, 2400 })
        {
            using var stop = new CancellationTokenSource(TimeSpan.FromMilliseconds(after));
            using var results = new StringWriter();
            using var remarks = new StringWriter();
            var words = Small.Select(word => word.StartsWith("examples/", StringComparison.Ordinal) ? Path.Combine(Checkout.Root, word) : word);
            var code = Program.Run([.. words, "--kept-in", scratch["."], "--resume"], new Streams(results, remarks, interactive: false), stop.Token);
            // Wherever the request found it, and that is another place on every machine: at its end, with a best so far, or before there was one.
            var said = remarks.ToString();
            Assert.True(
                code == 0 ? results.ToString().Length > 0
                    : said.Contains("what is told is the best so far", StringComparison.Ordinal)
                        ? results.ToString().Contains("So far, stopped before its end", StringComparison.Ordinal)
                        : said.Contains("nothing was written", StringComparison.Ordinal) || said.Contains("is kept in", StringComparison.Ordinal),
                $"{code}: {said}{results}");
        }

        Assert.Equal(Whole.Value, Spoken.Of([.. Small, "--kept-in", scratch["."], "--resume"]).Results);
    }

    private static Process Start(string[] line) => Process.Start(new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "Heaveline.Cli"), line)
    {
        WorkingDirectory = Checkout.Root,
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    })!;
}
