using System.Text.Json.Nodes;
using Heaveline.Files.Yaml;
using Heaveline.Parts;

namespace Heaveline.Files.Parts;

/// <summary>Lists of parts: text in, a list out, or every refusal with its place.</summary>
public static class PartsFile
{
    /// <summary>The JSON Schema of a list, for editors.</summary>
    public static JsonObject Schema => JsonSchema.Of(PartsListWords.Shape.Layout);

    /// <summary>Every key of a list, group by group, as a page in Markdown.</summary>
    public static string KeyPage => Yaml.KeyPage.Of(PartsListWords.Shape.Layout);

    /// <summary>Whether a text is a list of parts.</summary>
    /// <param name="source">The text.</param>
    public static bool IsList(SourceText source) => YamlReading.Value(source).Root is { } root && PartsListWords.IsList(root);

    /// <summary>Reads a list (.yaml), or a sheet of springs (.csv).</summary>
    /// <param name="path">The file.</param>
    public static Reading<PartsList> Load(string path)
    {
        var (source, refusal) = SourceText.Load(path, YamlTree.Longest);
        return refusal is not null ? Reading<PartsList>.Refused(source, refusal)
            : FileFormat.SpringSheet.Has(path) ? SpringSheet.Read(source)
            : Read(source);
    }

    /// <summary>Reads the text of a list.</summary>
    /// <param name="source">The text under its file's name.</param>
    public static Reading<PartsList> Read(SourceText source)
    {
        var reader = new Reader(source);
        var root = YamlTree.Of(reader);
        if (root is not null)
        {
            PartsListWords.RefuseTwice(root, reader);
        }

        var value = root is not null && PartsListWords.Shape.TryRead(root, reader, out var read) && reader.Count == 0 ? read : null;
        if (value is not null)
        {
            PartSlips.Check(value, root!, reader);
        }

        return new Reading<PartsList> { Value = value, Refusals = reader.Refusals, Warnings = reader.Warnings, Sources = [source], Root = root };
    }
}
