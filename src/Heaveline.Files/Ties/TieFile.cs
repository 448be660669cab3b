using System.Text.Json.Nodes;
using Heaveline.Files.Roads;
using Heaveline.Files.Yaml;
using Heaveline.Ties;

namespace Heaveline.Files.Ties;

/// <summary>Sheets of cable ties: text in, readings out, or every refusal with its place.</summary>
public static class TieFile
{
    /// <summary>The JSON Schema of a sheet, for editors.</summary>
    public static JsonObject Schema => JsonSchema.Of(TieWords.Shape.Layout);

    /// <summary>Every key of a sheet, group by group, as a page in Markdown.</summary>
    public static string KeyPage => Yaml.KeyPage.Of(TieWords.Shape.Layout);

    /// <summary>Whether a text is a sheet of ties.</summary>
    /// <param name="source">The text.</param>
    public static bool IsSheet(SourceText source) => YamlReading.Value(source).Root is { } root && TieWords.IsSheet(root);

    /// <summary>Reads a sheet (.yaml); the obstacle's file is named as seen from where the program runs.</summary>
    /// <param name="path">The file.</param>
    public static Reading<TieSheet> Load(string path)
    {
        var (source, refusal) = SourceText.Load(path, YamlTree.Longest);
        if (refusal is not null)
        {
            return Reading<TieSheet>.Refused(source, refusal);
        }

        var reading = Read(source);
        return reading.Value is { } sheet && !NamedRoads.All.ContainsKey(sheet.Over)
            ? reading with { Value = sheet with { Over = Path.Combine(Path.GetDirectoryName(path) ?? "", sheet.Over) } }
            : reading;
    }

    /// <summary>Why the obstacle that a sheet names is not there, at its line in the sheet; null where it is, or where there is no sheet.</summary>
    /// <param name="sheet">The sheet as it was loaded.</param>
    public static Refusal? Missing(Reading<TieSheet> sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        if (sheet.Value is not { Over: var over } || NamedRoads.All.ContainsKey(over) || File.Exists(over) || Directory.Exists(over))
        {
            return null;
        }

        var written = sheet.Root!.At(TieWords.Over.Name)!;
        return new Refusal(
            sheet.Sources[0].File,
            written.Place.Line,
            written.Place.Column,
            written.Place.Length,
            $"\"{written.Text}\" is no named road and no file.",
            NamedRoads.Advice(written.Text, "the path of a road file, as seen from this sheet"));
    }

    /// <summary>Reads the text of a sheet.</summary>
    /// <param name="source">The text under its file's name.</param>
    public static Reading<TieSheet> Read(SourceText source) => YamlReading.Read(source, TieWords.Shape);
}
