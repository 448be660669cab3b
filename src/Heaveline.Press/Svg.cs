using System.Text;
using Heaveline.Figures;
using Heaveline.Press.Paper;
using Heaveline.Press.Plates;
using Heaveline.Press.Type;

namespace Heaveline.Press;

/// <summary>
/// Figures as SVG 1.1: text stays text, the faces used are carried in the file, title and alternative text are read out by screen readers.
/// </summary>
public static class Svg
{
    /// <summary>The file's bytes, UTF-8. The same figure gives the same bytes.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="outlines">
    /// Whether letters are drawn as their outlines, for drawing programs: these leave the carried font alone and set the words in one of their
    /// own, wider than the sheet. The words can then be neither searched nor edited; title and alternative text stay.
    /// </param>
    /// <exception cref="Quantities.RefusedValueException">
    /// The figure cannot be drawn as given: an axis is missing or its range does not suit its scale.
    /// </exception>
    public static byte[] Of(Figure figure, bool outlines = false)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var setting = new FigureSetting(figure);
        var sheet = new SvgSheet(outlines);
        setting.Draw(sheet);

        var text = new StringBuilder();
        text.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" role=\"img\"");
        text.Append($" width=\"{SvgSheet.Number(setting.WidthMillimetres)}mm\" height=\"{SvgSheet.Number(setting.HeightMillimetres)}mm\"");
        text.Append($" viewBox=\"0 0 {SvgSheet.Number(setting.Width)} {SvgSheet.Number(setting.Height)}\"");
        text.Append(outlines ? "" : $" font-family=\"'{Typefaces.Family}', sans-serif\"");
        text.Append($" aria-label=\"{SvgSheet.Escaped(figure.Title)}\">\n");
        text.Append($"<title>{SvgSheet.Escaped(figure.Title)}</title>\n<desc>{SvgSheet.Escaped(figure.AltText)}</desc>\n");
        text.Append(outlines ? "" : "<style>\n");
        foreach (var face in sheet.Faces)
        {
            text.Append($"@font-face{{font-family:'{Typefaces.Family}';font-weight:{(face == Face.Bold ? 700 : 400)};");
            text.Append($"font-style:{(face == Face.Italic ? "italic" : "normal")};");
            text.Append($"src:url(data:font/ttf;base64,{Convert.ToBase64String(Typefaces.FileOf(face))}) format('truetype')}}\n");
        }

        text.Append(outlines ? "" : "</style>\n").Append(sheet.Elements).Append("</svg>\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
