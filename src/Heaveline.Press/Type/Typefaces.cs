using SkiaSharp;

namespace Heaveline.Press.Type;

/// <summary>
/// The faces, read from the assembly. No face of the machine is ever used: the Skia build carried here sees none, and a figure must come
/// out the same everywhere.
/// </summary>
internal static class Typefaces
{
    /// <summary>The family name written into files.</summary>
    public const string Family = "Heaveline Sans";

    private static readonly Lazy<byte[]>[] Bytes = [.. Enum.GetValues<Face>().Select(face => new Lazy<byte[]>(() => Read(face)))];

    private static readonly Lazy<SKTypeface>[] Faces = [.. Enum.GetValues<Face>().Select(face => new Lazy<SKTypeface>(() => Load(face)))];

    /// <summary>The font file of a face.</summary>
    public static byte[] FileOf(Face face) => Bytes[(int)face].Value;

    /// <summary>A font of a size, points. The caller disposes of it.</summary>
    /// <remarks>No hinting and linear metrics: widths then scale exactly, and the layout measured in points holds at every resolution.</remarks>
    public static SKFont FontOf(Face face, double size) => new(Faces[(int)face].Value, (float)size)
    {
        Subpixel = true,
        LinearMetrics = true,
        Hinting = SKFontHinting.None,
        Edging = SKFontEdging.Antialias,
    };

    /// <summary>Width of a line of text, points.</summary>
    public static double WidthOf(string text, Face face, double size)
    {
        using var font = FontOf(face, size);
        return font.MeasureText(text);
    }

    /// <summary>The characters of a text that a face cannot show; each would print as an empty box.</summary>
    public static string Missing(string text, Face face)
    {
        using var font = FontOf(face, 10.0);
        return string.Concat(text.EnumerateRunes().Where(rune => !font.ContainsGlyph(rune.Value)));
    }

    private static byte[] Read(Face face)
    {
        var name = $"Heaveline.Press.Fonts.HeavelineSans-{face}.ttf";
        using var stream = typeof(Typefaces).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The assembly does not carry {name}.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static SKTypeface Load(Face face)
    {
        using var content = SKData.CreateCopy(FileOf(face));
        return SKTypeface.FromData(content) ?? throw new InvalidOperationException($"The face {face} cannot be read.");
    }
}
