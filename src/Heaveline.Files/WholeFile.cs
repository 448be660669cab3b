namespace Heaveline.Files;

/// <summary>
/// Writes a file whole or not at all: into a neighbour first, which takes the name only when every byte is on the disk. A reader, or a power
/// cut, meets the old file or the new one, never a part.
/// </summary>
public static class WholeFile
{
    /// <summary>Writes the bytes as the file, replacing one that is there.</summary>
    /// <param name="path">The file.</param>
    /// <param name="bytes">All its bytes.</param>
    /// <exception cref="IOException">The folder is missing, the path is a folder, or the disk is full. Nothing is left behind.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder or the file may not be written. Nothing is left behind.</exception>
    public static void Write(string path, ReadOnlyMemory<byte> bytes) => Write(path, stream => stream.Write(bytes.Span));

    /// <summary>Writes what the caller puts into the stream as the file, replacing one that is there; nothing if the caller throws.</summary>
    /// <param name="path">The file.</param>
    /// <param name="content">Puts the bytes into the stream.</param>
    /// <exception cref="IOException">As above.</exception>
    public static void Write(string path, Action<Stream> content)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(content);
        var full = Path.GetFullPath(path);

        if (!Directory.Exists(Path.GetDirectoryName(full)))
        {
            throw new DirectoryNotFoundException($"'{path}' cannot be written: there is no folder '{Path.GetDirectoryName(full)}'.");
        }

        // In the same folder, because a move is atomic only within one file system.
        var partial = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.{Path.GetRandomFileName()}.partial");
        try
        {
            using (var stream = new FileStream(partial, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                content(stream);
                stream.Flush(flushToDisk: true);
            }

            File.Move(partial, full, overwrite: true);
        }
        catch
        {
            if (File.Exists(partial))
            {
                File.Delete(partial);
            }

            throw;
        }
    }
}
