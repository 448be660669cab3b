namespace Heaveline.Files.Yaml;

/// <summary>A key whose value has a type.</summary>
/// <typeparam name="T">The value's type.</typeparam>
public sealed class Key<T> : Key
    where T : notnull
{
    private readonly Kind<T> kindOfValue;

    internal Key(string name, string meaning, Kind<T> kind, string example, bool isRequired, string? property)
        : base(name, meaning, kind, example, isRequired, property)
    {
        kindOfValue = kind;
    }

    /// <summary>The same key with other words that people write for it.</summary>
    internal Key<T> NotCalled(params string[] words) =>
        new(Name, Meaning, kindOfValue, Example, IsRequired, Property) { OtherWords = words, Usual = Usual, TellsUnusual = TellsUnusual };

    /// <summary>The same key with what its values usually are.</summary>
    internal Key<T> With(UsualRange usual, Action<Node, object, Reader> tells) =>
        new(Name, Meaning, kindOfValue, Example, IsRequired, Property) { Usual = usual, TellsUnusual = tells, OtherWords = OtherWords };
}
