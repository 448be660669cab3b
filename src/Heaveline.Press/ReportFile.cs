using Heaveline.Files;
using Heaveline.Press.Paper;
using Heaveline.Quantities;
using Heaveline.Reports;

namespace Heaveline.Press;

/// <summary>Reports written to disk, in the format that the file's name asks for.</summary>
public static class ReportFile
{
    /// <summary>Writes a report as .html or .pdf, whole or not at all.</summary>
    /// <param name="report">The report.</param>
    /// <param name="path">The file; one that is there is replaced.</param>
    /// <param name="paper">The sheet of a PDF; a browser asks for its own.</param>
    /// <exception cref="RefusedValueException">The name ends in something else, or a figure cannot be drawn as given. Nothing is written.</exception>
    /// <exception cref="IOException">The file cannot be written. Nothing is left behind.</exception>
    public static void Write(Report report, string path, PaperSize paper = PaperSize.A4)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        WholeFile.Write(path, Of(report, path, paper));
    }

    /// <summary>The bytes of such a file.</summary>
    /// <param name="report">The report.</param>
    /// <param name="name">The file's name, for its ending.</param>
    /// <param name="paper">As above.</param>
    /// <exception cref="RefusedValueException">As above.</exception>
    public static byte[] Of(Report report, string name, PaperSize paper = PaperSize.A4)
    {
        ArgumentNullException.ThrowIfNull(report);
        var ending = Path.GetExtension(name);
        return ending.ToLowerInvariant() switch
        {
            ".html" => Html.Of(report),
            ".pdf" => ReportPdf.Of(report, paper),
            _ => throw new RefusedValueException(
                $"ending of the report file '{Path.GetFileName(name)}'",
                ending.Length == 0 ? "missing" : ending,
                ".html or .pdf",
                "HTML reads on every screen and prints; PDF is set for paper."),
        };
    }
}
