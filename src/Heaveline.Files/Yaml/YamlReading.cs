namespace Heaveline.Files.Yaml;

/// <summary>
/// Reads YAML by a shape, to its end, with every refusal in its place. Nothing is bound by reflection: what is read is what the shape lists.
/// </summary>
public static class YamlReading
{
    /// <summary>Reads a text.</summary>
    public static Reading<T> Read<T>(SourceText source, Shape<T> shape)
        where T : class
    {
        var reader = new Reader(source);
        var root = YamlTree.Of(reader);
        var value = root is not null && shape.TryRead(root, reader, out var read) && reader.Count == 0 ? read : null;
        return new Reading<T> { Value = value, Refusals = reader.Refusals, Warnings = reader.Warnings, Sources = [source], Root = root };
    }

    /// <summary>Reads a text as it stands, whatever it says: a value to put into a file, or a document to compare with another.</summary>
    public static Reading<Node> Value(SourceText source)
    {
        var reader = new Reader(source);
        var root = YamlTree.Of(reader);
        var value = reader.Count == 0 ? root : null;
        return new Reading<Node> { Value = value, Refusals = reader.Refusals, Warnings = reader.Warnings, Sources = [source], Root = root };
    }
}
