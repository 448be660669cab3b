namespace Heaveline.Files.Yaml;

/// <summary>
/// A key of a file: its name, its meaning, how its value is written. The reader, the JSON Schema and the documentation come from the same key.
/// </summary>
public abstract class Key
{
    private protected Key(string name, string meaning, Kind kind, string example, bool isRequired, string? property)
    {
        Name = name;
        Meaning = meaning;
        Kind = kind;
        Example = example;
        IsRequired = isRequired;
        Property = property ?? Pascal(name);
    }

    /// <summary>The key as written in the file.</summary>
    public string Name { get; }

    /// <summary>The meaning in one line.</summary>
    public string Meaning { get; }

    /// <summary>How the value is written.</summary>
    public Kind Kind { get; }

    /// <summary>
    /// A sound value as written in a file; may be empty for groups and lists of groups that are sound when made of their keys' examples.
    /// </summary>
    public string Example { get; }

    /// <summary>Whether it may not be left out.</summary>
    public bool IsRequired { get; }

    /// <summary>The record's property that holds the value, by which the record's own refusals find the key: the key's name unless told.</summary>
    public string Property { get; }

    /// <summary>Other words that people write for it, which it does not go by.</summary>
    internal IReadOnlyList<string> OtherWords { get; private protected init; } = [];

    /// <summary>What its values usually are; null where nothing is said.</summary>
    internal UsualRange? Usual { get; private protected init; }

    /// <summary>Tells a value, as it was read, that is not usual.</summary>
    internal Action<Node, object, Reader>? TellsUnusual { get; private protected init; }

    /// <summary>What its values usually are, in words: of a table, column by column; null where nothing is said.</summary>
    internal string? UsualWords => Usual?.Words ?? Kind.UsualWords;

    /// <summary>The meaning with the usual range.</summary>
    internal string Says => UsualWords is null ? Meaning : $"{Meaning} Usually {UsualWords}.";

    /// <summary>A key that may not be left out.</summary>
    public static Key<T> Required<T>(string name, string meaning, Kind<T> kind, string example = "", string? property = null)
        where T : notnull => new(name, meaning, kind, example, true, property);

    /// <summary>A key that may be left out.</summary>
    public static Key<T> Optional<T>(string name, string meaning, Kind<T> kind, string example = "", string? property = null)
        where T : notnull => new(name, meaning, kind, example, false, property);

    /// <summary>A sound value, from the example; null when there is none.</summary>
    internal object? Sample() => Kind.Sample(Example);

    // "unsprung-mass" → "UnsprungMass", as properties are written.
    private static string Pascal(string name) => string.Concat(name.Split('-').Select(part => char.ToUpperInvariant(part[0]) + part[1..]));
}
