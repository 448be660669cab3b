using System.Diagnostics;
using System.Text.RegularExpressions;
using Heaveline.Cli.Output;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>Programs that help one another with a study, and are killed: run as programs, on this machine alone.</summary>
public class HelpOutTests
{
    private const string Car = "examples/garage/fern-saloon.yaml";
    private const string List = "examples/parts/village-autumn.yaml";

    private static readonly string[] Study = ["choose", Car, "--parts", List, "--load", "driver", "--draws", "60"];

    [Fact]
    public async Task A_helper_that_is_killed_loses_nothing_and_the_answer_is_the_same_to_the_byte()
    {
        using var scratch = new Scratch();
        using var study = new Running([.. Study, "--help-at", "0", "--kept-in", scratch["."]]);
        var (at, code) = await Opened(study);
        using var killed = new Running(["help-out", at, code, "--threads", "1"]);
        using var stays = new Running(["help-out", at, code, "--threads", "1"]);
        await killed.Says("Helping, on 1 thread.");
        await Task.Delay(500, TestContext.Current.CancellationToken);
        killed.Process.Kill();
        Assert.True(await study.Ends() == 0, study.Remarks);
        Assert.True(await stays.Ends() == 0, stays.Remarks);
        Assert.Contains("The study has ended.", stays.Results, StringComparison.Ordinal);
        Assert.Contains("heaveline: helped by ", study.Remarks, StringComparison.Ordinal);
        Assert.Equal(Spoken.Of(Study).Results, study.Results);
        // What was kept is whole too.
        var resumed = Spoken.Of([.. Study, "--kept-in", scratch["."], "--resume"]);
        Assert.Equal((0, study.Results), (resumed.Code, resumed.Results));
        Assert.Contains(", 0 more.", resumed.Remarks, StringComparison.Ordinal);
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
        Assert.InRange(silent.Elapsed.TotalSeconds, 1.0, 45.0);
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

    // A program at work, and what it has said so far.
    private sealed class Running : IDisposable
    {
        private readonly List<string> results = [];
        private readonly List<string> remarks = [];

        public Running(string[] line)
        {
            Process = Process.Start(new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "Heaveline.Cli"), line)
            {
                WorkingDirectory = Checkout.Root, RedirectStandardOutput = true, RedirectStandardError = true,
            })!;
            Process.OutputDataReceived += (_, said) => Add(results, said.Data);
            Process.ErrorDataReceived += (_, said) => Add(remarks, said.Data);
            Process.BeginOutputReadLine();
            Process.BeginErrorReadLine();
        }

        public Process Process { get; }

        public string Results => Text(results);

        public string Remarks => Text(remarks);

        public Task<string> Says(string words) => Heard(results, words);

        public Task<string> Remarked(string words) => Heard(remarks, words);

        public async Task<int> Ends()
        {
            await Process.WaitForExitAsync(TestContext.Current.CancellationToken);
            return Process.ExitCode;
        }

        public void Dispose()
        {
            if (!Process.HasExited)
            {
                Process.Kill();
                Process.WaitForExit();
            }

            Process.Dispose();
        }

        private async Task<string> Heard(List<string> lines, string words)
        {
            for (var k = 0; k < 900; k++)
            {
                if (Text(lines).Split('\n').FirstOrDefault(line => line.Contains(words, StringComparison.Ordinal)) is { } line)
                {
                    return line;
                }

                Assert.False(Process.HasExited && k % 20 == 19, $"It has ended: {Results}{Remarks}");
                await Task.Delay(100, TestContext.Current.CancellationToken);
            }

            Assert.Fail($"'{words}' was not said: {Results}{Remarks}");
            return "";
        }

        private static void Add(List<string> lines, string? line)
        {
            lock (lines)
            {
                if (line is not null)
                {
                    lines.Add(line);
                }
            }
        }

        private static string Text(List<string> lines)
        {
            lock (lines)
            {
                return string.Concat(lines.Select(line => line + "\n"));
            }
        }
    }
}
