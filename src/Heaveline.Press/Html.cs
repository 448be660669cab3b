using System.Text;
using Heaveline.Press.Sheets;
using Heaveline.Reports;

namespace Heaveline.Press;

/// <summary>
/// Reports as one HTML file that needs nothing else: figures, faces and style are inside, there is no script and no outside reference.
/// </summary>
public static class Html
{
    /// <summary>The file's bytes, UTF-8. The same report gives the same bytes.</summary>
    /// <param name="report">The report.</param>
    /// <exception cref="Quantities.RefusedValueException">A figure cannot be drawn as given.</exception>
    public static byte[] Of(Report report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return Encoding.UTF8.GetBytes(new HtmlPage(report).Text());
    }
}
