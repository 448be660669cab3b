using Heaveline.Figures;
using Heaveline.Press.Paper;
using Heaveline.Press.Plates;
using SkiaSharp;

namespace Heaveline.Press;

/// <summary>Figures as a PDF of one page, the size of the figure: lines as lines, text as text, with the glyphs used embedded.</summary>
public static class Pdf
{
    /// <summary>The file's bytes. The same figure gives the same bytes: the file carries no date.</summary>
    /// <param name="figure">The figure.</param>
    /// <exception cref="Quantities.RefusedValueException">
    /// The figure cannot be drawn as given: an axis is missing or its range does not suit its scale.
    /// </exception>
    public static byte[] Of(Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var setting = new FigureSetting(figure);
        using var bytes = new MemoryStream();
        var metadata = new SKDocumentPdfMetadata
        {
            Title = figure.Title,
            Subject = figure.AltText,
            Creator = "Heaveline",
            Producer = "Heaveline",
            RasterDpi = 300.0f,
            EncodingQuality = 101,
        };
        using (var document = SKDocument.CreatePdf(bytes, metadata))
        {
            var canvas = document.BeginPage((float)setting.Width, (float)setting.Height);
            setting.Draw(new SkiaSheet(canvas));
            document.EndPage();
            document.Close();
        }

        return bytes.ToArray();
    }
}
