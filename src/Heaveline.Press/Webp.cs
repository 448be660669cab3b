using Heaveline.Figures;
using Heaveline.Press.Paper;
using Heaveline.Press.Plates;
using Heaveline.Quantities;
using SkiaSharp;

namespace Heaveline.Press;

/// <summary>Figures that follow each other as one animated WebP, which browsers and most that show pictures play over and over.</summary>
public static class Webp
{
    // What a page of a text shows a picture with (common practice, no source), and a quality at which letters stay clean (judged by eye).
    private const double DotsPerInch = 110.0;
    private const float Quality = 80.0f;

    /// <summary>The file's bytes.</summary>
    /// <param name="frames">The figures, all of one size.</param>
    /// <param name="shown">How long each is shown, s.</param>
    /// <param name="stop">Stops the work between two figures.</param>
    /// <exception cref="RefusedValueException">There is none, or one cannot be drawn as given.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static byte[] Of(IEnumerable<Figure> frames, double shown, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(frames);
        var drawn = new List<SKBitmap>();
        try
        {
            foreach (var frame in frames)
            {
                stop.ThrowIfCancellationRequested();
                drawn.Add(Drawn(frame, drawn.Count == 0 ? null : drawn[0].Info));
            }

            if (drawn.Count == 0)
            {
                throw new RefusedValueException("animation", "of no pictures", "of at least one", "Give it a picture.");
            }

            var duration = TimeSpan.FromSeconds(shown);
            SKWebpEncoderFrame[] all = [.. drawn.Select(bitmap => new SKWebpEncoderFrame(bitmap, duration))];
            using var encoded = SKWebpEncoder.EncodeAnimated(all, new SKWebpEncoderOptions(SKWebpEncoderCompression.Lossy, Quality))
                ?? throw new InvalidOperationException($"{drawn.Count} pictures cannot be written as one.");
            return encoded.ToArray();
        }
        finally
        {
            foreach (var bitmap in drawn)
            {
                bitmap.Dispose();
            }
        }
    }

    private static SKBitmap Drawn(Figure figure, SKImageInfo? like)
    {
        var setting = new FigureSetting(figure);
        var info = like ?? new SKImageInfo(
            Pixels(setting.WidthMillimetres), Pixels(setting.HeightMillimetres), SKColorType.Rgba8888, SKAlphaType.Opaque);
        var bitmap = new SKBitmap(info);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        canvas.Scale((float)(DotsPerInch / 72.0));
        setting.Draw(new SkiaSheet(canvas));
        return bitmap;
    }

    private static int Pixels(double millimetres) => (int)Math.Round(millimetres / 25.4 * DotsPerInch);
}
