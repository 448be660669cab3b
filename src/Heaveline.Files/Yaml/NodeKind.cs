namespace Heaveline.Files.Yaml;

/// <summary>What stands at a place of a YAML document.</summary>
public enum NodeKind
{
    /// <summary>A text, number or word.</summary>
    Scalar,

    /// <summary>A group of keys with values.</summary>
    Mapping,

    /// <summary>A list.</summary>
    Sequence,

    /// <summary>Something refused already, such as an alias; readers pass over it in silence.</summary>
    Refused,
}
