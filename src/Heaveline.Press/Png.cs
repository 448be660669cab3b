using Heaveline.Figures;
using Heaveline.Press.Paper;
using Heaveline.Press.Plates;
using Heaveline.Quantities;
using SkiaSharp;

namespace Heaveline.Press;

/// <summary>Figures as PNG. The file knows its size on paper, its title and its alternative text.</summary>
public static class Png
{
    /// <summary>The file's bytes. The same figure at the same resolution gives the same bytes on the same machine.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="dotsPerInch">
    /// Pixels per inch of paper, 36 to 1200. Default 300, what printers commonly ask for (common practice, no single source).
    /// </param>
    /// <exception cref="RefusedValueException">The resolution is out of range, or the figure cannot be drawn as given.</exception>
    public static byte[] Of(Figure figure, double dotsPerInch = 300.0)
    {
        ArgumentNullException.ThrowIfNull(figure);
        Checked.Within(dotsPerInch, 36.0, 1200.0, "300 suits print, 96 to 192 a screen.", "DotsPerInch");
        var setting = new FigureSetting(figure);
        var (width, height) = (Pixels(setting.WidthMillimetres, dotsPerInch), Pixels(setting.HeightMillimetres, dotsPerInch));
        using var surface = SKSurface.Create(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque))
            ?? throw new InvalidOperationException($"No memory for a picture of {width} by {height} pixels.");
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale((float)(dotsPerInch / 72.0));
        setting.Draw(new SkiaSheet(surface.Canvas));
        using var image = surface.Snapshot();
        using var encoded = image.Encode(SKEncodedImageFormat.Png, 100);
        return PngChunks.WithPaperSize(encoded.ToArray(), dotsPerInch, [("Title", figure.Title), ("Description", figure.AltText)]);
    }

    private static int Pixels(double millimetres, double dotsPerInch) => (int)Math.Round(millimetres / 25.4 * dotsPerInch);
}
