using System.Text.Json.Nodes;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Crews;

/// <summary>The file of a crew: text in, what it says out, or every refusal with its place.</summary>
public static class CrewFile
{
    /// <summary>The JSON Schema of the file, for editors.</summary>
    public static JsonObject Schema => JsonSchema.Of(CrewWords.Shape.Layout);

    /// <summary>Every key of the file, group by group, as a page in Markdown.</summary>
    public static string KeyPage => Yaml.KeyPage.Of(CrewWords.Shape.Layout);

    /// <summary>Whether a text is the file of a crew.</summary>
    /// <param name="source">The text.</param>
    public static bool IsCrew(SourceText source) => YamlReading.Value(source).Root is { } root && CrewWords.IsCrew(root);

    /// <summary>Reads the text of a crew's file.</summary>
    /// <param name="source">The text under its file's name.</param>
    public static Reading<CrewSheet> Read(SourceText source) => YamlReading.Read(source, CrewWords.Shape);

    /// <summary>Reads the file of a crew (.yaml); the file of the code is named as seen from where the program runs.</summary>
    /// <param name="path">The file.</param>
    public static Reading<CrewSheet> Load(string path)
    {
        var (source, refusal) = SourceText.Load(path, YamlTree.Longest);
        if (refusal is not null)
        {
            return Reading<CrewSheet>.Refused(source, refusal);
        }

        var reading = Read(source);
        return reading.Value is { } sheet
            ? reading with { Value = sheet with { CodeFile = Path.Combine(Path.GetDirectoryName(path) ?? "", sheet.CodeFile) } }
            : reading;
    }
}
