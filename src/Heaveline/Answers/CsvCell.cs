namespace Heaveline.Answers;

/// <summary>A text as one cell of a CSV table.</summary>
public static class CsvCell
{
    /// <summary>
    /// The text, in quotes where it holds a comma, a quote or a line end [RFC 4180 §2]. One that a spreadsheet would take for a formula begins
    /// with a text mark [OWASP, CSV injection]: names of cars may hold anything.
    /// </summary>
    /// <param name="text">The text.</param>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var safe = text.Length > 0 && "=+@\t\r".Contains(text[0], StringComparison.Ordinal) ? "'" + text : text;
        return safe.AsSpan().IndexOfAny("\",\r\n") >= 0 ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : safe;
    }
}
