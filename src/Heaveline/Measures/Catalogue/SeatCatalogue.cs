using Heaveline.Cars;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>Measures of a pass at each seat.</summary>
public static class SeatCatalogue
{
    /// <summary>All of one place, in the order of a table.</summary>
    public static IReadOnlyList<Measure<Pass>> Of(SeatPlace place) =>
    [
        PeakVertical(place),
        At(place, "rms-vertical", "RMS vertical", In.MetresPerSecondSquared, 2, SeatMeasures.RmsVerticalOf,
            "Root mean square vertical acceleration at the hip point, as it is: over an obstacle in the 3 s from first touch on, else from t = 0."),
        At(place, "peak-head", "greatest fore-aft at the head", In.MetresPerSecondSquared, 2, SeatMeasures.PeakHeadForeAftOf,
            "Largest fore-aft specific force at the head: h·θ̈ − g·θ.") with { Uses = MeasureUse.Table | MeasureUse.Short },
        At(place, "peak-jerk", "greatest vertical jerk", new("m/s³", "m/s³", 1.0), 0, PeakJerk,
            "Largest rate of the vertical acceleration at the hip point, a mean over 10 ms: where a force jumps the rate itself has no bound.") with
        {
            Name = $"greatest vertical jerk of the {place.Name}",
            Uses = MeasureUse.Everywhere,
            Word = "jerk",
        },
    ];

    /// <summary>Largest vertical acceleration.</summary>
    public static Measure<Pass> PeakVertical(SeatPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return At(place, "peak-vertical", "greatest vertical", In.MetresPerSecondSquared, 2, SeatMeasures.PeakVerticalOf,
            "Largest vertical acceleration at the hip point.") with
        {
            ShortLabel = $"{place.Name}: largest vertical acceleration",
            Uses = MeasureUse.Table | MeasureUse.Short,
        };
    }

    // (a(t + h) − a(t − h))/2h of the recorded samples with h = 5 ms, whatever the sampling. A swing of f hertz comes out low by (2πf·h)²/6: 0.04 %
    // at 1.5 Hz, 1.6 % at 10 Hz, 3.7 % at 15 Hz; a jump of the acceleration by Δa comes out as Δa/2h.
    private static NotedNumber PeakJerk(MeasuredCurves pass, Seat seat)
    {
        const double half = 5e-3;
        var apart = Math.Max(1, (int)Math.Round(half / pass.SampleStep));
        return pass.Farthest(SeatMeasures.Vertical(pass.Model, seat), 2 * apart) / (2.0 * apart * pass.SampleStep);
    }

    // Of several seats the worst; none where the car has no such seat.
    private static Measure<Pass> At(
        SeatPlace place, string key, string what, ShownUnit unit, int digits, Func<MeasuredCurves, Seat, NotedNumber> of, string says) =>
        CurvedMeasure.Of($"{place.Key}-{key}", $"{place.Name}: {what}", unit, digits,
            p => NotedNumber.Greatest(place.Of(p.Model.Car).Select(s => of(p, s))), says) with
        {
            Better = Better.Less,
            WhyNone = car => place.Of(car).Any() ? null : "The car file gives no such seat.",
        };
}
