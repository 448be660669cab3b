namespace Heaveline.Files;

/// <summary>Reads files whose size is not known beforehand: one that grows meanwhile, or a device that never ends.</summary>
internal static class Bounded
{
    private const int Least = 4096;

    // Between two looks at the token.
    private const int Part = 1 << 23;

    /// <summary>All bytes of a file of limited size.</summary>
    /// <param name="path">The file.</param>
    /// <param name="most">Most bytes.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    /// <exception cref="IOException">The file cannot be read, it is a pipe or a device (and is not opened), or it has more bytes.</exception>
    public static byte[] Read(string path, int most, CancellationToken stop = default)
    {
        FileNode.RefuseSpecial(path);
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        // As long as it says it is: only a file that grows meanwhile needs more room, and a byte past its end tells it.
        var bytes = new byte[(int)Math.Min(stream.Length, most)];
        var length = 0;
        for (int read; (read = stream.Read(bytes.AsSpan(length, Math.Min(bytes.Length - length, Part)))) > 0;)
        {
            stop.ThrowIfCancellationRequested();
            length += read;
        }

        for (int next; (next = stream.ReadByte()) >= 0;)
        {
            if (length >= most)
            {
                throw new IOException($"it has more than {most} bytes.");
            }

            if (length == bytes.Length)
            {
                Array.Resize(ref bytes, (int)Math.Min(Math.Max(2L * length, Least), most));
            }

            bytes[length++] = (byte)next;
        }

        Array.Resize(ref bytes, length);
        return bytes;
    }
}
