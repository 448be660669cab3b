using Heaveline.Press.Paper;
using Heaveline.Press.Sheets;
using Heaveline.Reports;
using SkiaSharp;

namespace Heaveline.Press;

/// <summary>Reports as a PDF set for a sheet of paper: pages numbered, figures whole, contents with links.</summary>
public static class ReportPdf
{
    /// <summary>The file's bytes. The same report gives the same bytes: the file carries no date of its own.</summary>
    /// <param name="report">The report.</param>
    /// <param name="paper">The sheet.</param>
    /// <exception cref="Quantities.RefusedValueException">A figure cannot be drawn as given.</exception>
    public static byte[] Of(Report report, PaperSize paper = PaperSize.A4)
    {
        ArgumentNullException.ThrowIfNull(report);

        // Set twice: only at the end of the first time is known on which page each part begins and how many pages there are.
        var (_, first) = Set(report, paper, PageNumbers.Unknown);
        return Set(report, paper, first).Bytes;
    }

    private static (byte[] Bytes, PageNumbers Numbers) Set(Report report, PaperSize paper, PageNumbers numbers)
    {
        using var bytes = new MemoryStream();
        var metadata = new SKDocumentPdfMetadata
        {
            Title = report.Title,
            Author = report.Author,
            Subject = string.Join("; ", report.Parts.Select(part => part.Heading)),
            Creator = report.Program,
            Producer = "Heaveline",
            RasterDpi = 300.0f,
            EncodingQuality = 101,
        };
        using var document = SKDocument.CreatePdf(bytes, metadata);
        var flow = new PageFlow(document, paper, report, numbers);
        new PdfReport(report, flow, numbers).Set();
        var found = flow.End();
        document.Close();
        return (bytes.ToArray(), found);
    }
}
