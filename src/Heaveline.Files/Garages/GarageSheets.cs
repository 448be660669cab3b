using Heaveline.Files.Parts;
using Heaveline.Files.Yaml;
using Heaveline.Parts;

namespace Heaveline.Files.Garages;

/// <summary>Sheets of springs that lie in a garage beside its lists of parts: comma-separated text with a column of parts and one of rates.</summary>
public static class GarageSheets
{
    // A heading is no longer.
    private const int Beginning = 2048;

    /// <summary>Their names, in the order of the alphabet. Links, hidden folders, earlier versions and logs of drives are not looked at.</summary>
    /// <param name="garage">The garage.</param>
    public static IReadOnlyList<string> Names(Garage garage)
    {
        ArgumentNullException.ThrowIfNull(garage);
        var options = new EnumerationOptions
        {
            RecurseSubdirectories = true,
            MaxRecursionDepth = Garage.DeepestFolder,
            AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
        };
        return
        [
            .. Directory.EnumerateFiles(garage.Folder, "*" + FileFormat.SpringSheet.Endings[0], options)
                .Select(path => (Path: path, Name: garage.NameOf(path)))
                .Where(file => GarageNames.Problem(file.Name, FileFormat.SpringSheet) is null
                    && !file.Name.StartsWith(DriveFolders.Folder + "/", StringComparison.Ordinal) && IsSheet(file.Path))
                .Select(file => file.Name).Order(StringComparer.Ordinal),
        ];
    }

    /// <summary>Reads one.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="name">Its name there.</param>
    public static Reading<PartsList> Read(Garage garage, string name)
    {
        ArgumentNullException.ThrowIfNull(garage);
        var problem = GarageNames.Problem(name, FileFormat.SpringSheet);
        if (problem is null)
        {
            (_, problem) = Confined.Resolve(garage.Folder, Path.Combine(garage.Folder, "garage"), name);
        }

        return problem is null
            ? PartsFile.Load(Path.Combine(garage.Folder, name)).Named(garage.NameOf)
            : Reading<PartsList>.Refused(
                new SourceText(name, ""), new Refusal(name, 1, 1, 1, $"the name {problem}.", "Name a sheet of the garage, such as shed.csv."));
    }

    // What cannot be read now is none now: it is looked at again with the next look at the folder.
    private static bool IsSheet(string path)
    {
        try
        {
            using var text = new StreamReader(path);
            var beginning = new char[Beginning];
            return SpringSheet.IsMeant(new string(beginning, 0, text.ReadBlock(beginning)));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
