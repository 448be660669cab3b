namespace Heaveline.Files;

/// <summary>Reads files whose size is not known beforehand: one that grows meanwhile, or a device that never ends.</summary>
internal static class Bounded
{
    /// <summary>All bytes of a file of limited size.</summary>
    /// <exception cref="IOException">The file cannot be read, it is a pipe or a device (and is not opened), or it has more bytes.</exception>
    public static byte[] Read(string path, int most)
    {
        FileNode.RefuseSpecial(path);
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var bytes = new MemoryStream();
        var part = new byte[16 * 1024];
        for (var read = stream.Read(part); read > 0; read = stream.Read(part))
        {
            if (bytes.Length + read > most)
            {
                throw new IOException($"it has more than {most} bytes.");
            }

            bytes.Write(part, 0, read);
        }

        return bytes.ToArray();
    }
}
