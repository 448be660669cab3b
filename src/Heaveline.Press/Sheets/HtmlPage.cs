using System.Reflection;
using System.Text;
using Heaveline.Press.Paper;
using Heaveline.Press.Type;
using Heaveline.Reports;

namespace Heaveline.Press.Sheets;

/// <summary>A report as an HTML page: head, title, contents, parts in order.</summary>
internal sealed class HtmlPage(Report report)
{
    // Forbids what the page does not have: whatever got into a text, nothing of it can run or be fetched.
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'";

    private static readonly Lazy<string> Style = new(ReadStyle);

    public string Text()
    {
        var parts = new StringBuilder();
        var blocks = new HtmlBlocks(parts);
        for (var i = 0; i < report.Parts.Length; i++)
        {
            var part = report.Parts[i];
            parts.Append($"<section aria-labelledby=\"part-{i + 1}\">\n<h2 id=\"part-{i + 1}\">{Escaped(part.Heading)}</h2>\n");
            foreach (var block in part.Blocks)
            {
                blocks.Add(block);
            }

            if (part.Sources.Length > 0)
            {
                parts.Append("<p class=\"quiet\">Sources: "
                    + $"{string.Join(", ", part.Sources.Select(s => $"<a href=\"#source-{s.Key}\">{Escaped(s.Key)}</a>"))}.</p>\n");
            }

            parts.Append("</section>\n");
        }

        var text = new StringBuilder();
        text.Append($"<!DOCTYPE html>\n<html lang=\"{Report.Language}\">\n<head>\n<meta charset=\"utf-8\">\n");
        text.Append($"<meta http-equiv=\"Content-Security-Policy\" content=\"{Policy}\">\n");
        text.Append(
            "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n");
        text.Append($"<meta name=\"generator\" content=\"{Escaped(report.Program)}\">\n");
        text.Append(report.Author.Length > 0 ? $"<meta name=\"author\" content=\"{Escaped(report.Author)}\">\n" : "");
        text.Append($"<title>{Escaped(report.Title)}</title>\n<style>\n");
        Faces(text, blocks.Faces);
        text.Append(Style.Value).Append("</style>\n</head>\n<body>\n<header>\n").Append($"<h1>{Escaped(report.Title)}</h1>\n");
        text.Append($"<p class=\"quiet\">{Escaped(By(report))}</p>\n</header>\n");
        Contents(text);
        return text.Append("<main>\n").Append(parts).Append("</main>\n</body>\n</html>\n").ToString();
    }

    /// <summary>Author, date and program in one line.</summary>
    public static string By(Report report) => string.Join(" · ", new[] { report.Author, report.Date, report.Program }.Where(t => t.Length > 0));

    /// <summary>A text as content or attribute of HTML.</summary>
    /// <remarks>
    /// A carriage return is written as a reference: a bare one would be read as a line feed, and a text copied from
    /// the page would no longer have its digest.
    /// </remarks>
    public static string Escaped(string text) => SvgSheet.Escaped(text).Replace("\r", "&#13;", StringComparison.Ordinal);

    private void Contents(StringBuilder text)
    {
        text.Append("<nav aria-label=\"Contents\">\n<ol>\n");
        for (var i = 0; i < report.Parts.Length; i++)
        {
            text.Append($"<li><a href=\"#part-{i + 1}\">{Escaped(report.Parts[i].Heading)}</a></li>\n");
        }

        text.Append("</ol>\n</nav>\n");
    }

    // Words are set in the figures' faces, so that the page looks alike everywhere; italics only where a figure needs them.
    private static void Faces(StringBuilder text, IReadOnlySet<Face> used)
    {
        foreach (var face in Enum.GetValues<Face>().Where(f => f != Face.Italic || used.Contains(f)))
        {
            var (weight, style) = (face == Face.Bold ? 700 : 400, face == Face.Italic ? "italic" : "normal");
            text.Append($"@font-face{{font-family:'{Typefaces.Family}';font-weight:{weight};font-style:{style};");
            text.Append($"src:url(data:font/ttf;base64,{Convert.ToBase64String(Typefaces.FileOf(face))}) format('truetype')}}\n");
        }
    }

    private static string ReadStyle()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("Heaveline.Press.Sheets.report.css")
            ?? throw new InvalidOperationException("The assembly does not carry report.css.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
