using System.Text;
using Heaveline.Figures;
using Heaveline.Press.Paper;
using Heaveline.Press.Plates;
using Heaveline.Press.Type;

namespace Heaveline.Press.Sheets;

/// <summary>A figure as an element of a page whose style carries the faces.</summary>
internal static class InlineSvg
{
    /// <summary>Adds the element and returns the faces it needs.</summary>
    public static IReadOnlySet<Face> Add(StringBuilder text, Figure figure)
    {
        var setting = new FigureSetting(figure);
        var sheet = new SvgSheet();
        setting.Draw(sheet);
        text.Append($"<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-label=\"{SvgSheet.Escaped($"{figure.Title}. {figure.AltText}")}\"");
        text.Append($" viewBox=\"0 0 {SvgSheet.Number(setting.Width)} {SvgSheet.Number(setting.Height)}\" "
            + $"font-family=\"'{Typefaces.Family}', sans-serif\">\n");
        text.Append(sheet.Elements).Append("</svg>\n");
        return sheet.Faces;
    }
}
