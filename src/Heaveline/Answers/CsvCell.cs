namespace Heaveline.Answers;

/// <summary>A text as one cell of a CSV table.</summary>
public static class CsvCell
{
    // With the full-width forms, and the minus sign beside the hyphen.
    private const string Signs = "=+-@＝＋－＠−";

    /// <summary>
    /// The text, in quotes where it holds a comma, a quote or a line end [RFC 4180 §2]. One that a spreadsheet would take for a formula, blanks
    /// before it and the wide signs of eastern scripts included, begins with a text mark [OWASP, CSV injection]: names of cars may hold anything.
    /// Numbers are no texts and never come here.
    /// </summary>
    /// <param name="text">The text.</param>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var safe = IsFormula(text) ? "'" + text : text;
        return safe.AsSpan().IndexOfAny("\",\r\n") >= 0 ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : safe;
    }

    private static bool IsFormula(string text) =>
        text.Length > 0
        && (text[0] is '\t' or '\r' or '\n' || (text.TrimStart() is [var first, ..] && Signs.Contains(first, StringComparison.Ordinal)));
}
