using Heaveline.Files.Cars;
using Heaveline.Files.Choosing;
using Heaveline.Files.Crews;
using Heaveline.Files.Drives;
using Heaveline.Files.Editing;
using Heaveline.Files.Films;
using Heaveline.Files.Parts;
using Heaveline.Files.Roads;
using Heaveline.Files.Ties;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Garages;

/// <summary>What a garage does with one kind of file: how it is known, what its line in the list says, and how its text is edited.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="File">Endings and greatest length.</param>
/// <param name="Fits">Whether a document is of this kind, by its keys.</param>
/// <param name="Line">The line of a file, given the garage, the file's name, its document and its text.</param>
/// <param name="TitleKey">The key that says what it is called; empty where nothing does.</param>
/// <param name="Keys">Its keys, in the order of the documentation; null where an edit cannot know them.</param>
internal sealed record GarageFormat(
    GarageKind Kind, FileFormat File, Func<Node, bool> Fits, Func<Garage, string, Node, string, GarageEntry> Line, string TitleKey, Kind? Keys)
{
    /// <summary>All of them; the first that fits is taken.</summary>
    public static IReadOnlyList<GarageFormat> All { get; } =
    [
        // First: a drive names its car, and what was changed, by the words of other files.
        new(GarageKind.Drive, FileFormat.Described, DriveWords.IsDrive, GarageLines.Drive, "drive", DriveWords.Shape),
        new(GarageKind.Film, FileFormat.Described, FilmWords.IsFilm, GarageLines.Film, "film", FilmWords.Shape),
        new(GarageKind.Ties, FileFormat.Described, TieWords.IsSheet, GarageLines.Ties, "ties", TieWords.Shape),
        // Before the lists and the cars: a study names both by their words.
        new(GarageKind.Study, FileFormat.Described, StudyWords.IsStudy, GarageLines.Study, "study", StudyWords.Shape),
        new(GarageKind.Parts, FileFormat.Described, PartsListWords.IsList, GarageLines.Parts, "parts", PartsListWords.Shape),
        new(GarageKind.Crew, FileFormat.Described, CrewWords.IsCrew, GarageLines.Crew, "crew", CrewWords.Shape),
        new(GarageKind.Road, FileFormat.Described, root => root.At("road") is not null, GarageLines.Road, "road", RoadWords.Shape),
        new(GarageKind.Variant, FileFormat.Described, VariantWords.IsVariant, GarageLines.Variant, "variant", VariantWords.Shape),
        new(GarageKind.Car, FileFormat.Described, root => root.At("car") is not null, GarageLines.Car, "car", CarWords.Shape),
        new(GarageKind.Choices, FileFormat.Described, GarageChoices.IsOf, GarageLines.Choices, "", null),
    ];

    /// <summary>The format of a document; null for none of them.</summary>
    public static GarageFormat? Of(Node? root) => root is null ? null : All.FirstOrDefault(format => format.Fits(root));

    /// <summary>Whether a file's name ends as one that is listed.</summary>
    public static bool Has(string name) => All.Any(format => format.File.Has(name));

    /// <summary>Edits the text of a file of any kind as a person would.</summary>
    /// <param name="text">The text.</param>
    /// <param name="edits">The edits.</param>
    public static EditOutcome Edit(string text, params IEnumerable<KeyEdit> edits) => YamlEditing.Apply(text, root => Of(root)?.Keys, edits);

    /// <summary>The text with another name of what it describes; the same text where that is its name already.</summary>
    /// <param name="text">The text.</param>
    /// <param name="title">What it is to be called.</param>
    public static EditOutcome Titled(string text, string title) =>
        Of(YamlReading.Value(new SourceText("", text)).Root) is not { TitleKey: { Length: > 0 } key }
            ? new EditOutcome(null, [], new EditRefusal(
                EditProblem.NotSound, "the file is no car, no variant and no road, so it has no name inside.", "Put right its text first."))
        : Edit(text, KeyEdit.Put([key], title));
}
