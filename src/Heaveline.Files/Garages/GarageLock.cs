namespace Heaveline.Files.Garages;

/// <summary>
/// One save at a time in a garage: within the process by a lock, between processes by a file that one of them holds open alone. The file stays
/// where it is: taking it away would let one process hold the old one and another the new one.
/// </summary>
internal sealed class GarageLock : IDisposable
{
    private const string Name = ".heaveline-lock";
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(10);

    // A few for all garages together: two garages that share one only wait for each other.
    private static readonly Lock[] Within = [.. Enumerable.Range(0, 16).Select(_ => new Lock())];

    private readonly Lock within;
    private readonly FileStream file;

    private GarageLock(Lock within, FileStream file)
    {
        this.within = within;
        this.file = file;
    }

    /// <summary>Takes the lock, or gives null when another program holds it for longer than one waits.</summary>
    /// <param name="folder">The garage's folder.</param>
    /// <param name="patience">How long to wait.</param>
    /// <exception cref="IOException">The lock's file cannot be made.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    public static GarageLock? Take(string folder, TimeSpan patience)
    {
        var within = Within[(int)((uint)StringComparer.OrdinalIgnoreCase.GetHashCode(folder) % Within.Length)];
        if (!within.TryEnter(patience))
        {
            return null;
        }

        FileStream? file = null;
        try
        {
            file = Open(Path.Combine(folder, Name), patience);
            return file is null ? null : new GarageLock(within, file);
        }
        finally
        {
            if (file is null)
            {
                within.Exit();
            }
        }
    }

    /// <summary>Lets the next one in.</summary>
    public void Dispose()
    {
        file.Dispose();
        within.Exit();
    }

    private static FileStream? Open(string path, TimeSpan patience)
    {
        if (new FileInfo(path).LinkTarget is not null)
        {
            throw new IOException($"{Name} is a link; it must be a file.");
        }

        FileNode.RefuseSpecial(path);
        var end = Environment.TickCount64 + (long)patience.TotalMilliseconds;
        while (true)
        {
            try
            {
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (File.Exists(path) && Environment.TickCount64 < end)
            {
                Thread.Sleep(Pause);
            }
            catch (IOException) when (File.Exists(path))
            {
                return null;
            }
        }
    }
}
