using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace Heaveline.Files;

/// <summary>
/// The end of a named pipe that is written into. Opening it as a file waits for a reader inside the system, deaf to everything; here the wait can be
/// stopped.
/// </summary>
internal static class PipeEnd
{
    // open(2): O_WRONLY is 1 everywhere, O_NONBLOCK and O_CLOEXEC are not. ENXIO: nobody reads from it.
    private const int ForWriting = 1;
    private const int NoReader = 6;
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    /// <summary>Opens the pipe once somebody reads from it.</summary>
    /// <param name="path">The pipe.</param>
    /// <param name="waits">Called once, where nobody does yet.</param>
    /// <param name="stop">Ends the wait.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static FileStream Open(string path, Action? waits, CancellationToken stop)
    {
        for (var tries = 0; ; tries++)
        {
            stop.ThrowIfCancellationRequested();
            // Held until the stream is open: with a reader and this at its ends the pipe opens at once.
            using var probe = Probe(path, out var isAlone);
            if (!isAlone)
            {
                return new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
            }

            if (tries == 0)
            {
                waits?.Invoke();
            }

            stop.WaitHandle.WaitOne(Pause);
        }
    }

    private static SafeFileHandle Probe(string path, out bool isAlone)
    {
        var flags = ForWriting | (OperatingSystem.IsMacOS() ? 0x4 | 0x1000000 : 0x800 | 0x80000);
        var handle = new SafeFileHandle(Open(Encoding.UTF8.GetBytes(path + '\0'), flags), ownsHandle: true);
        isAlone = handle.IsInvalid && Marshal.GetLastPInvokeError() == NoReader;
        return handle;
    }

    [DllImport("libc", EntryPoint = "open", SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open(byte[] path, int flags);
}
