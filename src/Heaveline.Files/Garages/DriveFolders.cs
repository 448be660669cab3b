using System.Text;
using Heaveline.Drives;
using Heaveline.Files.Drives;

namespace Heaveline.Files.Garages;

/// <summary>
/// The drives of a garage: <c>drives/NAME/</c> with the files of the log as they were brought in, and <c>drive.yaml</c>, what a person wrote down.
/// A log is never written over, and nothing that is computed is kept.
/// </summary>
public sealed class DriveFolders
{
    /// <summary>The folder of the drives in the garage.</summary>
    public const string Folder = "drives";

    /// <summary>Most drives.</summary>
    public const int Most = 200;

    /// <summary>Most files of one log.</summary>
    public const int MostFiles = 64;

    /// <summary>Most bytes of all logs together that are brought in; what a person puts there by hand is not counted against anybody.</summary>
    public const long MostBytes = 4L << 30;

    private const int LongestName = 60;
    private readonly Garage garage;
    private readonly TimeProvider time;

    internal DriveFolders(Garage garage, TimeProvider time)
    {
        this.garage = garage;
        this.time = time;
    }

    /// <summary>How long bringing in a file waits for another save; 5 s.</summary>
    internal TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>The drives, by the names of their folders, in alphabetical order.</summary>
    public IReadOnlyList<string> Names
    {
        get
        {
            var place = new DirectoryInfo(Path.Combine(garage.Folder, Folder));
            return place.Exists && place.LinkTarget is null
                ? [.. place.EnumerateDirectories("*", Plain).Select(folder => folder.Name)
                    .Where(name => GarageNames.Problem(FileOf(name)) is null && File.Exists(PathOf(name, DriveFile.FileName)))
                    .Order(StringComparer.Ordinal)]
                : [];
        }
    }

    /// <summary>The name, inside the garage, of what was written down about a drive.</summary>
    /// <param name="drive">The drive's folder.</param>
    public static string FileOf(string drive) => $"{Folder}/{drive}/{DriveFile.FileName}";

    /// <summary>The drive whose file this is; null where it is none under <see cref="Folder"/>.</summary>
    /// <param name="file">The name of a file inside the garage.</param>
    public static string? DriveOf(string file)
    {
        ArgumentNullException.ThrowIfNull(file);
        return file.Split('/') is [Folder, var drive, DriveFile.FileName] ? drive : null;
    }

    /// <summary>A name for a folder from what a person calls a drive: letters, digits and hyphens.</summary>
    /// <param name="wanted">What the drive is called.</param>
    public static string NameFrom(string wanted)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        var text = new StringBuilder();
        foreach (var c in wanted)
        {
            text.Append(char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-');
        }

        var plain = string.Join('-', text.ToString().Split('-', StringSplitOptions.RemoveEmptyEntries));
        var name = (plain.Length > LongestName ? plain[..LongestName] : plain).Trim('-');
        return name.Length > 0 && GarageNames.Problem(FileOf(name)) is null ? name : "drive";
    }

    /// <summary>The files of a drive's log, by their names in its folder, in alphabetical order; none where there is no such drive.</summary>
    /// <param name="drive">The drive.</param>
    public IReadOnlyList<string> LogFiles(string drive)
    {
        if (garage.Find(FileOf(drive)).Path is not { } path || !Directory.Exists(Path.GetDirectoryName(path)))
        {
            return [];
        }

        // Links are passed over: nothing outside the garage is read through it.
        return [.. new DirectoryInfo(Path.GetDirectoryName(path)!).EnumerateFiles("*", Plain).Select(file => file.Name)
            .Where(name => FileFormat.DriveLog.Has(name)).Order(StringComparer.Ordinal)];
    }

    /// <summary>Reads the log of a drive; files bear the names that they have in its folder.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="taken">Decisions of the reading that are taken otherwise.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public LogReading Log(string drive, IReadOnlyList<Overruling> taken, CancellationToken stop = default)
    {
        var files = LogFiles(drive);
        return files.Count > 0
            ? LogFile.Load([.. files.Select(file => PathOf(drive, file))], Path.Combine(garage.Folder, Folder, drive), stop, taken)
            : LogReading.Refused(
            [
                new LogRefusal(drive, "the drive holds no log.", $"Put files in its folder that end in {FileFormat.DriveLog.EndingWords}."),
            ]);
    }

    /// <summary>Begins a drive with the first file of its log.</summary>
    /// <param name="wanted">
    /// What it is called; its folder has a name made of that, with a number where there is one already. The same file again is the same drive.
    /// </param>
    /// <param name="file">The file's name.</param>
    /// <param name="bytes">All its bytes, which are kept as they are.</param>
    public DriveOutcome Begin(string wanted, string file, ReadOnlyMemory<byte> bytes)
    {
        var called = string.Join(' ', ControlCharacter.Spelled(wanted.Trim()).Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries));
        called = called.Length > 0 ? called[..Math.Min(called.Length, LongestName)].Trim() : "A drive";
        return Locked(file, bytes, () =>
        {
            var (stem, known) = (NameFrom(called), Names);
            if (known.Count >= Most)
            {
                return DriveOutcome.Refused(
                    FormattableString.Invariant($"The garage holds {Most} drives already."), "Move some of them elsewhere.");
            }

            var name = stem;
            for (var n = 2; Directory.Exists(Path.Combine(garage.Folder, Folder, name)); n++)
            {
                // Sent again, since nobody heard that it had come: it is here.
                if (IsHere(name, file, bytes.Span))
                {
                    return new DriveOutcome(name, "", "");
                }

                name = FormattableString.Invariant($"{stem}-{n}");
            }

            return Made(name, called, file, bytes);
        });
    }

    /// <summary>Adds a file to the log of a drive.</summary>
    /// <param name="drive">The drive, which must be there.</param>
    /// <param name="file">The file's name; no file of that name must be there.</param>
    /// <param name="bytes">All its bytes, which are kept as they are.</param>
    public DriveOutcome Add(string drive, string file, ReadOnlyMemory<byte> bytes) => Locked(file, bytes, () =>
        !Names.Contains(drive) ? DriveOutcome.Refused("There is no drive of that name in the garage.", "Begin a new one.")
        : LogFiles(drive).Count >= MostFiles
            ? DriveOutcome.Refused(FormattableString.Invariant($"The drive has {MostFiles} files already."), "Begin a new one.")
        : Write(drive, file, bytes) ?? new DriveOutcome(drive, "", ""));

    private static EnumerationOptions Plain => new()
    {
        AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
    };

    private string PathOf(string drive, string file) => Path.Combine(garage.Folder, Folder, drive, file);

    // What a person writes down first: should the program be killed before the log is there, the drive is seen and says that it has none.
    private DriveOutcome Made(string name, string called, string file, ReadOnlyMemory<byte> bytes)
    {
        var folder = Directory.CreateDirectory(Path.Combine(garage.Folder, Folder, name));
        try
        {
            WholeFile.WriteNew(PathOf(name, DriveFile.FileName), Encoding.UTF8.GetBytes(DriveFile.Template(called)));
            WholeFile.WriteNew(PathOf(name, file), bytes);
            return new DriveOutcome(name, "", "");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Nothing of it was there before.
            folder.Delete(recursive: true);
            throw;
        }
    }

    private bool IsHere(string drive, string file, ReadOnlySpan<byte> bytes)
    {
        var here = new FileInfo(PathOf(drive, file));
        return LogFiles(drive).Contains(file) && here.Length == bytes.Length
            && Stamp.Of(Bounded.Read(here.FullName, FileFormat.DriveLog.MostBytes)) == Stamp.Of(bytes);
    }

    private DriveOutcome? Write(string drive, string file, ReadOnlyMemory<byte> bytes) => WholeFile.WriteNew(PathOf(drive, file), bytes)
        ? null
        : DriveOutcome.Refused($"The drive has a file {file} already, and it stays as it is.", "Give yours another name first.");

    private DriveOutcome Locked(string file, ReadOnlyMemory<byte> bytes, Func<DriveOutcome> act)
    {
        var why = file.Contains('/', StringComparison.Ordinal) ? "must be a name without a folder" : GarageNames.Problem(file, FileFormat.DriveLog);
        if (why is not null)
        {
            return DriveOutcome.Refused($"The file's name {why}.", "Give it a plain name, such as trip.csv.");
        }

        if (bytes.Length == 0 || bytes.Length > FileFormat.DriveLog.MostBytes)
        {
            return DriveOutcome.Refused(
                bytes.Length == 0 ? "The file is empty."
                    : FormattableString.Invariant($"The file has {bytes.Length} bytes; it must have {FileFormat.DriveLog.MostBytes} or fewer."),
                bytes.Length == 0 ? "Choose the log that the phone wrote." : "Pack it as a .zip, or bring the drive in in parts.");
        }

        try
        {
            // A link in place of the folder would lead what is written elsewhere.
            var place = new DirectoryInfo(Path.Combine(garage.Folder, Folder));
            if (place.LinkTarget is not null)
            {
                return DriveOutcome.Refused($"The folder {Folder} is a link.", "Make it a folder of the garage itself.");
            }

            place.Create();
            using var only = GarageLock.Take(garage.Folder, Patience);
            if (only is not null)
            {
                Sweep(place);
            }

            return only is null ? DriveOutcome.Refused("Another program is saving in this garage.", "Try again in a moment.")
                : Weight(place) + bytes.Length > MostBytes
                    ? DriveOutcome.Refused(
                        FormattableString.Invariant($"The drives of this garage would have more than {MostBytes >> 30} GiB."),
                        "Move some of them elsewhere.")
                : act();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return DriveOutcome.Refused($"The file was not written: {FileTrouble.Words(e)}", "Check the disk and who may write to the folder.");
        }
    }

    // What programs left that were killed while they brought a file in: here, under the lock, nobody else is doing so.
    private void Sweep(DirectoryInfo place)
    {
        foreach (var folder in place.EnumerateDirectories("*", Plain))
        {
            PartialFile.Sweep(folder.FullName, IsOurs, time.GetUtcNow().UtcDateTime);
        }
    }

    private static long Weight(DirectoryInfo place) => place.EnumerateFiles("*", new EnumerationOptions
    {
        RecurseSubdirectories = true, MaxRecursionDepth = 1, AttributesToSkip = FileAttributes.ReparsePoint,
    }).Sum(file => file.Length);

    private static bool IsOurs(string name) => FileFormat.DriveLog.Has(name) || name == DriveFile.FileName;
}
