using System.Runtime.InteropServices;

namespace Heaveline.Bench;

/// <summary>Processor time of the calling thread: what others on the machine do counts little.</summary>
internal static partial class ProcessorTime
{
    // CLOCK_THREAD_CPUTIME_ID of Linux.
    private const int Thread = 3;

    /// <summary>Milliseconds that a piece of work takes.</summary>
    public static double Of(Action work)
    {
        var start = Now();
        work();
        return Now() - start;
    }

    private static double Now() =>
        Clock(Thread, out var time) == 0
            ? (1e3 * time.Seconds) + (1e-6 * time.Nanoseconds)
            : throw new InvalidOperationException("The thread's clock cannot be read.");

    [LibraryImport("libc", EntryPoint = "clock_gettime")]
    private static partial int Clock(int clock, out Time time);

    [StructLayout(LayoutKind.Sequential)]
    private readonly struct Time
    {
        public readonly long Seconds;
        public readonly long Nanoseconds;
    }
}
