using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>
/// Traces in the units and signs of a reader: millimetres, degrees, nose up positive. Inside, pitch is nose-down positive (ISO 8855); a nose that
/// rises is drawn upwards because that is what a bump does first.
/// </summary>
internal static class ReaderSigns
{
    /// <summary>What a figure says about its pitch.</summary>
    public const string Pitch = "Pitch is drawn nose up positive; inside it is computed nose down positive (ISO 8855).";

    /// <summary>Metres to millimetres.</summary>
    public static double[] Millimetres(double[] metres) => Array.ConvertAll(metres, value => In.Millimetres.Of(value));

    /// <summary>Nose-down rad to nose-up degrees.</summary>
    public static double[] NoseUpDegrees(double[] radians) => Array.ConvertAll(radians, value => -In.Degrees.Factor * value);

    /// <summary>Nose-down to nose-up, unit kept.</summary>
    public static double[] NoseUp(double[] values) => Array.ConvertAll(values, value => -value);

    /// <summary>rad to degrees, sign kept.</summary>
    public static double[] Degrees(double[] radians) => Array.ConvertAll(radians, value => In.Degrees.Factor * value);
}
