using Heaveline.Figures;
using Heaveline.Files;
using Heaveline.Quantities;

namespace Heaveline.Press;

/// <summary>Figures written to disk, in the format that the file's name asks for.</summary>
public static class FigureFile
{
    /// <summary>What the name of an SVG ends with whose letters are outlines, for drawing programs: see <see cref="Svg"/>.</summary>
    public const string OutlinesEnding = ".outlines.svg";

    /// <summary>Writes a figure as .svg (or <see cref="OutlinesEnding"/>), .png (300 dpi) or .pdf, whole or not at all.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="path">The file; one that is there is replaced.</param>
    /// <exception cref="RefusedValueException">
    /// The name ends in something else, or the figure cannot be drawn as given. Nothing is written.
    /// </exception>
    /// <exception cref="IOException">The file cannot be written. Nothing is left behind.</exception>
    public static void Write(Figure figure, string path)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        WholeFile.Write(path, Of(figure, path));
    }

    /// <summary>The bytes of such a file.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="name">The file's name, for its ending.</param>
    /// <exception cref="RefusedValueException">As above.</exception>
    public static byte[] Of(Figure figure, string name)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var ending = Path.GetExtension(name);
        return ending.ToLowerInvariant() switch
        {
            ".svg" => Svg.Of(figure, name.EndsWith(OutlinesEnding, StringComparison.OrdinalIgnoreCase)),
            ".png" => Png.Of(figure),
            ".pdf" => Pdf.Of(figure),
            _ => throw new RefusedValueException(
                $"ending of the figure file '{Path.GetFileName(name)}'",
                ending.Length == 0 ? "missing" : ending,
                ".svg, .png or .pdf",
                "SVG and PDF print sharp at any size; PNG suits a web page or a letter."),
        };
    }
}
