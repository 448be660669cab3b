using System.Buffers;
using System.Globalization;
using System.Text;
using YamlDotNet.Core;

namespace Heaveline.Files.Editing;

/// <summary>A single value as it is written in YAML, with quotes where it needs them (YAML 1.2.2, 7.3).</summary>
internal static class ScalarText
{
    private const string Indicators = "-?:,[]{}#&*!|>'\"%@`=<";
    private static readonly SearchValues<char> EndsInFlow = SearchValues.Create(",[]{}:");

    /// <summary>The value as written.</summary>
    /// <param name="text">The value.</param>
    /// <param name="inFlow">Whether it stands in brackets, where a comma ends it.</param>
    /// <param name="style">The style to keep; a plain one becomes quoted when it must.</param>
    /// <param name="alwaysQuoted">Whether to quote what could do without.</param>
    public static string Of(string text, bool inFlow, ScalarStyle style = ScalarStyle.Plain, bool alwaysQuoted = false)
    {
        var needsEscapes = text.Any(IsUnseen);
        return style switch
        {
            ScalarStyle.SingleQuoted when !needsEscapes => Single(text),
            ScalarStyle.DoubleQuoted => Double(text),
            _ when !needsEscapes && !alwaysQuoted && IsPlain(text, inFlow) => text,
            _ when needsEscapes || text.AsSpan().IndexOfAny('"', '\\') < 0 => Double(text),
            _ => Single(text),
        };
    }

    /// <summary>
    /// The style that a value's quotes are kept in when it changes: plain when they were there only because the old value needed them.
    /// </summary>
    public static ScalarStyle StyleAfter(string old, ScalarStyle style, bool inFlow) =>
        IsPlain(old, inFlow) && !old.Any(IsUnseen) ? style : ScalarStyle.Plain;

    private static bool IsPlain(string text, bool inFlow)
    {
        if (text.Length == 0 || text.Trim() != text || text is "~" or "null" or "Null" or "NULL" || text.StartsWith("...", StringComparison.Ordinal))
        {
            return false;
        }

        // A minus before a digit or a point is a number's sign.
        var isSigned = text.Length > 1 && text[0] == '-' && (char.IsAsciiDigit(text[1]) || text[1] == '.');
        return (isSigned || !Indicators.Contains(text[0], StringComparison.Ordinal))
            && !text.Contains(": ", StringComparison.Ordinal) && !text.EndsWith(':') && !text.Contains(" #", StringComparison.Ordinal)
            && !(inFlow && text.AsSpan().IndexOfAny(EndsInFlow) >= 0);
    }

    private static bool IsUnseen(char c) => char.IsControl(c) || c is '\u2028' or '\u2029' or '\uFEFF' or '\uFFFE' or '\uFFFF';

    private static string Single(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";

    private static string Double(string text)
    {
        var written = new StringBuilder(text.Length + 2).Append('"');
        foreach (var c in text)
        {
            _ = c switch
            {
                '"' or '\\' => written.Append('\\').Append(c),
                '\n' => written.Append("\\n"),
                '\t' => written.Append("\\t"),
                _ when IsUnseen(c) => written.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}"),
                _ => written.Append(c),
            };
        }

        return written.Append('"').ToString();
    }
}
