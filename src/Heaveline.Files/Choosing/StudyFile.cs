using System.Text.Json.Nodes;
using Heaveline.Files.Yaml;
using Heaveline.Studies;

namespace Heaveline.Files.Choosing;

/// <summary>Studies: text in, what is asked out, or every refusal with its place.</summary>
public static class StudyFile
{
    /// <summary>The JSON Schema of a study, for editors.</summary>
    public static JsonObject Schema => JsonSchema.Of(StudyWords.Shape.Layout);

    /// <summary>Every key of a study, group by group, as a page in Markdown.</summary>
    public static string KeyPage => Yaml.KeyPage.Of(StudyWords.Shape.Layout);

    /// <summary>Whether a text is a study.</summary>
    /// <param name="source">The text.</param>
    public static bool IsStudy(SourceText source) => YamlReading.Value(source).Root is { } root && StudyWords.IsStudy(root);

    /// <summary>Reads a study (.yaml); files are named in it as seen from it.</summary>
    /// <param name="path">The file.</param>
    public static Reading<ChooseSheet> Load(string path)
    {
        var (source, refusal) = SourceText.Load(path, YamlTree.Longest);
        return refusal is null ? Read(source) : Reading<ChooseSheet>.Refused(source, refusal);
    }

    /// <summary>Reads the text of a study.</summary>
    /// <param name="source">The text under its file's name.</param>
    public static Reading<ChooseSheet> Read(SourceText source)
    {
        var reader = new Reader(source);
        var root = YamlTree.Of(reader);
        if (root is not null && root.Kind == NodeKind.Mapping)
        {
            StudyRepeats.Refuse(root, reader);
        }

        var value = root is not null && StudyWords.Shape.TryRead(root, reader, out var read) && reader.Count == 0
            ? read with { File = source.File, Lines = [.. StudyWords.Lines(root)] }
            : null;
        if (value is not null)
        {
            StudySlips.Check(root!, reader);
        }

        return new Reading<ChooseSheet> { Value = value, Refusals = reader.Refusals, Warnings = reader.Warnings, Sources = [source], Root = root };
    }
}
