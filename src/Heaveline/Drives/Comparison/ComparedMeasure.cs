using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Drives.Comparison;

/// <summary>Which measure of a pass a compared number is.</summary>
internal static class ComparedMeasure
{
    /// <summary>The measure.</summary>
    /// <param name="number">The number.</param>
    public static Measure<Pass> Of(ComparedNumber number) =>
        number == ComparedNumber.Headline ? SettlingCatalogue.RmsPitch : HitCatalogue.PeakPitchAcceleration;
}
