using System.Globalization;

namespace Heaveline.Tests;

/// <summary>
/// The processor time of this thread: what a test did itself, however many others run beside it and however slow the machine is. The clock of the
/// wall and the processor time of the process measure the neighbours too.
/// </summary>
internal static class ThreadWork
{
    // proc(5): the first number is the time spent on a processor, in nanoseconds.
    private const string Noted = "/proc/thread-self/schedstat";
    private const double PerSecond = 1e9;

    /// <summary>Seconds since some moment; where the system does not tell them of a thread, those of the process.</summary>
    public static double Seconds() => File.Exists(Noted)
        ? double.Parse(File.ReadAllText(Noted).Split(' ')[0], CultureInfo.InvariantCulture) / PerSecond
        : Environment.CpuUsage.TotalTime.TotalSeconds;

    /// <summary>The seconds that a deed takes.</summary>
    public static double Of(Action deed)
    {
        var before = Seconds();
        deed();
        return Seconds() - before;
    }
}
