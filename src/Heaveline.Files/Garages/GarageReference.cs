using Heaveline.Files.Cars;
using Heaveline.Files.Choosing;
using Heaveline.Files.Drives;
using Heaveline.Files.Editing;
using Heaveline.Files.Roads;
using Heaveline.Files.Ties;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Garages;

/// <summary>A file of a garage that names another one: a variant its base, a drive and a study their car, a sheet of ties its road.</summary>
/// <param name="File">The file that names the other.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Key">The key under which the name stands.</param>
/// <param name="Written">The name as it is written there, relative to the file.</param>
public sealed record GarageReference(string File, GarageKind Kind, string Title, string Key, string Written)
{
    /// <summary>The name as it must be written when the other file has another name in its folder.</summary>
    /// <param name="name">The new name, with its folders.</param>
    internal string Renamed(string name) => Written[..(Written.AsSpan().LastIndexOfAny('/', '\\') + 1)] + Path.GetFileName(name);

    /// <summary>The files that name one; a file that cannot be read names none.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="files">Names of its files.</param>
    /// <param name="name">The file that they name.</param>
    internal static IReadOnlyList<GarageReference> To(Garage garage, IEnumerable<string> files, string name) =>
        [.. files.Select(file => Of(garage, file)).OfType<(GarageReference Reference, string Named)>().Where(one => one.Named == name)
            .Select(one => one.Reference)];

    /// <summary>A text that names a file of its own folder or of another, naming it otherwise; null where it does not name it.</summary>
    /// <param name="file">The file of the text, which need not be there.</param>
    /// <param name="text">The text.</param>
    /// <param name="name">The file that it names.</param>
    /// <param name="to">The file's other name.</param>
    internal static string? Renamed(string file, string text, string name, string to)
    {
        var root = YamlReading.Value(new SourceText(file, text)).Root;
        if (root is null || GarageFormat.Of(root)?.Kind != GarageKind.Variant
            || root.At(VariantWords.Base.Name) is not { Kind: NodeKind.Scalar, Text: var written })
        {
            return null;
        }

        var reference = new GarageReference(file, GarageKind.Variant, file, VariantWords.Base.Name, written);
        var named = Path.GetRelativePath("/", Path.GetFullPath(Path.Combine("/", Path.GetDirectoryName(file) ?? "", written)))
            .Replace(Path.DirectorySeparatorChar, '/');
        return named == name ? GarageFormat.Edit(text, KeyEdit.Put([reference.Key], reference.Renamed(to))).Text : null;
    }

    private static (GarageReference Reference, string Named)? Of(Garage garage, string file)
    {
        if (garage.Read(file).Text is not { } text || YamlReading.Value(new SourceText(file, text)).Root is not { } root
            || GarageFormat.Of(root) is not { } format)
        {
            return null;
        }

        Key? key = format.Kind switch
        {
            GarageKind.Variant => VariantWords.Base,
            GarageKind.Drive => DriveWords.Car,
            GarageKind.Ties => TieWords.Over,
            GarageKind.Study => StudyWords.Car,
            _ => null,
        };
        if (key is null || root.At(key.Name) is not { Kind: NodeKind.Scalar, IsEmpty: false, Text: var written }
            || (format.Kind == GarageKind.Ties && NamedRoads.All.ContainsKey(written)))
        {
            return null;
        }

        var title = root.At(format.TitleKey) is { Kind: NodeKind.Scalar, IsEmpty: false } words ? words.Text.Trim() : file;
        var (path, problem) = Confined.Resolve(garage.Folder, Path.Combine(garage.Folder, file), written);
        return problem is null ? (new GarageReference(file, format.Kind, title, key.Name, written), garage.NameOf(path)) : null;
    }
}
