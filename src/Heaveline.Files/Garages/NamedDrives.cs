using Heaveline.Files.Drives;
using Heaveline.Files.Yaml;
using Heaveline.Studies;

namespace Heaveline.Files.Garages;

/// <summary>Drives by paths: the folder of a garage that holds what was written down about one, or a log alone.</summary>
public static class NamedDrives
{
    /// <summary>The drive that a path leads to, its log unread.</summary>
    /// <param name="path">A folder <c>drives/NAME</c> of a garage, its <c>drive.yaml</c>, or the file, folder or archive of a log.</param>
    public static Found<RecordedDrive> Find(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return IsDescribed(path) ? OfGarage(path, LogOf(path)) : Alone(path);
    }

    /// <summary>Whether a path leads to the folder of a drive with its <c>drive.yaml</c>, or to that.</summary>
    /// <param name="path">The path.</param>
    public static bool IsDescribed(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return File.Exists(Path.Combine(LogOf(path), DriveFile.FileName));
    }

    /// <summary>Where the log lies that a path leads to: beside a <c>drive.yaml</c>, else at the path itself.</summary>
    /// <param name="path">The path.</param>
    public static string LogOf(string path) =>
        Path.GetFileName(path) == DriveFile.FileName ? Path.GetDirectoryName(path) is { Length: > 0 } folder ? folder : "." : path;

    /// <summary>A drive of a garage, its log unread.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="name">The drive's folder under <see cref="DriveFolders.Folder"/>.</param>
    /// <param name="nameOf">How a file or a folder of the garage is called, from its name in it.</param>
    public static Found<RecordedDrive> Find(Garage garage, string name, Func<string, string> nameOf)
    {
        ArgumentNullException.ThrowIfNull(garage);
        ArgumentNullException.ThrowIfNull(nameOf);
        var (source, problem) = DriveSource.Of(garage, name);
        var drive = source?.Recorded(garage, nameOf);
        return new Found<RecordedDrive>
        {
            Name = name,
            ShortName = name,
            Value = drive,
            Refusal = problem,
            IsMissing = drive is null && !garage.Drives.Names.Contains(name),
            Inputs = [.. drive?.Inputs ?? [], .. drive?.Before?.Inputs ?? []],
        };
    }

    /// <summary>
    /// The file of a drive, with a warning where it and the file of the drive before contradict that both were driven alike; where it lies in no
    /// garage that is not looked for.
    /// </summary>
    /// <param name="path">The drive's <c>drive.yaml</c>.</param>
    public static Reading<DriveSheet> Check(string path)
    {
        var reading = DriveFile.Load(path);
        return reading is not { Value: not null, Sources: [var source, ..] } || DriveFile.AfterIn(source) is not { } at
            || Find(path).Value is not { } drive
            ? reading
            : reading with
            {
                Warnings =
                [
                    .. reading.Warnings,
                    .. drive.Unlike.Select(says => new Warning(
                        source.File, at.Line, at.Column, at.Length, says, "Put right whichever file is wrong, or drive both alike.")),
                ],
            };
    }

    private static Found<RecordedDrive> OfGarage(string path, string folder)
    {
        var real = Path.TrimEndingDirectorySeparator(RealPath.Of(folder) ?? Path.GetFullPath(folder));
        var above = Path.GetDirectoryName(real);
        if (above is null || Path.GetFileName(above) != DriveFolders.Folder || Path.GetDirectoryName(above) is not { } garage)
        {
            return new Found<RecordedDrive>
            {
                Name = path,
                Refusal = $"{path} holds a {DriveFile.FileName}, but does not lie in the folder {DriveFolders.Folder} of a garage; "
                    + "put it there, or name its log alone.",
            };
        }

        return Find(new Garage(garage), Path.GetFileName(real), name => Path.Combine(garage, name)) with { Name = path };
    }

    private static Found<RecordedDrive> Alone(string path)
    {
        var isThere = File.Exists(path) || Directory.Exists(path);
        var full = Path.GetFullPath(path);
        // What is printed must not say where the log lay.
        var folder = Directory.Exists(path) ? full : Path.GetDirectoryName(full);
        return new Found<RecordedDrive>
        {
            Name = path,
            ShortName = Path.GetFileNameWithoutExtension(Path.TrimEndingDirectorySeparator(path)),
            IsMissing = !isThere,
            Refusal = isThere ? "" : $"the drive '{path}' is no drive of a garage, and no file or folder of a log.",
            Value = !isThere ? null : new RecordedDrive
            {
                Name = Path.GetFileName(Path.TrimEndingDirectorySeparator(path)) is { Length: > 0 } own ? own : path,
                Path = path,
                Read = stop => DriveSource.LogOf(LogFile.Load([full], folder, stop), stop),
            },
        };
    }
}
