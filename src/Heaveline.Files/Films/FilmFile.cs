using System.Text.Json.Nodes;
using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;
using Heaveline.Films;

namespace Heaveline.Files.Films;

/// <summary>The file of a film: text in, what was written down out, or every refusal with its place. The kept track lies beside it.</summary>
public static class FilmFile
{
    /// <summary>The JSON Schema of the file, for editors.</summary>
    public static JsonObject Schema => JsonSchema.Of(FilmWords.Shape.Layout);

    /// <summary>Every key of the file, group by group, as a page in Markdown.</summary>
    public static string KeyPage => Yaml.KeyPage.Of(FilmWords.Shape.Layout);

    /// <summary>Whether a text is the file of a film.</summary>
    /// <param name="source">The text.</param>
    public static bool IsFilm(SourceText source) => YamlReading.Value(source).Root is { } root && FilmWords.IsFilm(root);

    /// <summary>Reads the text of a film's file.</summary>
    /// <param name="source">The text under its file's name.</param>
    public static Reading<FilmSheet> Read(SourceText source) => YamlReading.Read(source, FilmWords.Shape);

    /// <summary>Edits the text as a person would; every character outside the edited places stays.</summary>
    /// <param name="text">The text.</param>
    /// <param name="edits">The edits, made one after another, all or none.</param>
    public static EditOutcome Edit(string text, params IEnumerable<KeyEdit> edits) => YamlEditing.Apply(text, _ => FilmWords.Shape, edits);

    /// <summary>The edit by which a film has these marks.</summary>
    /// <param name="marks">The marks.</param>
    public static KeyEdit Marking(FilmMarks marks) => FilmWords.Marking(marks);

    /// <summary>Reads the file of a film (.yaml).</summary>
    /// <param name="path">The file.</param>
    public static Reading<FilmSheet> Load(string path)
    {
        var (source, refusal) = SourceText.Load(path, YamlTree.Longest);
        return refusal is null ? Read(source) : Reading<FilmSheet>.Refused(source, refusal);
    }

    /// <summary>Where the track of a film is kept.</summary>
    /// <param name="path">The film's file.</param>
    /// <param name="sheet">What it says.</param>
    public static string TrackOf(string path, FilmSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Beside(path, sheet.Track ?? Path.GetFileNameWithoutExtension(path) + ".csv");
    }

    /// <summary>Where the film itself lies; null where the sheet names none.</summary>
    /// <param name="path">The film's file.</param>
    /// <param name="sheet">What it says.</param>
    public static string? VideoOf(string path, FilmSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return sheet.Video is { } video ? Beside(path, video) : null;
    }

    private static string Beside(string path, string name) => Path.Combine(Path.GetDirectoryName(path) ?? "", name);
}
