namespace Heaveline.Press.Colours;

/// <summary>
/// The shades of maps. Lightness falls all the way from the light end, or from the middle to both ends alike, so that a grey print keeps the
/// order; blue against orange is told apart with any common colour blindness [Okabe and Ito, Color Universal Design, 2008]. The darkest shade
/// still leaves dark lettering its contrast of 4.5.
/// </summary>
internal static class Shades
{
    private static readonly Colour Light = new(0xf8, 0xf8, 0xf6), Cool = new(0x4e, 0x96, 0xce), Warm = new(0xe3, 0x7d, 0x38);

    /// <summary>One hue, 0 (light) to 1 (dark).</summary>
    public static Colour Sequential(double share) => Between(Light, Cool, Math.Clamp(share, 0.0, 1.0));

    /// <summary>Cool at −1, light at 0, warm at 1.</summary>
    public static Colour Diverging(double share) =>
        share < 0.0 ? Between(Light, Cool, Math.Min(1.0, -share)) : Between(Light, Warm, Math.Min(1.0, share));

    private static Colour Between(Colour from, Colour to, double share) =>
        new(Channel(from.Red, to.Red, share), Channel(from.Green, to.Green, share), Channel(from.Blue, to.Blue, share));

    private static byte Channel(byte from, byte to, double share) => (byte)Math.Round(from + share * (to - from));
}
