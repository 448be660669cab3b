namespace Heaveline.Quantities;

/// <summary>A place in a text that is being read, with the first refusal met.</summary>
internal sealed class TextCursor(string text)
{
    /// <summary>Index of the next character.</summary>
    public int At { get; set; }

    /// <summary>The first refusal; null while all is well.</summary>
    public QuantityRefusal? Refusal { get; private set; }

    /// <summary>Whether all characters but blanks are read.</summary>
    public bool AtEnd => Rest.IsWhiteSpace();

    /// <summary>What is not read yet.</summary>
    public ReadOnlySpan<char> Rest => text.AsSpan(At);

    /// <summary>The next character, or NUL at the end.</summary>
    public char Next => At < text.Length ? text[At] : '\0';

    /// <summary>The text from a start to here, without blanks at its end.</summary>
    public string Since(int start) => text[start..At].TrimEnd();

    /// <summary>Goes over blanks, the no-break and thin ones included.</summary>
    public void SkipBlanks()
    {
        while (At < text.Length && char.IsWhiteSpace(text[At]))
        {
            At++;
        }
    }

    /// <summary>Goes over a word if it stands here.</summary>
    public bool Take(string word)
    {
        var here = Rest.StartsWith(word, StringComparison.Ordinal);
        At += here ? word.Length : 0;
        return here;
    }

    /// <summary>End of the run of characters from an index on that have a property.</summary>
    public int RunEnd(int from, Func<char, bool> has)
    {
        while (from < text.Length && has(text[from]))
        {
            from++;
        }

        return from;
    }

    /// <summary>The text between two indices.</summary>
    public string Between(int start, int end) => text[start..end];

    /// <summary>Keeps a refusal, unless one is kept already.</summary>
    public void Refuse(int start, int end, string message, string advice)
    {
        var last = Math.Min(end, text.Length);
        Refusal ??= new QuantityRefusal(start, Math.Max(last - start, text.Length == 0 ? 0 : 1), message, advice);
    }
}
