using System.Diagnostics;
using System.Text.RegularExpressions;
using Heaveline.Cli.Output;

namespace Heaveline.Tests.Cli;

/// <summary>Programs that help one another with a study, and are killed: run as programs, on this machine alone.</summary>
[Collection(Cluster.SeveralMachines.Name)]
public class HelpOutTests
{
    private const string Car = "examples/garage/fern-saloon.yaml";
    private const string List = "examples/parts/village-autumn.yaml";

    private static readonly string[] Study = ["choose", Car, "--parts", List, "--load", "driver", "--draws", "60"];

    [Fact]
    public async Task A_helper_that_is_killed_loses_nothing_and_the_answer_is_the_same_to_the_byte()
    {
        // Where the study is over before both have joined it, a longer one.
        for (var draws = 60; !await IsKilled(draws); draws *= 4)
        {
            Assert.True(draws < 10_000, "No study is so long that anybody joins it in time.");
        }
    }

    private static async Task<bool> IsKilled(int draws)
    {
        using var scratch = new Scratch();
        string[] line = [.. Study[..^1], $"{draws}"];
        using var study = new Running([.. line, "--help-at", "0", "--kept-in", scratch["."]]);
        var (at, code) = await Opened(study);
        using var killed = new Running(["help-out", at, code, "--threads", "1"]);
        using var stays = new Running(["help-out", at, code, "--threads", "1"]);
        if (!await killed.SaysOrEnds("Helping, on 1 thread.") || !await stays.SaysOrEnds("Helping, on 1 thread."))
        {
            return false;
        }

        await Task.Delay(500, TestContext.Current.CancellationToken);
        killed.Process.Kill();
        Assert.True(await study.Ends() == 0, study.Remarks);
        Assert.True(await stays.Ends() == 0, stays.Remarks);
        Assert.Contains("The study has ended.", stays.Results, StringComparison.Ordinal);
        Assert.Contains("heaveline: helped by ", study.Remarks, StringComparison.Ordinal);
        Assert.Equal(Spoken.Of(line).Results, study.Results);
        // What was kept is whole too.
        var resumed = Spoken.Of([.. line, "--kept-in", scratch["."], "--resume"]);
        Assert.Equal((0, study.Results), (resumed.Code, resumed.Results));
        Assert.Contains(", 0 more.", resumed.Remarks, StringComparison.Ordinal);
        return true;
    }

    [Fact]
    public async Task A_fine_map_of_a_rule_is_helped_with_too_and_one_that_is_killed_changes_no_byte()
    {
        // Where the map is drawn before anybody has joined, a finer one.
        for (var speeds = 100; ; speeds = Math.Min(400, 2 * speeds))
        {
            string[] line = ["rule", Car, "--fine", "--speeds", $"{speeds}"];
            using var study = new Running([.. line, "--help-at", "0"]);
            var (at, code) = await Opened(study);
            using var killed = new Running(["help-out", at, code, "--threads", "1"]);
            if (await killed.SaysOrEnds("Helping, on 1 thread."))
            {
                killed.Process.Kill();
                Assert.True(await study.Ends() == 0, study.Remarks);
                Assert.Contains("heaveline: helped by ", study.Remarks, StringComparison.Ordinal);
                Assert.Equal(Spoken.Of(line).Results, study.Results);
                return;
            }

            Assert.True(await study.Ends() == 0, study.Remarks);
            if (speeds == 400)
            {
                // Too quick for any helper: what went through pieces all the same says what the plain run says.
                Assert.Equal(Spoken.Of(line).Results, study.Results);
                return;
            }
        }
    }

    [Fact]
    public async Task A_helper_whose_study_is_killed_leaves_by_itself()
    {
        using var study = new Running([.. Study[..^1], "10000", "--help-at", "0"]);
        var (at, code) = await Opened(study);
        using var helper = new Running(["help-out", at, code, "--threads", "1"]);
        await helper.Says("Helping, on 1 thread.");
        study.Process.Kill();
        var silent = Stopwatch.StartNew();
        Assert.Equal(ExitCode.NotComputed, await helper.Ends());
        Assert.InRange(silent.Elapsed.TotalSeconds, 1.0, 120.0);
        Assert.Contains($"heaveline: the study at {at} has not answered for ten seconds", helper.Remarks, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--help-at 70000", "--help-at", "70000")]
    [InlineData("--help-at nowhere", "--help-at", "nowhere")]
    [InlineData("--help-at 0.0.0.0:5091", "--help-at", "0.0.0.0:5091")]
    [InlineData("--help-at 192.0.2.7:5091", "--help-at", "192.0.2.7:5091")]
    [InlineData("--members", "--members", "redis 127.0.0.1:6379")]
    [InlineData("--on gpu", "--help-at", "0", "--on", "gpu")]
    public void Words_that_say_no_place_of_this_machine_are_refused(string named, params string[] words)
    {
        var said = Spoken.Of([.. Study, .. words]);
        Assert.Equal((ExitCode.WrongUsage, ""), (said.Code, said.Results));
        Assert.Contains(named, said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_without_a_port_is_refused_and_where_nobody_listens_none_is_found()
    {
        Assert.Equal(ExitCode.WrongUsage, Spoken.Of("help-out", "nowhere", "ABCD-EFGH-JKMN").Code);
        Assert.Contains("is no place of a study", Spoken.Of("help-out", "http://127.0.0.1:9", "ABCD-EFGH-JKMN").Remarks, StringComparison.Ordinal);
        Assert.Equal(ExitCode.WrongUsage, Spoken.Of("help-out", "127.0.0.1:9", "ABCD-EFGH-JKMN", "--threads", "0").Code);
        var nobody = Spoken.Of("help-out", "127.0.0.1:9", "ABCD-EFGH-JKMN");
        Assert.Equal(ExitCode.NotComputed, nobody.Code);
        Assert.Contains("No study answers at 127.0.0.1:9", nobody.Remarks, StringComparison.Ordinal);
    }

    private static async Task<(string At, string Code)> Opened(Running study)
    {
        var line = await study.Remarked("help-out ");
        var words = Regex.Match(line, @"help-out (\S+) (\S+)");
        return (words.Groups[1].Value, words.Groups[2].Value);
    }
}
