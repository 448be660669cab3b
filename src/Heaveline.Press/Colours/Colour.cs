using System.Globalization;

namespace Heaveline.Press.Colours;

/// <summary>
/// An opaque sRGB colour. Nothing on the sheet is see-through: tints are mixed with white beforehand, so that every format prints alike.
/// </summary>
internal readonly record struct Colour(byte Red, byte Green, byte Blue)
{
    public static Colour White => new(255, 255, 255);

    public string Hex => string.Create(CultureInfo.InvariantCulture, $"#{Red:x2}{Green:x2}{Blue:x2}");

    /// <summary>Relative luminance, 0 to 1 [IEC 61966-2-1 transfer curve and primaries].</summary>
    public double Luminance => 0.2126 * Linear(Red) + 0.7152 * Linear(Green) + 0.0722 * Linear(Blue);

    /// <summary>Lightness L*, 0 (black) to 100 (white) [CIE 15: 116·Y^(1/3) − 16, and 903.3·Y near black].</summary>
    public double Lightness => Luminance > 216.0 / 24389.0 ? 116.0 * Math.Cbrt(Luminance) - 16.0 : Luminance * 24389.0 / 27.0;

    /// <summary>This colour mixed with white: 1 leaves it, 0 is white.</summary>
    public Colour Tinted(double share) => new(Mixed(Red, share), Mixed(Green, share), Mixed(Blue, share));

    /// <summary>
    /// The colour for small letters: darkened until its contrast to white is the 4.5 that small text needs
    /// [W3C Web Content Accessibility Guidelines 2.1, 1.4.3], because letters are thinner than a curve and fade sooner.
    /// </summary>
    public Colour AsText
    {
        get
        {
            var dark = this;
            for (var share = 0.98; 1.05 / (dark.Luminance + 0.05) < 4.5; share -= 0.02)
            {
                dark = new((byte)(Red * share), (byte)(Green * share), (byte)(Blue * share));
            }

            return dark;
        }
    }

    private static byte Mixed(byte channel, double share) => (byte)Math.Round(255.0 - share * (255.0 - channel));

    private static double Linear(byte channel)
    {
        var c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
    }
}
