using Heaveline.Cars;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>A motion ratio from a sweep: the wheel jacked through its travel, both travels read at every stop.</summary>
public sealed record RatioSheet
{
    /// <summary>The ratio with the interval of its fit.</summary>
    public required MotionRatio Ratio { get; init; }

    /// <summary>Largest miss of the fitted curve, m of element travel.</summary>
    public required double WorstMiss { get; init; }

    /// <summary>Smallest and largest ratio over the measured travel (–).</summary>
    public required IReadOnlyList<double> Range { get; init; }

    /// <summary>
    /// Element travel that was read where the wheel stands at the state described, m; taken off every reading. 0 where the readings meet there.
    /// </summary>
    public required double Offset { get; init; }

    /// <summary>What the sweep says about itself, one sentence each.</summary>
    public required IReadOnlyList<SheetNote> Notes { get; init; }

    /// <summary>Works the sheet out.</summary>
    /// <param name="wheelTravel">Wheel travel from the reference state, m, bump positive. Doubts are taken as each reading's own.</param>
    /// <param name="elementTravel">Spring or damper travel at the same stops, m, compression positive.</param>
    public static RatioSheet Of(IReadOnlyList<Amount<Length>> wheelTravel, IReadOnlyList<Amount<Length>> elementTravel)
    {
        double[] wheel = [.. wheelTravel.Select(s => s.Si)];
        double[] read = [.. elementTravel.Select(x => x.Si)];
        var offset = OffsetOf(wheel, read);
        double[] element = [.. read.Select(x => x - offset)];
        var fitted = MotionRatio.FromSweep(wheel, element);
        double[] doubts = [.. wheelTravel.Select(s => s.Doubt.HalfWidth), .. elementTravel.Select(x => x.Doubt.HalfWidth)];
        // The scatter about the curve and what is said of the readings tell of the same errors: the larger one counts.
        // Of the fit and not of the ratio: moved readings may leave the ratio's limits where the readings do not.
        Amount<T> Wider<T>(Amount<T> value, int term)
            where T : struct, IDimension
        {
            var stated = DoubtBudget.Of(
                v => MotionRatio.SweepFit(v[..wheel.Length], v[wheel.Length..]).Coefficients[term], [.. wheel, .. element], doubts);
            return value.WithDoubt(Math.Max(stated, value.Doubt.HalfWidth));
        }

        var ratio = fitted with { AtReference = Wider(fitted.AtReference, 0), PerTravel = Wider(fitted.PerTravel, 1) };
        var (low, high) = (wheel.Min(), wheel.Max());
        double[] at = [.. Enumerable.Range(0, 21).Select(k => ratio.At(low + ((high - low) * k / 20.0)))];
        var sheet = new RatioSheet
        {
            Ratio = ratio,
            WorstMiss = wheel.Zip(element, (s, x) => Math.Abs(ratio.Travel(s) - x)).Max(),
            Range = [at.Min(), at.Max()],
            Offset = offset,
            Notes = [],
        };
        return sheet with { Notes = [.. NotesOf(sheet)] };
    }

    // A scale that was not set to zero: seen with more readings than unknowns, and only where it is more than half a millimetre and more than the
    // readings' own scatter leaves in doubt.
    private static double OffsetOf(double[] wheel, double[] element)
    {
        if (wheel.Length != element.Length || wheel.Length < 4)
        {
            return 0.0;
        }

        var fit = new LeastSquares([.. wheel.Select(s => new[] { 1.0, s, 0.5 * s * s })], element);
        return Math.Abs(fit.Coefficients[0]) > Math.Max(0.5e-3, fit.HalfWidth(1.0, 0.0, 0.0)) ? fit.Coefficients[0] : 0.0;
    }

    private static IEnumerable<SheetNote> NotesOf(RatioSheet sheet)
    {
        if (sheet.Offset != 0.0)
        {
            yield return new("offset", FormattableString.Invariant(
                $"Where the wheel stands at the state described the element would read {In.Millimetres.Of(sheet.Offset):F1} mm: its scale was not ")
                + "at zero there. That is taken off every reading, here and in the lines for the car file.");
        }

        var r = sheet.Ratio.AtReference.Si;
        if (r > 1.1)
        {
            yield return new(
                "upside-down",
                "The element moves further than the wheel: on most cars that is the ratio upside down; check which column is which.");
        }

        if (sheet.Ratio.AtReference.Doubt.HalfWidth == 0.0)
        {
            yield return new("no-interval", "As many readings as unknowns, or all on one curve: no interval; add stops.");
        }

        if (sheet.WorstMiss > 0.0015)
        {
            yield return new("misread", FormattableString.Invariant(
                $"One reading misses a smooth curve by {In.Millimetres.Of(sheet.WorstMiss):F1} mm: likely a misread row, ")
                + "or travels not counted from the state described.");
        }

        yield return new("counts-squared", "The ratio counts squared in the wheel rate: its doubt in per cent counts twice.");
    }
}
