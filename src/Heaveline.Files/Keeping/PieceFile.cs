using System.Text;
using Heaveline.Quantities;
using Microsoft.Win32.SafeHandles;

namespace Heaveline.Files.Keeping;

/// <summary>
/// The file that keeps the answers to a study's pieces while they come, so that a run that ends early, however it ends, is gone on with: a head that
/// says which study and which program, then a record each. It is only ever added to; one run writes it at a time. Written at once, on the disk within
/// a second.
/// </summary>
public sealed class PieceFile : IDisposable
{
    /// <summary>How the names of such files end.</summary>
    public const string Ending = ".pieces";

    private const string Format = "heaveline pieces 1";
    private const string Study = "study ";
    private const string Release = "program ";

    // EWOULDBLOCK (errno(3) of Linux, intro(2) of macOS) and ERROR_SHARING_VIOLATION (learn.microsoft.com, "System Error Codes").
    private const int Locked = 11;
    private const int LockedOnMacOs = 35;
    private const int LockedOnWindows = 32;

    // More than any head has.
    private const int LongestHead = 512;

    private static readonly TimeSpan Every = TimeSpan.FromSeconds(1);

    private readonly FileStream stream;
    private readonly Dictionary<string, byte[]> kept = new(StringComparer.Ordinal);
    private readonly HashSet<string> withdrawn = new(StringComparer.Ordinal);
    private readonly Lock turn = new();
    private readonly Timer timer;
    private IOException? failure;
    private bool isDirty;
    private bool isClosed;

    private PieceFile(string path, FileStream stream)
    {
        (Path, this.stream) = (path, stream);
        timer = new Timer(_ => Sync());
    }

    /// <summary>Where it lies.</summary>
    public string Path { get; }

    /// <summary>How many pieces it kept when it was opened.</summary>
    public int Before { get; private set; }

    /// <summary>How many pieces it keeps.</summary>
    public int Count
    {
        get
        {
            lock (turn)
            {
                return kept.Count;
            }
        }
    }

    /// <summary>Where the pieces of a study lie in a garage.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="hash">What the study is known by.</param>
    public static string In(string garage, string hash)
    {
        ArgumentNullException.ThrowIfNull(hash);
        return System.IO.Path.Combine(garage, ".heaveline", "studies", hash[..16] + Ending);
    }

    /// <summary>Opens the file of a study, or begins it. What a run that ended in the middle of a record left behind is cut off.</summary>
    /// <param name="path">The file; its folder is made.</param>
    /// <param name="hash">What the study is known by.</param>
    /// <param name="program">Which program does its pieces: another one's are not of the same bits.</param>
    /// <exception cref="RefusedValueException">It is of another study or program, is damaged, or another run writes it.</exception>
    /// <exception cref="IOException">It cannot be read or written.</exception>
    public static PieceFile Open(string path, string hash, string program) => Open(
        path, hash, program, () => new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 0));

    /// <inheritdoc cref="Open(string, string, string)"/>
    /// <param name="path">The file; its folder is made.</param>
    /// <param name="hash">What the study is known by.</param>
    /// <param name="program">Which program does its pieces.</param>
    /// <param name="opens">Opens it.</param>
    internal static PieceFile Open(string path, string hash, string program, Func<FileStream> opens)
    {
        // Opened, a pipe would wait for its other end.
        if ((FileNode.Of(path) switch
        {
            FileNodeKind.File => null,
            FileNodeKind.Folder => "a folder",
            FileNodeKind.Nothing => new FileInfo(path).LinkTarget is { } target ? $"a link to '{target}', where nothing is" : null,
            _ => FileNode.Other(path),
        }) is { } other)
        {
            throw new RefusedValueException(
                "the file of the study's pieces", $"'{path}', which is {other}", "a file", "Move it away, or keep the study in another folder.");
        }

        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path))!);
        FileStream stream;
        try
        {
            stream = opens();
        }
        catch (IOException busy) when ((busy.HResult & 0xFFFF) is Locked or LockedOnMacOs or LockedOnWindows)
        {
            throw new RefusedValueException(
                "the file of the study's pieces", $"'{path}', which another run is writing", "written by one run at a time",
                "Wait until that run has ended, or keep this one in another folder.");
        }

        var file = new PieceFile(path, stream);
        try
        {
            file.Read(hash, program);
            file.timer.Change(Every, Every);
            return file;
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    /// <summary>The study that a file says to be of; null where it is no such file, or nobody may read it now.</summary>
    public static string? StudyOf(string path)
    {
        try
        {
            if (FileNode.Of(path) != FileNodeKind.File)
            {
                return null;
            }

            using var file = File.OpenHandle(path);
            return HeadOf(file) is [Format, var study, _, ..] && study.StartsWith(Study, StringComparison.Ordinal) ? study[Study.Length..] : null;
        }
        catch (Exception none) when (none is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>The answer to a piece; null where it is not kept.</summary>
    public byte[]? Of(byte[] piece)
    {
        var key = Key(piece);
        lock (turn)
        {
            return kept.GetValueOrDefault(key);
        }
    }

    /// <summary>Keeps the answer to a piece.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="InvalidOperationException">Another answer to it is kept already.</exception>
    public void Keep(byte[] piece, byte[] answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentOutOfRangeException.ThrowIfZero(answer.Length);
        var (key, record) = (Key(piece), PieceRecord.Of(piece, answer));
        lock (turn)
        {
            Writable();
            // It was on its way when it was taken back, and may be the wrong one still.
            if (withdrawn.Contains(key))
            {
                return;
            }

            if (kept.TryGetValue(key, out var before))
            {
                // What is asked for twice at once is answered twice.
                if (!before.AsSpan().SequenceEqual(answer))
                {
                    throw new InvalidOperationException("A piece was answered twice, and not the same.");
                }

                return;
            }

            try
            {
                stream.Write(record);
            }
            catch (IOException why)
            {
                // It may stand there in part: behind it no other may come.
                failure = why;
                Writable();
            }

            kept.Add(key, answer);
            isDirty = true;
        }
    }

    /// <summary>Takes back the answers to pieces: they are done anew when the study is gone on with, and not kept again before.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Withdraw(IReadOnlyList<byte[]> pieces)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        lock (turn)
        {
            Writable();
            foreach (var piece in pieces)
            {
                if (withdrawn.Add(Key(piece)) && kept.Remove(Key(piece)))
                {
                    stream.Write(PieceRecord.Of(piece, []));
                    isDirty = true;
                }
            }
        }

        Flush();
    }

    /// <summary>Has all on the disk that was kept so far.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Flush()
    {
        Sync();
        lock (turn)
        {
            Writable();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        timer.Dispose();
        Sync();
        lock (turn)
        {
            isClosed = true;
            stream.Dispose();
        }
    }

    private void Writable()
    {
        if (failure is not null)
        {
            throw new IOException($"'{Path}' cannot be written: {FileTrouble.Words(failure)}", failure);
        }
    }

    private static string Key(byte[] piece) => Convert.ToBase64String(piece);

    // Out of a timer nothing may be thrown: it is told to whoever keeps the next piece.
    private void Sync()
    {
        lock (turn)
        {
            if (!isDirty || isClosed)
            {
                return;
            }

            try
            {
                stream.Flush(flushToDisk: true);
                isDirty = false;
            }
            catch (IOException why)
            {
                failure = why;
            }
        }
    }

    private void Read(string hash, string program)
    {
        var head = Encoding.UTF8.GetBytes($"{Format}\n{Study}{hash}\n{Release}{program}\n");
        var (file, length) = (stream.SafeFileHandle, stream.Length);
        var bytes = new byte[Math.Min(length, head.Length)];
        PieceRecord.Filled(file, bytes, 0);
        // A run may have ended before its head was written whole.
        if (bytes.Length < head.Length && head.AsSpan().StartsWith(bytes))
        {
            stream.SetLength(0);
            stream.Position = 0;
            stream.Write(head);
            stream.Flush(flushToDisk: true);
            return;
        }

        if (!bytes.AsSpan().SequenceEqual(head))
        {
            throw Foreign(HeadOf(file), hash, program);
        }

        long at = head.Length;
        while (at < length && PieceRecord.At(file, at, length) is var (piece, answer, size))
        {
            if (answer.Length == 0)
            {
                kept.Remove(Key(piece));
            }
            else if (!kept.TryAdd(Key(piece), answer) && !kept[Key(piece)].AsSpan().SequenceEqual(answer))
            {
                throw Damaged(at, "answers a piece a second time, and not the same");
            }

            at += size;
        }

        // A record that was not written to its end is cut off; a sound one behind it tells that the file was damaged later, and is not thrown away.
        if (PieceRecord.IsAnyFrom(file, at + 1, length))
        {
            throw Damaged(at, "is damaged, though sound ones follow");
        }

        Before = kept.Count;
        stream.SetLength(at);
        stream.Position = at;
    }

    private static string[] HeadOf(SafeFileHandle file)
    {
        var bytes = new byte[Math.Min(RandomAccess.GetLength(file), LongestHead)];
        PieceRecord.Filled(file, bytes, 0);
        return Encoding.UTF8.GetString(bytes).Split('\n');
    }

    private RefusedValueException Damaged(long at, string how) => new(
        "the file of the study's pieces", $"'{Path}', whose record at byte {at} {how}", "as it was written",
        "Put back a copy of it, or delete it: its pieces are then done anew.");

    private RefusedValueException Foreign(string[] lines, string hash, string program)
    {
        if (lines is not [Format, var study, var release, ..] || !study.StartsWith(Study, StringComparison.Ordinal)
            || !release.StartsWith(Release, StringComparison.Ordinal))
        {
            return new RefusedValueException(
                "the file of the study's pieces", $"'{Path}', which begins otherwise", $"one that begins with '{Format}' and says its study",
                "Name another folder, or move that file away.");
        }

        return study[Study.Length..] != hash
            ? new RefusedValueException(
                "the file of the study's pieces", $"'{Path}', of the study {study[Study.Length..]}", $"of this study, {hash}",
                "Give the same texts, options and seed as then, or keep this study in another folder.")
            : new RefusedValueException(
                "the file of the study's pieces", $"'{Path}', done by Heaveline {release[Release.Length..]}",
                $"done by this one, {program}, so that all its numbers are of the same bits",
                "Go on with that program, or delete the file: its pieces are then done anew.");
    }
}
