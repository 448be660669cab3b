using Heaveline.Cars;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>Measures of a pass at each seat.</summary>
public static class SeatCatalogue
{
    /// <summary>All of one place, in the order of a table.</summary>
    public static IReadOnlyList<Measure<Pass>> Of(SeatPlace place) =>
    [
        PeakVertical(place),
        At(place, "rms-vertical", "RMS vertical", In.MetresPerSecondSquared, 2, (p, s) => SeatMeasures.Of(p, s).RmsVertical,
            "Root mean square vertical acceleration at the hip point, as it is."),
        At(place, "peak-head", "greatest fore-aft at the head", In.MetresPerSecondSquared, 2, (p, s) => SeatMeasures.Of(p, s).PeakHeadForeAft,
            "Largest fore-aft specific force at the head: h·θ̈ − g·θ."),
    ];

    /// <summary>Largest vertical acceleration.</summary>
    public static Measure<Pass> PeakVertical(SeatPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return At(place, "peak-vertical", "greatest vertical", In.MetresPerSecondSquared, 2, (p, s) => SeatMeasures.Of(p, s).PeakVertical,
            "Largest vertical acceleration at the hip point.") with
        {
            ShortLabel = $"{place.Name}: largest vertical acceleration",
        };
    }

    // Of several seats the worst; none where the car has no such seat.
    private static Measure<Pass> At(SeatPlace place, string key, string what, ShownUnit unit, int digits, Func<Pass, Seat, double> of, string says) =>
        new($"{place.Key}-{key}", $"{place.Name}: {what}", unit, digits,
            p => place.Of(p.Model.Car).Select(s => of(p, s)).DefaultIfEmpty(double.NaN).Max(), says)
        {
            Better = Better.Less,
            WhyNone = car => place.Of(car).Any() ? null : "The car file gives no such seat.",
        };
}
