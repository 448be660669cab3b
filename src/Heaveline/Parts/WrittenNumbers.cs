namespace Heaveline.Parts;

/// <summary>
/// How the numbers of a part stand in its list: whoever writes them again writes them in the unit and with the doubt of whoever measured them.
/// </summary>
/// <param name="numbers">Keys and words, in the order of the list; a key may stand there several times.</param>
public sealed class WrittenNumbers(IReadOnlyList<(string Key, string Words)> numbers) : IEquatable<WrittenNumbers>
{
    /// <summary>Of a part that stands in no list.</summary>
    public static WrittenNumbers None { get; } = new([]);

    /// <summary>The words of a key.</summary>
    /// <param name="key">The key, as lists have it.</param>
    public IEnumerable<string> Of(string key) => numbers.Where(one => one.Key == key).Select(one => one.Words);

    /// <inheritdoc/>
    /// <remarks>What a part is does not hang on the words that it is written in.</remarks>
    public bool Equals(WrittenNumbers? other) => other is not null;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as WrittenNumbers);

    /// <inheritdoc/>
    public override int GetHashCode() => 0;
}
