namespace Heaveline.Files;

/// <summary>
/// Writes a file whole or not at all: into a neighbour first, which takes the name only when every byte is on the disk. A reader, or a power
/// cut, meets the old file or the new one, never a part. A pipe or a device is never replaced.
/// </summary>
public static class WholeFile
{
    // ENOSPC (errno(3)) and ERROR_DISK_FULL (learn.microsoft.com, "System Error Codes").
    private const int DiskFull = 28;
    private const int DiskFullOnWindows = 112;

    /// <summary>Writes the bytes as the file, replacing one that is there.</summary>
    /// <param name="path">The file.</param>
    /// <param name="bytes">All its bytes.</param>
    /// <exception cref="IOException">The folder is missing, the path is a folder, or the disk is full. Nothing is left behind.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder or the file may not be written. Nothing is left behind.</exception>
    public static void Write(string path, ReadOnlyMemory<byte> bytes) => Write(path, stream => stream.Write(bytes.Span));

    /// <summary>Writes the bytes as the file; into a pipe once somebody reads from it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="bytes">All its bytes.</param>
    /// <param name="waits">Called once, where it is a pipe from which nobody reads yet.</param>
    /// <param name="stop">Ends the wait for a reader.</param>
    /// <exception cref="IOException">As above.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static void Write(string path, ReadOnlyMemory<byte> bytes, Action? waits, CancellationToken stop) =>
        Write(path, stream => stream.Write(bytes.Span), waits, stop);

    /// <summary>
    /// Writes what the caller puts into the stream as the file, replacing one that is there; nothing if the caller throws. A link stays, and what it
    /// leads to is written. Into a pipe or a device the bytes go as they come: there is nothing to replace.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <param name="content">Puts the bytes into the stream.</param>
    /// <exception cref="IOException">As above; or the path is a link in a circle, or one under which a car or a road lies.</exception>
    public static void Write(string path, Action<Stream> content) => Write(path, content, null, CancellationToken.None);

    private static void Write(string path, Action<Stream> content, Action? waits, CancellationToken stop)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(content);
        if (FileNode.Of(path) == FileNodeKind.Special)
        {
            // Not cut off first and not locked: neither means anything there.
            using var through = FileNode.IsPipe(path)
                ? PipeEnd.Open(path, waits, stop)
                : new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
            content(through);
            return;
        }

        var real = RealPath.Of(path) ?? throw new IOException($"'{path}' cannot be written: it is a link in a circle.");
        if (!FileFormat.Described.Has(path) && FileFormat.Described.Has(real))
        {
            throw new IOException($"'{path}' cannot be written: it is a link to '{real}', which is named as {FileFormat.Described.Name}.");
        }

        Write(real, content, () => true, replaces: true);
        PartialFile.SweepOutputs(Path.GetDirectoryName(real)!, TimeProvider.System.GetUtcNow().UtcDateTime);
    }

    /// <summary>Writes the bytes as a file that is not there yet; one that is there, even since a moment ago, stays.</summary>
    /// <param name="path">The file.</param>
    /// <param name="bytes">All its bytes.</param>
    /// <returns>Whether it was written.</returns>
    /// <exception cref="IOException">As above.</exception>
    /// <exception cref="UnauthorizedAccessException">As above.</exception>
    public static bool WriteNew(string path, ReadOnlyMemory<byte> bytes) =>
        !File.Exists(path) && Write(path, stream => stream.Write(bytes.Span), () => true, replaces: false);

    /// <summary>Writes the file whole, if at the last moment it still may.</summary>
    /// <param name="path">The file.</param>
    /// <param name="content">Puts the bytes into the stream.</param>
    /// <param name="may">Asked when every byte is on the disk, just before the file takes its name.</param>
    /// <param name="replaces">Whether a file of that name is replaced. If not, none is ever, even one that comes at the last moment.</param>
    /// <returns>Whether the file was written.</returns>
    internal static bool Write(string path, Action<Stream> content, Func<bool> may, bool replaces)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(content);
        var full = Path.GetFullPath(path);

        if (!Directory.Exists(Path.GetDirectoryName(full)))
        {
            throw new DirectoryNotFoundException($"'{path}' cannot be written: there is no folder '{Path.GetDirectoryName(full)}'.");
        }

        FileNode.RefuseSpecial(full);
        // In the same folder, because a move is atomic only within one file system.
        var partial = Path.Combine(Path.GetDirectoryName(full)!, PartialFile.NameFor(full));
        try
        {
            using (var stream = new FileStream(partial, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                content(stream);
                stream.Flush(flushToDisk: true);
            }

            // Who may read the old file may read the new one, and nobody else.
            if (!OperatingSystem.IsWindows() && File.Exists(full))
            {
                File.SetUnixFileMode(partial, File.GetUnixFileMode(full));
            }

            if (may())
            {
                File.Move(partial, full, overwrite: replaces);
                return true;
            }

            File.Delete(partial);
            return false;
        }
        catch (IOException) when (!replaces && File.Exists(full) && File.Exists(partial))
        {
            File.Delete(partial);
            return false;
        }
        catch (Exception failure)
        {
            if (File.Exists(partial))
            {
                File.Delete(partial);
            }

            if (failure is IOException or UnauthorizedAccessException)
            {
                throw Unwritten(path, full, partial, failure);
            }

            throw;
        }
    }

    // Of the file that was asked for, and what to do; nobody knows the neighbour.
    private static Exception Unwritten(string path, string full, string partial, Exception failure)
    {
        var folder = Path.GetDirectoryName(full)!;
        var words = failure switch
        {
            UnauthorizedAccessException => $"you may not write in the folder '{folder}'. Choose another folder, or change who may write there.",
            FileNotFoundException or DirectoryNotFoundException => $"the folder '{folder}' takes no new files. Choose another folder.",
            PathTooLongException => "its name is too long. Give a shorter one.",
            _ when (failure.HResult & 0xFFFF) is DiskFull or DiskFullOnWindows =>
                $"the disk of '{folder}' is full. Make room there, or choose another disk.",
            _ => $"{FileTrouble.Words(failure).Replace(partial, full, StringComparison.Ordinal)} Choose another folder.",
        };
        var said = $"'{path}' cannot be written: {words}";
        return failure is UnauthorizedAccessException ? new UnauthorizedAccessException(said, failure) : new IOException(said, failure);
    }
}
