using System.IO.Enumeration;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Drives;
using Heaveline.Files.Parts;
using Heaveline.Files.Roads;
using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Files.Garages;

/// <summary>
/// A folder of car files, variants, roads, drives and sheets of cable ties. Names are relative to it, with / between folders, and nothing
/// outside it is read or written through them: no folder above, no absolute path, no link that leads out, no device; only .yaml and .yml, and
/// the logs of drives through <see cref="Drives"/>. (A hard link is a file like any other.)
/// </summary>
public sealed class Garage
{
    /// <summary>Most files that <see cref="List"/> reads.</summary>
    public const int MostFiles = 500;

    /// <summary>How many earlier versions of one file are kept; the oldest are dropped.</summary>
    public const int MostEarlier = 50;

    /// <summary>How many folders deep files are looked for.</summary>
    internal const int DeepestFolder = 3;

    private readonly GarageSaving saving;
    private readonly EarlierVersions earlier;

    /// <summary>A garage.</summary>
    /// <param name="folder">Its folder, which must be there.</param>
    /// <param name="time">The clock that names earlier versions; the system's when left out.</param>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    public Garage(string folder, TimeProvider? time = null)
    {
        Folder = Directory.Exists(folder) && RealPath.Of(folder) is { } real
            ? Path.TrimEndingDirectorySeparator(real)
            : throw new DirectoryNotFoundException($"There is no folder '{folder}'.");
        earlier = new EarlierVersions(Folder, MostEarlier);
        saving = new GarageSaving(Folder, earlier, time ?? TimeProvider.System);
        Drives = new DriveFolders(this, time ?? TimeProvider.System);
        Upkeep = new GarageUpkeep(this, saving, earlier, time ?? TimeProvider.System);
    }

    /// <summary>The folder, links in its path followed.</summary>
    public string Folder { get; }

    /// <summary>Its drives, a folder each.</summary>
    public DriveFolders Drives { get; }

    /// <summary>Renames, copies, takes out and puts back its files.</summary>
    public GarageUpkeep Upkeep { get; }

    /// <summary>Called when a save's bytes are on the disk, just before the file takes its name: the moment at which tests interfere.</summary>
    internal Action BeforeReplacing
    {
        init => saving.BeforeReplacing = value;
    }

    /// <summary>How long a save waits for another one; 5 s.</summary>
    internal TimeSpan Patience
    {
        init => saving.Patience = value;
    }

    /// <summary>Every file, read anew, and the roads that are always there. Links, hidden folders and earlier versions are not listed.</summary>
    public GarageListing List()
    {
        var names = Names();
        var roads = NamedRoads.All.Select(
            road => new GarageEntry { Name = road.Key, Kind = GarageKind.Road, Title = road.Value.Name, IsBuiltIn = true });
        return new GarageListing([.. names.Take(MostFiles).Select(name => GarageReading.Entry(this, name)), .. roads], names.Count > MostFiles)
        {
            LeftOut = LeftOut(),
        };
    }

    /// <summary>Names of all files that are listed, in the order of the alphabet, however many there are.</summary>
    internal IReadOnlyList<string> Names()
    {
        var options = new EnumerationOptions
        {
            RecurseSubdirectories = true,
            MaxRecursionDepth = DeepestFolder,
            AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
        };
        return [.. Directory.EnumerateFiles(Folder, "*", options)
            .Select(NameOf).Where(name => GarageNames.Problem(name) is null).Order(StringComparer.Ordinal)];
    }

    // What ends as a car file does and is none: links and folders, and names that not every system takes. Earlier versions are nobody's files.
    private List<(string Name, string Why)> LeftOut()
    {
        var options = new EnumerationOptions
        {
            RecurseSubdirectories = true,
            MaxRecursionDepth = DeepestFolder,
            AttributesToSkip = FileAttributes.Hidden | FileAttributes.System,
        };
        var all = new FileSystemEnumerable<(string Path, FileAttributes Attributes)>(
            Folder, (ref FileSystemEntry entry) => (entry.ToFullPath(), entry.Attributes), options)
        {
            // Nothing behind a link is looked at.
            ShouldRecursePredicate = (ref FileSystemEntry entry) => !entry.Attributes.HasFlag(FileAttributes.ReparsePoint),
        };
        return
        [
            .. from one in all
               let name = NameOf(one.Path)
               where FileFormat.Described.Has(name) && !name.StartsWith(GarageNames.Earlier + "/", StringComparison.OrdinalIgnoreCase)
               let why = one.Attributes.HasFlag(FileAttributes.ReparsePoint) ? "is a link"
                   : one.Attributes.HasFlag(FileAttributes.Directory) ? "is a folder"
                   : GarageNames.Problem(name)
               where why is not null
               orderby name
               select (ControlCharacter.Spelled(name), why),
        ];
    }

    /// <summary>Where a name leads, or why it is not taken.</summary>
    /// <param name="name">The name inside the garage. The file need not be there.</param>
    /// <returns>The full path, or null with the reason as a refusal.</returns>
    public (string? Path, Refusal? Refusal) Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var problem = GarageNames.Problem(name);
        if (problem is null)
        {
            (_, problem) = Confined.Resolve(Folder, Path.Combine(Folder, "garage"), name);
        }

        return problem is null
            ? (RealPath.Of(Path.Combine(Folder, name)), null)
            : (null, new Refusal(name, 1, 1, 1, $"the name {problem}.", "Name a file of the garage, such as fern-estate.yaml."));
    }

    /// <summary>A file's text as it is now, with the stamp that a save of it needs.</summary>
    public GarageText Read(string name)
    {
        var (path, refusal) = Find(name);
        return path is null ? new GarageText(name, null, null, refusal) : GarageReading.Text(path, name);
    }

    /// <summary>Reads a car or variant of the garage. Refusals, warnings and texts carry names inside the garage.</summary>
    public Reading<Car> Car(string name)
    {
        var text = Read(name);
        return text.Text is { } found
            ? Car(name, found)
            : Reading<Car>.Refused(new SourceText(name, ""), text.Refusal!);
    }

    /// <summary>Reads a text as if it were saved as a car or variant of the garage.</summary>
    /// <param name="name">The name that it has or would have; a variant's base is found from there.</param>
    /// <param name="text">The text.</param>
    public Reading<Car> Car(string name, string text)
    {
        var (path, refusal) = Find(name);
        return path is null
            ? Reading<Car>.Refused(new SourceText(name, text), refusal!)
            : CarFile.Read(new SourceText(path, text), Folder).Named(NameOf);
    }

    /// <summary>Reads what was written down about a drive of the garage.</summary>
    public Reading<DriveSheet> Drive(string name)
    {
        var text = Read(name);
        return text.Text is { } found ? Drive(name, found) : Reading<DriveSheet>.Refused(new SourceText(name, ""), text.Refusal!);
    }

    /// <summary>Reads a text as if it were saved as the file of a drive of the garage.</summary>
    /// <param name="name">The name that it has or would have; the car is found from there.</param>
    /// <param name="text">The text.</param>
    public Reading<DriveSheet> Drive(string name, string text)
    {
        var (path, refusal) = Find(name);
        return path is null
            ? Reading<DriveSheet>.Refused(new SourceText(name, text), refusal!)
            : DriveFile.Read(new SourceText(path, text), Folder).Named(NameOf);
    }

    /// <summary>Reads a list of parts of the garage, or a sheet of springs.</summary>
    public Reading<PartsList> Parts(string name)
    {
        if (FileFormat.SpringSheet.Has(name))
        {
            return GarageSheets.Read(this, name);
        }

        var (path, refusal) = Find(name);
        return path is null ? Reading<PartsList>.Refused(new SourceText(name, ""), refusal!) : PartsFile.Load(path).Named(NameOf);
    }

    /// <summary>Reads a study of the garage. The files that it names must be there; they stand in it by their names inside the garage.</summary>
    public Reading<ChooseSheet> Study(string name)
    {
        var text = Read(name);
        return text.Text is { } found ? Study(name, found) : Reading<ChooseSheet>.Refused(new SourceText(name, ""), text.Refusal!);
    }

    /// <summary>Reads a text as if it were saved as a study of the garage.</summary>
    /// <param name="name">The name that it has or would have; what it names is found from there.</param>
    /// <param name="text">The text.</param>
    public Reading<ChooseSheet> Study(string name, string text)
    {
        var (path, refusal) = Find(name);
        return path is null
            ? Reading<ChooseSheet>.Refused(new SourceText(name, text), refusal!)
            : GarageStudy.Read(this, name, path, text);
    }

    /// <summary>Reads a road of the garage, or one that is always there, by its short name.</summary>
    public Reading<Road> Road(string name)
    {
        if (NamedRoads.All.ContainsKey(name))
        {
            return NamedRoads.Find(name);
        }

        var (path, refusal) = Find(name);
        return path is null
            ? Reading<Road>.Refused(new SourceText(name, ""), refusal!)
            : RoadFile.Load(path, Folder).Named(NameOf);
    }

    /// <summary>
    /// Saves a text whole or not at all, if the file is still the one that was read. The version that it replaces is kept under <c>earlier/</c>.
    /// Saves of this and other Heaveline programs in one garage wait for one another. A program that takes no part in that, such as an editor, is
    /// noticed until just before the file takes its name; what it writes in the instant between is replaced, and is in no earlier version.
    /// </summary>
    /// <param name="name">The file's name inside the garage; its folder must be there.</param>
    /// <param name="text">The text. It must be a car, a variant or a road; values in it that are refused do not keep it from being saved.</param>
    /// <param name="read">The stamp of the text that was read and changed; null for a new file, which then must not be there.</param>
    public SaveOutcome Save(string name, string text, Stamp? read)
    {
        ArgumentNullException.ThrowIfNull(text);
        var (path, refusal) = Find(name);
        return path is null
            ? new SaveOutcome { End = SaveEnd.NameRefused, Name = name, Text = text, Message = refusal!.Message, Advice = refusal.Advice }
            : saving.Save(name, path, text, read);
    }

    /// <summary>Makes the folder of a file that is to be saved, where it is not there.</summary>
    /// <param name="name">The file's name inside the garage.</param>
    /// <returns>Why there is none, in words; null where there is one.</returns>
    public string? MakeFolder(string name)
    {
        var (path, refusal) = Find(name);
        if (path is null)
        {
            return $"{refusal!.Message} {refusal.Advice}";
        }

        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"The folder of {name} cannot be made: {FileTrouble.Words(e)}";
        }
    }

    /// <summary>
    /// What a save would meet: the conflict with the file as it is now, or why it cannot be looked at; null when it is the one that was read.
    /// </summary>
    /// <param name="name">The file's name inside the garage.</param>
    /// <param name="text">The text that would be saved.</param>
    /// <param name="read">The stamp of the text that was read; null for a file that is not there.</param>
    public SaveOutcome? Met(string name, string text, Stamp? read) => Find(name).Path is { } path ? GarageSaving.Met(name, path, text, read) : null;

    /// <summary>The earlier versions of a file, the newest first; none when the name is not taken.</summary>
    public IReadOnlyList<EarlierVersion> Earlier(string name) => Find(name).Path is null ? [] : earlier.Of(name);

    /// <summary>The text of an earlier version.</summary>
    /// <param name="name">The file.</param>
    /// <param name="until">The version's time, as <see cref="Earlier"/> lists it.</param>
    public GarageText ReadEarlier(string name, DateTime until) => Earlier(name).Any(version => version.Until == until)
        ? GarageReading.Text(earlier.PathOf(name, until), name)
        : new GarageText(name, null, null, new Refusal(
            name, 1, 1, 1, "there is no such earlier version.", "Choose one of the list; the oldest are dropped in time."));

    /// <summary>Saves an earlier version as the present one. The one that it replaces is kept as an earlier one in turn.</summary>
    /// <param name="name">The file.</param>
    /// <param name="until">The version's time.</param>
    /// <param name="read">The stamp of the present file as it was read; null when it is gone.</param>
    public SaveOutcome Restore(string name, DateTime until, Stamp? read)
    {
        var version = ReadEarlier(name, until);
        return version.Text is { } text
            ? Save(name, text, read)
            : new SaveOutcome
            {
                End = SaveEnd.NameRefused,
                Name = name,
                Text = "",
                Message = version.Refusal!.Message,
                Advice = version.Refusal.Advice,
            };
    }

    /// <summary>A full path as a name inside the garage.</summary>
    internal string NameOf(string path) => Path.GetRelativePath(Folder, path).Replace(Path.DirectorySeparatorChar, '/');
}
