namespace Heaveline.Files.Yaml;

/// <summary>A key of a mapping with its value.</summary>
/// <param name="Key">The key as written.</param>
/// <param name="KeyPlace">Where the key stands.</param>
/// <param name="Value">Its value.</param>
public sealed record Entry(string Key, Place KeyPlace, Node Value);
