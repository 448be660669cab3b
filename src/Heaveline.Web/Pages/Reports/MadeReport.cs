using Heaveline.Press;
using Heaveline.Press.Paper;
using Heaveline.Reports;

namespace Heaveline.Web.Pages.Reports;

/// <summary>A report that has been computed, and its file for the screen.</summary>
/// <param name="key">What it was made from, as <see cref="ReportQuestion.Key"/> says it.</param>
/// <param name="report">The report.</param>
/// <param name="html">The bytes of its HTML file.</param>
public sealed class MadeReport(string key, Report report, byte[] html)
{
    private readonly Lock only = new();
    private (string Command, PaperSize Paper, byte[] Bytes)? pdf;

    /// <summary>What it was made from.</summary>
    public string Key { get; } = key;

    /// <summary>The report.</summary>
    public Report Report { get; } = report;

    /// <summary>The bytes of its HTML file.</summary>
    public byte[] Html { get; } = html;

    /// <summary>The bytes of its PDF; set in type when first asked for, since most are read on a screen only.</summary>
    public byte[] Pdf(ReportAsked asked, PaperSize paper)
    {
        lock (only)
        {
            if (pdf is not { } known || known.Command != asked.Command || known.Paper != paper)
            {
                pdf = known = (asked.Command, paper, ReportPdf.Of(Report.MadeBy(asked), paper));
            }

            return known.Bytes;
        }
    }
}
