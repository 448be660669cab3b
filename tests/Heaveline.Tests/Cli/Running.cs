using System.Diagnostics;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>A program at work, and what it has said so far.</summary>
internal sealed class Running : IDisposable
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

    // False where it ends without.
    public Task<bool> SaysOrEnds(string words) => HeardOrEnds(results, words);

    public Task<bool> RemarksOrEnds(string words) => HeardOrEnds(remarks, words);

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

    private async Task<bool> HeardOrEnds(List<string> lines, string words)
    {
        for (var k = 0; !Process.HasExited && k < 1800; k++)
        {
            if (Text(lines).Contains(words, StringComparison.Ordinal))
            {
                return true;
            }

            await Task.Delay(100, TestContext.Current.CancellationToken);
        }

        return Process.HasExited ? false : throw new TimeoutException($"'{words}' was not said: {Results}{Remarks}");
    }

    private async Task<string> Heard(List<string> lines, string words)
    {
        for (var k = 0; k < 1800; k++)
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
