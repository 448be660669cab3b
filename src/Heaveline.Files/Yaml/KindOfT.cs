using System.Diagnostics.CodeAnalysis;

namespace Heaveline.Files.Yaml;

/// <summary>How a value of a type is written in a file.</summary>
/// <typeparam name="T">The value's type.</typeparam>
public abstract class Kind<T> : Kind
    where T : notnull
{
    /// <summary>Reads a value; false when refused, with the reason at the reader.</summary>
    internal abstract bool TryRead(Node node, Reader reader, [MaybeNullWhen(false)] out T value);

    /// <inheritdoc/>
    internal sealed override bool TryReadAny(Node node, Reader reader, out object value)
    {
        var isRead = TryRead(node, reader, out var typed);
        value = isRead ? typed! : "";
        return isRead;
    }
}
