using System.Diagnostics;
using System.Globalization;
using Heaveline.Cli;
using Heaveline.Cli.Output;
using Heaveline.Tests.Files;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>Ctrl+C and SIGTERM end every command soon, with one sentence and never a stack trace.</summary>
public class InterruptionTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";
    private const string Words = "heaveline: stopped by you; nothing was written.\n";

    [Theory]
    [InlineData("--csv", "pipe.csv")]
    [InlineData("--figure", "pipe.svg")]
    public async Task A_pipe_that_nobody_reads_from_is_left_at_the_first_request(string option, string name)
    {
        using var scratch = new Scratch();
        var pipe = Fifo.At(scratch[name]);
        var (process, said) = await Waiting(pipe, "pass", Saloon, option, pipe);
        using (process)
        {
            Signal(process, "TERM");
            var remarks = said + await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.Equal((ExitCode.NotComputed, Waits(pipe) + Words), (process.ExitCode, remarks));
        }
    }

    [Fact]
    public async Task A_reader_that_comes_late_gets_everything()
    {
        using var scratch = new Scratch();
        var pipe = Fifo.At(scratch["pipe.csv"]);
        Assert.Equal(0, Spoken.Of("pass", Saloon, "--csv", scratch["numbers.csv"]).Code);
        var (process, _) = await Waiting(pipe, "pass", Saloon, "--csv", pipe);
        using (process)
        {
            Assert.Equal(await File.ReadAllTextAsync(scratch["numbers.csv"], TestContext.Current.CancellationToken),
                await File.ReadAllTextAsync(pipe, TestContext.Current.CancellationToken));
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.Equal(0, process.ExitCode);
        }
    }

    // A reader that stops reading holds the program inside the system, where no token reaches it.
    [Fact]
    public async Task A_second_request_ends_at_once_what_is_held_inside_the_system()
    {
        using var scratch = new Scratch();
        var pipe = Fifo.At(scratch["pipe.csv"]);
        var (process, said) = await Waiting(pipe, "pass", Saloon, "--csv", pipe);
        using (process)
        {
            using var silent = new FileStream(pipe, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 0);
            _ = silent.ReadByte();
            Signal(process, "TERM");
            Signal(process, "INT");
            var remarks = said + await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.Equal((ExitCode.NotComputed, Waits(pipe) + Words), (process.ExitCode, remarks));
        }
    }

    [Fact]
    public void The_first_request_stops_the_work_and_the_second_ends_the_program()
    {
        var ends = new List<int>();
        using var interruption = new Interruption(ends.Add);
        Assert.False(interruption.Token.IsCancellationRequested);
        interruption.Ask();
        Assert.True(interruption.Token.IsCancellationRequested);
        Assert.Empty(ends);
        interruption.Ask();
        Assert.Equal([ExitCode.NotComputed], ends);
    }

    [Fact]
    public void That_it_was_stopped_is_said_once_and_of_the_pages_not_that_nothing_was_written()
    {
        using var remarks = new StringWriter();
        var streams = new Streams(TextWriter.Null, remarks, interactive: false);
        streams.SayStopped();
        streams.SayStopped();
        Assert.Equal(Words, remarks.ToString().ReplaceLineEndings("\n"));
        using var scratch = new Scratch();
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        using var said = new StringWriter();
        Program.Run(["serve", scratch["."], "--port", "0"], new Streams(TextWriter.Null, said, interactive: false), stop.Token);
        Assert.DoesNotContain("nothing was written", said.ToString());
    }

    [Fact]
    public async Task Work_that_does_not_see_the_request_ends_after_a_moments_grace()
    {
        var ended = new TaskCompletionSource<int>(TaskCreationOptions.RunContinuationsAsynchronously);
        using var interruption = new Interruption(code => ended.TrySetResult(code));
        interruption.Ask();
        Assert.Equal(ExitCode.NotComputed, await ended.Task.WaitAsync(TimeSpan.FromMinutes(2), TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("road")]
    [InlineData("pass", Saloon, "--road")]
    [InlineData("report", Saloon, "--parts", "road", "--out", "report.html", "--road")]
    public void A_long_road_is_left_as_soon_as_it_is_asked(params string[] line)
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["lane.csv"], "distance [m],height [mm]\n" + string.Concat(
            Enumerable.Range(0, 20_000).Select(i => string.Create(CultureInfo.InvariantCulture, $"{0.01 * i:F2},{i % 7}\n"))));
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        using var results = new StringWriter();
        using var remarks = new StringWriter();
        var words = line.Select(w => w == Saloon ? Path.Combine(Checkout.Root, w) : w == "report.html" ? scratch[w] : w);
        var code = Program.Run([.. words, scratch["lane.csv"]], new Streams(results, remarks, interactive: false), stop.Token);
        Assert.Equal((ExitCode.NotComputed, "", Words), (code, results.ToString(), remarks.ToString().ReplaceLineEndings("\n")));
        Assert.Equal(["lane.csv"], scratch.Contents);
    }

    private static string Waits(string pipe) => $"heaveline: '{pipe}' is a pipe: waiting until somebody reads from it.\n";

    // Started, and so far that it waits for a reader.
    private static async Task<(Process Process, string Said)> Waiting(string pipe, params string[] line)
    {
        var process = Process.Start(new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "Heaveline.Cli"), line)
        {
            WorkingDirectory = Checkout.Root,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        _ = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var said = await process.StandardError.ReadLineAsync(TestContext.Current.CancellationToken) + "\n";
        Assert.Equal(Waits(pipe), said);
        return (process, said);
    }

    private static void Signal(Process process, string name)
    {
        using var kill = Process.Start("kill", [$"-{name}", process.Id.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
        Assert.Equal(0, kill.ExitCode);
    }
}
