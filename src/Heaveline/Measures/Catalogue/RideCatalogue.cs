using Heaveline.Cars;
using Heaveline.Measures.Comfort;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>Measures of a car on a random road in the long run.</summary>
public static class RideCatalogue
{
    private const MeasureUse Few = MeasureUse.Table | MeasureUse.Short;

    private const string Random = "theory/random-response.md";

    /// <summary>What the trade minds most.</summary>
    public static Measure<CarOnRoad> PitchAcceleration { get; } = Of("rms-pitch-acceleration", "RMS pitch acceleration", In.RadiansPerSecondSquared,
        3, r => r.Response.Rms(RideSignal.PitchAcceleration), "Root mean square pitch acceleration in the long run.") with
    {
        ShortLabel = "pitch acceleration, RMS, as it is",
        Uses = Few,
    };

    /// <summary>What bounces.</summary>
    public static Measure<CarOnRoad> HeaveAcceleration { get; } = Of("rms-heave-acceleration", "RMS heave acceleration", In.MetresPerSecondSquared,
        3, r => r.Response.Rms(RideSignal.HeaveAcceleration), "Root mean square vertical acceleration of the centre of gravity in the long run.") with
    {
        ShortLabel = "heave acceleration, RMS, as it is",
        Uses = Few,
    };

    /// <summary>What is lost of the grip at the wheel that loses most.</summary>
    public static Measure<CarOnRoad> WorstLoadVariation { get; } = Of("worst-load-variation", "RMS change of tyre load, the worst wheel",
        In.Percent, 1, r => (r.Response.Model.Rolls ? new[] { 0, 1, 2, 3 } : [0, 2]).Max(r.Response.LoadVariation),
        "Root mean square change of a tyre's load over its static load, at the wheel where it is greatest.") with
    {
        ShortLabel = "tyre load, RMS change over static, the worst wheel",
        Uses = MeasureUse.None,
    };

    /// <summary>All that a car has, in the order of a table.</summary>
    /// <param name="car">The car.</param>
    public static IReadOnlyList<Measure<CarOnRoad>> Of(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        return Of(car.Seats.Select(s => SeatPlace.Of(s.Name)));
    }

    /// <summary>All of them at some seats.</summary>
    public static IReadOnlyList<Measure<CarOnRoad>> Of(IEnumerable<SeatPlace> seats) =>
    [
        PitchAcceleration,
        Of("rms-pitch", "RMS pitch angle", In.Degrees, 3, r => r.Response.Rms(RideSignal.Pitch), "Root mean square pitch angle in the long run.") with
        { Uses = Few },
        HeaveAcceleration,
        Of("rms-roll-acceleration", "RMS roll acceleration", In.RadiansPerSecondSquared, 3,
            r => r.Response.Model.Rolls ? r.Response.Rms(RideSignal.RollAcceleration) : double.NaN,
            "Root mean square roll acceleration in the long run; none for a two-wheeler."),
        .. seats.SelectMany(Of),
        .. Of(AxleEnd.Front), .. Of(AxleEnd.Rear),
        Of("mean-heave", "mean height, pulled by unequal dampers", In.Millimetres, 1, r => r.Response.MeanHeave,
            "Mean height that dampers unequal in bump and rebound pull the car to; negative is down.") with
        {
            Better = Better.Neither,
            Nothing = 0.05e-3,
        },
    ];

    /// <summary>The measures of one seat.</summary>
    public static IReadOnlyList<Measure<CarOnRoad>> Of(SeatPlace place) =>
    [
        At(place, "vertical", "RMS vertical", c => c.UnweightedVertical, "Root mean square vertical acceleration at the hip point, as it is."),
        Vertical(place),
        Pitch(place),
        HeadForeAft(place),
    ];

    /// <summary>What the standard counts of the vertical.</summary>
    public static Measure<CarOnRoad> Vertical(SeatPlace place) => At(place, "vertical-wk", "RMS vertical by Wk", c => c.Vertical,
        "Root mean square vertical acceleration at the hip point by the weighting Wk of ISO 2631-1.") with
    {
        ShortLabel = $"vertical at the {Where(place, "seat")}, RMS, weighted by Wk",
        Uses = Few,
    };

    /// <summary>What the standard counts of the pitch.</summary>
    public static Measure<CarOnRoad> Pitch(SeatPlace place) => At(place, "pitch-we", "pitch by We, times 0.4 m/rad", c => c.CountedPitch,
        "Pitch acceleration by the weighting We of ISO 2631-1, times its factor 0.4 m/rad (8.2.2).") with
    { Uses = Few };

    /// <summary>What nods the head, by the standard's weighting.</summary>
    public static Measure<CarOnRoad> HeadForeAft(SeatPlace place) => At(place, "head-wd", "head fore-aft by Wd", c => c.HeadForeAft,
        "Fore-aft specific force at the head by the weighting Wd of ISO 2631-1; the head is no point of the standard.") with
    {
        ShortLabel = $"fore-aft at the {Where(place, "head")}, RMS, weighted by Wd",
        Uses = Few,
    };

    /// <summary>The measures of one axle; of its two wheels the worse counts.</summary>
    public static IReadOnlyList<Measure<CarOnRoad>> Of(AxleEnd end) =>
    [
        Of($"{CornerNames.Of(end)}-travel", $"{CornerNames.Of(end)}: RMS travel", In.Millimetres, 1,
            r => Worse(r, end, i => r.Response.Rms(RideSignal.Travel(r.Response.Model, i))),
            "Root mean square travel about its mean, at the axle's wheel that moves more.") with { Uses = Few },
        LoadVariation(end),
    ];

    /// <summary>What is lost of the grip.</summary>
    public static Measure<CarOnRoad> LoadVariation(AxleEnd end) =>
        Of($"{CornerNames.Of(end)}-load-variation", $"{CornerNames.Of(end)}: RMS change of tyre load", In.PercentOf("static"), 1,
            r => Worse(r, end, r.Response.LoadVariation),
            "Root mean square change of a tyre's load over its static load, at the axle's wheel where it is greater.") with
        { Uses = Few };

    private static double Worse(CarOnRoad ride, AxleEnd end, Func<int, double> of) =>
        WheelPlace.Axles(ride.Response.Model.Rolls)[(int)end].Worst(Better.Less, corner => of(corner));

    private static string Where(SeatPlace place, string what) => place == SeatPlace.First ? $"first {what}" : $"{what}, {place.Name}";

    private static Measure<CarOnRoad> Of(string key, string label, ShownUnit unit, int digits, Func<CarOnRoad, double> of, string says) =>
        new(key, label, unit, digits, of, says) { Better = Better.Less, Page = Random };

    private static Measure<CarOnRoad> At(SeatPlace place, string key, string what, Func<RandomComfort, double> of, string says) =>
        Of($"{place.Key}-{key}", $"{place.Name}: {what}", In.MetresPerSecondSquared, 3,
            r => r.Comfort(place) is { } comfort ? of(comfort) : double.NaN, says) with
        { Page = "theory/comfort.md" };
}
