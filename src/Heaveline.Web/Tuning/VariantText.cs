using System.Text;

namespace Heaveline.Web.Tuning;

/// <summary>A variant file's text from a name, its base and the changed keys.</summary>
internal static class VariantText
{
    /// <summary>The text. Keys keep the order in which they first come; a key given twice keeps its last value.</summary>
    /// <param name="name">What the variant is called.</param>
    /// <param name="baseFile">The file that it changes, relative to its own.</param>
    /// <param name="note">Why; null for no note.</param>
    /// <param name="words">The changed keys, at least one.</param>
    public static string Of(string name, string baseFile, string? note, IReadOnlyList<Wording> words)
    {
        var text = new StringBuilder();
        text.Append("variant: ").Append(Plain(name)).Append('\n');
        text.Append("of: ").Append(Plain(baseFile)).Append('\n');
        if (note is not null)
        {
            text.Append("note: ").Append(Plain(note)).Append('\n');
        }

        text.Append("change:\n");
        Group(text, words, 0);
        return text.ToString();
    }

    /// <summary>A text as a YAML scalar that stands in one line and in brackets: as it is where that is safe, else in double quotes [YAML 1.2, 7.3].</summary>
    public static string Plain(string text)
    {
        var safe = text.Length > 0 && char.IsAsciiLetterOrDigit(text[0]) && !char.IsWhiteSpace(text[^1])
            && text.All(c => char.IsLetterOrDigit(c) || c is ' ' or '-' or '.' or '/' or '%' or '_' or '±' or '²' or '³' or '°' or '(' or ')')
            && text is not ("true" or "false" or "null" or "yes" or "no" or "on" or "off" or "y" or "n");
        return safe ? text : System.Text.Json.JsonSerializer.Serialize(text, Relaxed);
    }

    private static readonly System.Text.Json.JsonSerializerOptions Relaxed = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static void Group(StringBuilder text, IReadOnlyList<Wording> words, int depth)
    {
        var indent = new string(' ', 2 * (depth + 1));
        foreach (var under in words.GroupBy(word => word.Path[depth]))
        {
            text.Append(indent).Append(Plain(under.Key)).Append(':');
            if (under.Last() is { } last && last.Path.Count == depth + 1)
            {
                text.Append(' ').Append(last.Text).Append('\n');
                continue;
            }

            text.Append('\n');
            Group(text, [.. under.Where(word => word.Path.Count > depth + 1)], depth + 1);
        }
    }
}
