using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>Measures that are defined over the curves of a pass: of a recorded pass and of one in flight alike.</summary>
internal static class CurvedMeasure
{
    /// <summary>The measure.</summary>
    /// <param name="key">Name for machines.</param>
    /// <param name="label">Name for people.</param>
    /// <param name="unit">Unit that it is shown in.</param>
    /// <param name="digits">Digits behind the point.</param>
    /// <param name="of">Its definition.</param>
    /// <param name="says">What it is, in one sentence.</param>
    public static Measure<Pass> Of(string key, string label, ShownUnit unit, int digits, CurveNumber of, string says) =>
        new(key, label, unit, digits, p => of(new TracedCurves(p)), says) { InFlight = of };
}
