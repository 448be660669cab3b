using Heaveline.Figures;

namespace Heaveline.Press.Colours;

/// <summary>
/// The colours of the house. The five inks are 14 or more steps of L* apart from one another and from white, so that they keep apart in a
/// grey print. About ten steps between large fields, more between thin lines, is common practice, no source.
/// </summary>
internal static class Palette
{
    /// <summary>Smallest distance in lightness L* between any two inks, and between any ink and white paper.</summary>
    public const double LeastLightnessApart = 14.0;

    /// <summary>Axes and ticks.</summary>
    public static Colour Frame => new(0x33, 0x37, 0x3b);

    /// <summary>Lettering.</summary>
    public static Colour Text => new(0x1f, 0x23, 0x27);

    /// <summary>Lettering that steps back: band labels, limits.</summary>
    public static Colour QuietText => new(0x55, 0x5a, 0x60);

    /// <summary>Hairlines across the plotting area.</summary>
    public static Colour Hairline => new(0xe1, 0xe3, 0xe6);

    /// <summary>The line at zero.</summary>
    public static Colour Zero => new(0x9c, 0xa1, 0xa6);

    /// <summary>Lines at limits.</summary>
    public static Colour Limit => new(0x55, 0x5a, 0x60);

    /// <summary>Light grey ground.</summary>
    public static Colour LightGround => new(0xef, 0xf0, 0xf2);

    /// <summary>Grey ground, one step darker.</summary>
    public static Colour Ground => new(0xd9, 0xdc, 0xdf);

    /// <summary>Lines of a hatched ground.</summary>
    public static Colour Hatch => new(0xd6, 0xd9, 0xdc);

    /// <summary>The colour of an ink.</summary>
    public static Colour Of(Ink ink) => ink switch
    {
        Ink.First => new(0x0f, 0x4c, 0x81),
        Ink.Second => new(0xe0, 0x77, 0x2e),
        Ink.Third => new(0x1b, 0x1d, 0x20),
        Ink.Fourth => new(0x69, 0x6d, 0x72),
        Ink.Fifth => new(0xb4, 0xba, 0xbf),
        _ => throw new ArgumentOutOfRangeException(nameof(ink), ink, "No such ink."),
    };
}
