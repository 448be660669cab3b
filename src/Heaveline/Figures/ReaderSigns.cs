using System.Collections.Immutable;
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
    public static double[] Millimetres(ImmutableArray<double> metres) => [.. metres.Select(value => In.Millimetres.Of(value))];

    /// <summary>Nose-down rad to nose-up degrees.</summary>
    public static double[] NoseUpDegrees(ImmutableArray<double> radians) => [.. radians.Select(value => -In.Degrees.Factor * value)];

    /// <summary>Nose-down to nose-up, unit kept.</summary>
    public static double[] NoseUp(ImmutableArray<double> values) => [.. values.Select(value => -value)];

    /// <summary>rad to degrees, sign kept.</summary>
    public static double[] Degrees(ImmutableArray<double> radians) => [.. radians.Select(value => In.Degrees.Factor * value)];
}
