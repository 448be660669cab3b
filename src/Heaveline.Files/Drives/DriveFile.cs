using System.Globalization;
using System.Text.Json.Nodes;
using Heaveline.Files.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Drives;

/// <summary>
/// The file of a drive in the garage, <c>drives/NAME/drive.yaml</c>: text in, what was written down out, or every refusal with its place. The files
/// of its log lie in the same folder.
/// </summary>
public static class DriveFile
{
    /// <summary>The file's name in its folder.</summary>
    public const string FileName = "drive.yaml";

    private const string Head =
        """
        # A drive. The logs in this folder are as they were brought in and stay so; nothing that is computed is kept, it is worked out anew each time.
        # A line that begins with # is left out until you take its # away; its value is an example, not yours.

        """;

    /// <summary>The JSON Schema of the file, for editors.</summary>
    public static JsonObject Schema => JsonSchema.Of(DriveWords.Shape.Layout);

    /// <summary>Every key of the file, group by group, as a page in Markdown.</summary>
    public static string KeyPage => Yaml.KeyPage.Of(DriveWords.Shape.Layout);

    /// <summary>Whether a text is the file of a drive: by its name, whatever it holds, else by its keys.</summary>
    /// <param name="source">The text.</param>
    public static bool IsDrive(SourceText source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return source.File.Split('/', '\\')[^1] == FileName || (YamlReading.Value(source).Root is { } root && DriveWords.IsDrive(root));
    }

    /// <summary>Where each instant of a drive's file stands: its line.</summary>
    /// <param name="source">The file's text.</param>
    internal static IEnumerable<(double At, int Line)> InstantsIn(SourceText source) =>
        YamlReading.Value(source).Root is { Kind: NodeKind.Mapping } root ? DriveWords.InstantsIn(root, source) : [];

    /// <summary>The file of a drive of which no more is known than its name: every other key a comment with an example.</summary>
    /// <param name="name">What the drive is called, on one line.</param>
    public static string Template(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        return Head + FileTemplate.Of(
            DriveWords.Shape.Layout,
            new Dictionary<string, string>(StringComparer.Ordinal) { [DriveWords.Name.Name] = ScalarText.Of(name, inFlow: false) },
            new HashSet<string>(StringComparer.Ordinal),
            _ => "chapel hump");
    }

    /// <summary>Edits the text as a person would; every character outside the edited places stays.</summary>
    /// <param name="text">The text.</param>
    /// <param name="edits">The edits, made one after another, all or none.</param>
    public static EditOutcome Edit(string text, params IEnumerable<KeyEdit> edits) => YamlEditing.Apply(text, _ => DriveWords.Shape, edits);

    /// <summary>The edits by which a drive has other instants that do not count.</summary>
    /// <param name="instants">The instants, s since the log's start.</param>
    public static KeyEdit Rejecting(IEnumerable<double> instants) => Instants(DriveWords.Rejected.Name, instants);

    /// <summary>The edits by which a drive has other instants of bumps that were not found.</summary>
    /// <param name="instants">The instants, s since the log's start.</param>
    public static KeyEdit Adding(IEnumerable<double> instants) => Instants(DriveWords.Added.Name, instants);

    /// <summary>The edit by which it is said what was the same as in the drive before.</summary>
    /// <param name="circumstances">Words of <see cref="Studies.ProveAsked.Circumstances"/>.</param>
    public static KeyEdit Alike(IEnumerable<string> circumstances) =>
        KeyEdit.Put([DriveWords.Same.Name], Node.List(circumstances.Select(word => Node.Scalar(word))));

    /// <summary>The edit by which the bumps of a drive have other names of sites.</summary>
    /// <param name="sites">Names, each with an instant about which a bump of it is, s since the log's start.</param>
    public static KeyEdit Naming(IEnumerable<(string Site, double At)> sites) => KeyEdit.Put(
        [DriveWords.Sites.Name],
        Node.Group(sites.GroupBy(s => s.Site).Select(site => KeyValuePair.Create(site.Key, List(site.Select(s => s.At))))));

    /// <summary>Reads the file of a drive, and looks whether the car, the load and the drive that it names are there.</summary>
    /// <param name="path">The file.</param>
    /// <param name="garage">The folder that the car must lie in; null: the folder two above the file.</param>
    public static Reading<DriveSheet> Load(string path, string? garage = null)
    {
        var (source, refusal) = SourceText.Load(path, YamlTree.Longest);
        return refusal is null ? Read(source, garage ?? Above(path)) : Reading<DriveSheet>.Refused(source, refusal);
    }

    /// <summary>Reads the text of a drive's file as if it lay under its name.</summary>
    /// <param name="source">The text under its file's name.</param>
    /// <param name="garage">The folder that the car must lie in.</param>
    public static Reading<DriveSheet> Read(SourceText source, string garage)
    {
        var reading = YamlReading.Read(source, DriveWords.Shape);
        if (reading.Root is not { Kind: NodeKind.Mapping } root)
        {
            return reading;
        }

        // Looked for whatever else is wrong, so that all faults are told at once.
        var said = new Reader(source);
        DriveWords.Check(root, said);
        CheckCar(root, source, garage, said);
        CheckAfter(root, source, garage, said);
        return said.Count == 0
            ? reading
            : reading with { Value = null, Refusals = [.. reading.Refusals.Concat(said.Refusals).OrderBy(r => r.Line).ThenBy(r => r.Column)] };
    }

    /// <summary>Where the car of a drive lies.</summary>
    /// <param name="path">The drive's file.</param>
    /// <param name="sheet">What it says.</param>
    /// <param name="garage">The folder that the car must lie in.</param>
    /// <returns>The car's file; null where none is named, or its name leads out of the garage.</returns>
    public static string? CarOf(string path, DriveSheet sheet, string garage)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return sheet.Car is { } car && Confined.Resolve(garage, path, car) is { Problem: null, Path: var found } ? found : null;
    }

    /// <summary>Where a drive's file names the drive before; null where it follows on none.</summary>
    /// <param name="source">The file's text.</param>
    internal static Place? AfterIn(SourceText source) => YamlReading.Value(source).Root is { } root ? Text(root, DriveWords.After)?.Place : null;

    private static KeyEdit Instants(string key, IEnumerable<double> instants) => KeyEdit.Put([key], List(instants));

    private static Node List(IEnumerable<double> instants) =>
        Node.List(instants.Order().Select(at => Node.Scalar(at.ToString("0.0##", CultureInfo.InvariantCulture) + " s")));

    // The text of a key; null where it has none, which is refused elsewhere.
    private static Node? Text(Node root, Key key) => root.At(key.Name) is { Kind: NodeKind.Scalar, IsEmpty: false } node ? node : null;

    private static void CheckCar(Node root, SourceText source, string garage, Reader said)
    {
        if (Text(root, DriveWords.Car) is not { Place: var at, Text: var named })
        {
            return;
        }

        var (path, problem) = Confined.Resolve(garage, source.File, named);
        if (problem is not null || !File.Exists(path))
        {
            said.Refuse(
                at,
                $"car is {named}, which {problem ?? "is not there"}.",
                "Name a car file of the garage, relative to this file: ../../my-car.yaml.");
            return;
        }

        var car = CarFile.Load(path, garage);
        if (car.Value is null)
        {
            said.Refuse(at, $"car is {named}, which is refused.", "Check that file by itself; it says why.");
        }
        else if (Text(root, DriveWords.Load) is { Place: var there, Text: var load } && car.Value.LoadStates.All(l => l.Name != load))
        {
            var names = car.Value.LoadStates.Select(l => l.Name).ToList();
            said.Refuse(
                there,
                $"load is \"{load}\", and the car has none of that name.",
                names.Count > 0 ? $"It has: {string.Join(", ", names)}." : "Leave it out, or describe the load in the car file.");
        }
    }

    private static void CheckAfter(Node root, SourceText source, string garage, Reader said)
    {
        if (Text(root, DriveWords.After) is not { Place: var at, Text: var after })
        {
            return;
        }

        var own = Path.GetFileName(Path.GetDirectoryName(Path.GetFullPath(source.File)));
        var problem = after.IndexOfAny(['/', '\\', ':']) >= 0 || after.Trim('.').Length == 0 ? "is no name of a folder beside this one"
            : after == own ? "is this drive itself"
            : Confined.Resolve(garage, source.File, $"../{after}/{FileName}") is not { Problem: null, Path: var path } || !File.Exists(path)
                ? "is no drive beside this one"
            : LeadsTo(own!, path, garage) ? $"was itself driven after {own}: they follow each other in a ring"
            : null;
        if (problem is not null)
        {
            said.Refuse(
                at, $"after is {after}, which {problem}.", "Name the folder of the drive before the change.");
        }
    }

    // Whether a drive follows, over whatever others, on the one in a folder beside it.
    private static bool LeadsTo(string own, string path, string garage)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        while (seen.Add(path)
            && SourceText.Load(path, YamlTree.Longest) is { Refusal: null, Source: var source }
            && YamlReading.Value(source).Root is { Kind: NodeKind.Mapping } root
            && Text(root, DriveWords.After) is { Text: var before } && before.IndexOfAny(['/', '\\', ':']) < 0 && before.Trim('.').Length > 0)
        {
            if (before == own)
            {
                return true;
            }

            var (next, problem) = Confined.Resolve(garage, path, $"../{before}/{FileName}");
            if (problem is not null)
            {
                return false;
            }

            path = next;
        }

        return false;
    }

    private static string Above(string path)
    {
        var own = Path.GetDirectoryName(Path.GetFullPath(path))!;
        return Path.GetDirectoryName(Path.GetDirectoryName(own)) ?? own;
    }
}
