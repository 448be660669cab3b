using System.IO.Compression;

namespace Heaveline.Files.Drives;

/// <summary>
/// Gathers the texts of a log: files, folders, archives. Bounded in bytes and in files; an archive that swells too much is refused.
/// </summary>
/// <param name="within">A folder whose files are called by their names in it; null: all by their paths.</param>
/// <param name="stop">Stops it.</param>
internal sealed class LogSources(string? within, CancellationToken stop)
{
    /// <summary>Most bytes of all texts together: two hours at 200 samples a second with room to spare.</summary>
    public const int MostBytes = 512 * 1024 * 1024;

    /// <summary>Most texts.</summary>
    public const int MostFiles = 64;

    /// <summary>Most bytes that one byte of an archive may become; text of numbers shrinks to a third or a tenth.</summary>
    public const int MostSwelling = 200;

    private const string Archive = ".zip";
    private static readonly string[] Endings = [.. FileFormat.DriveLog.Endings.Where(ending => ending != Archive)];
    private readonly List<LogSource> sources = [];
    private readonly List<LogRefusal> refusals = [];
    private readonly List<string> paths = [];
    private long bytes;

    public IReadOnlyList<LogSource> Sources => sources;

    public IReadOnlyList<LogRefusal> Refusals => refusals;

    public IReadOnlyList<string> Paths => paths;

    /// <summary>Adds what a path leads to.</summary>
    public void Add(string path)
    {
        stop.ThrowIfCancellationRequested();
        if (string.IsNullOrWhiteSpace(path) || path.Contains('\0', StringComparison.Ordinal))
        {
            Refuse(path, "no file is named.", "Give the file's name.");
        }
        else if (Directory.Exists(path))
        {
            AddFolder(path);
        }
        else if (FileNode.Other(path) is { } other)
        {
            Refuse(path, $"this is {other}; it is not opened.", "Name a file; what a program prints goes into one first.");
        }
        else if (Read(path) is { } read)
        {
            paths.Add(path);
            // The second is the end of an archive: it begins with it when nothing is packed in it.
            if (read.AsSpan().StartsWith("PK\u0003\u0004"u8) || read.AsSpan().StartsWith("PK\u0005\u0006"u8))
            {
                AddArchive(path, read);
            }
            else
            {
                AddText(Called(path), read);
            }
        }
    }

    private void AddFolder(string path)
    {
        string[] files;
        try
        {
            files = [.. Directory.EnumerateFiles(path).Where(f => IsText(f) || f.EndsWith(Archive, StringComparison.OrdinalIgnoreCase))
                .Order(StringComparer.Ordinal).Take(MostFiles + 1)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Refuse(path, $"the folder cannot be read: {FileTrouble.Words(e)}", "Check that you may read it.");
            return;
        }

        if (files.Length == 0)
        {
            Refuse(path, "the folder holds no log.", $"Put files in it that end in {string.Join(", ", Endings)} or .zip.");
        }

        foreach (var file in files)
        {
            Add(file);
        }
    }

    private byte[]? Read(string path)
    {
        try
        {
            if (new FileInfo(path) is { Exists: true, Length: > MostBytes })
            {
                return RefuseLarge(path);
            }

            return Bounded.Read(path, MostBytes, stop);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            Refuse(path, "there is no such file.", "Check the name and the folder.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Refuse(path, $"the file cannot be read: {FileTrouble.Words(e)}", "Check that it is a file and that you may read it.");
        }

        return null;
    }

    private void AddArchive(string path, byte[] archive)
    {
        try
        {
            using var packed = new CountedStream(archive);
            using var zip = new ZipArchive(packed, ZipArchiveMode.Read);
            var entries = zip.Entries.Where(e => IsText(e.Name)).OrderBy(e => e.FullName, StringComparer.Ordinal).ToList();
            if (entries.Count == 0)
            {
                Refuse(
                    path,
                    zip.Entries.Count == 0 ? "the archive is empty." : "the archive holds no log.",
                    $"Pack files in it that end in {string.Join(", ", Endings)}.");
            }

            foreach (var entry in entries)
            {
                stop.ThrowIfCancellationRequested();
                if (!AddEntry(path, entry, packed))
                {
                    return;
                }
            }
        }
        catch (Exception e) when (e is InvalidDataException or IOException or NotSupportedException)
        {
            Refuse(path, "the archive is damaged or of a kind that is not read.", "Pack it again as a plain .zip, without a password.");
        }
    }

    // What an entry says of its own size is believed where it is too much. The swelling is watched all the way: what was read of the archive so far
    // bounds what came of it, so that a bomb is given up at its beginning.
    private bool AddEntry(string path, ZipArchiveEntry entry, CountedStream packed)
    {
        var name = $"{Called(path)}/{entry.FullName}";
        var most = Math.Min(MostBytes - bytes, Math.Max(entry.CompressedLength, 1L) * MostSwelling);
        if (entry.Length > most)
        {
            return RefuseSwelling(name);
        }

        var before = packed.CountRead;
        var part = new byte[1 << 16];
        using var from = entry.Open();
        using var to = new MemoryStream((int)Math.Min(entry.Length, (20 * entry.CompressedLength) + part.Length));
        for (int read; (read = from.Read(part)) > 0;)
        {
            stop.ThrowIfCancellationRequested();
            if (to.Length + read > Math.Min(most, MostSwelling * (packed.CountRead - before + part.Length)))
            {
                return RefuseSwelling(name);
            }

            to.Write(part, 0, read);
        }

        var text = to.Length == to.Capacity ? to.GetBuffer() : to.ToArray();
        if (text.Length != entry.Length || Crc32.Of(text) != entry.Crc32)
        {
            Refuse(name, "it is damaged: what is unpacked does not agree with the check sum that the archive keeps of it.", "Pack it again.");
            return false;
        }

        AddText(name, text);
        return refusals.Count == 0;
    }

    private bool RefuseSwelling(string name)
    {
        Refuse(name, FormattableString.Invariant($"unpacked it is more than {MostSwelling} times as long, or longer than {MostBytes} bytes."),
            "Give the file itself, in parts if it is so long.");
        return false;
    }

    private void AddText(string name, byte[] text)
    {
        bytes += text.Length;
        if (bytes > MostBytes)
        {
            RefuseLarge(name);
        }
        else if (sources.Count == MostFiles)
        {
            Refuse(name, FormattableString.Invariant($"there are more than {MostFiles} files."), "Give those of one drive.");
        }
        else
        {
            sources.Add(new LogSource(name, text));
        }
    }

    private byte[]? RefuseLarge(string path)
    {
        Refuse(path, FormattableString.Invariant($"it brings the log to more than {MostBytes} bytes."), "Give the drive in parts.");
        return null;
    }

    private static bool IsText(string name) => Endings.Any(e => name.EndsWith(e, StringComparison.OrdinalIgnoreCase));

    private string Called(string path) => within is null ? path : Path.GetRelativePath(within, path);

    private void Refuse(string file, string message, string advice) => refusals.Add(new LogRefusal(
        within is not null && Path.IsPathRooted(file) ? Called(file) : file, message, advice));
}
