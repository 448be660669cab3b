namespace Heaveline.Files;

/// <summary>Characters that are obeyed and not seen: names come from strangers, and none of these has a place in one.</summary>
public static class ControlCharacter
{
    /// <summary>
    /// Whether it is one: a control character, line ends and tabs among them, or a mark of writing direction [Unicode Standard Annex 9].
    /// </summary>
    public static bool Is(char c) =>
        char.IsControl(c) || c is (>= '\u2028' and <= '\u202E') or (>= '\u2066' and <= '\u2069') or '\u200E' or '\u200F' or '\u061C';

    /// <summary>The text with all of them spelled out (\u000A).</summary>
    public static string Spelled(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return string.Concat(text.Select(c => Is(c) ? $"\\u{(int)c:X4}" : c.ToString()));
    }
}
