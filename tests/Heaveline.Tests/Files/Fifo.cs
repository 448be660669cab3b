using System.Diagnostics;

namespace Heaveline.Tests.Files;

/// <summary>A named pipe on the disk: opening it waits for somebody at its other end.</summary>
internal static class Fifo
{
    /// <summary>Makes one; where the system has none, the test is skipped.</summary>
    public static string At(string path)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "There are no named pipes on the disk here.");
        using var made = Process.Start("mkfifo", [path]);
        made.WaitForExit();
        Assert.Equal(0, made.ExitCode);
        return path;
    }

    /// <summary>What an act gives, if it ends within seconds.</summary>
    public static T Soon<T>(Func<T> act)
    {
        var running = Task.Factory.StartNew(act, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        Assert.True(running.Wait(TimeSpan.FromSeconds(120), TestContext.Current.CancellationToken), "It still waits for the other end of a pipe.");
        return running.GetAwaiter().GetResult();
    }
}
