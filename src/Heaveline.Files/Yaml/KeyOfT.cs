namespace Heaveline.Files.Yaml;

/// <summary>A key whose value has a type.</summary>
/// <typeparam name="T">The value's type.</typeparam>
public sealed class Key<T> : Key
    where T : notnull
{
    internal Key(string name, string meaning, Kind<T> kind, string example, bool isRequired, string? property)
        : base(name, meaning, kind, example, isRequired, property)
    {
    }
}
