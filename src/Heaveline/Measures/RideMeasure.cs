using Heaveline.Cars;
using Heaveline.Measures.Comfort;
using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>One number of a car on a random road, to be followed through its doubts.</summary>
/// <param name="Name">What it is, in words.</param>
/// <param name="Symbol">SI unit.</param>
/// <param name="Of">The number; not finite where there is none.</param>
public sealed record RideMeasure(string Name, string Symbol, Func<CarOnRoad, double> Of)
{
    /// <summary>Root mean square pitch acceleration, rad/s².</summary>
    public static RideMeasure PitchAcceleration { get; } = new("RMS pitch acceleration", "rad/s²", r => r.Response.Rms(RideSignal.PitchAcceleration));

    /// <summary>Root mean square pitch angle, rad.</summary>
    public static RideMeasure PitchAngle { get; } = new("RMS pitch angle", "rad", r => r.Response.Rms(RideSignal.Pitch));

    /// <summary>Root mean square heave acceleration of the centre of gravity, m/s².</summary>
    public static RideMeasure HeaveAcceleration { get; } = new("RMS heave acceleration", "m/s²", r => r.Response.Rms(RideSignal.HeaveAcceleration));

    /// <summary>Root mean square roll acceleration, rad/s²; none for a two-wheeler.</summary>
    public static RideMeasure RollAcceleration { get; } = new("RMS roll acceleration", "rad/s²", r => r.Response.Model.Rolls ? r.Response.Rms(RideSignal.RollAcceleration) : double.NaN);

    /// <summary>Root mean square suspension travel of an axle's left wheel about its mean, m.</summary>
    public static RideMeasure Travel(AxleEnd end) => new($"{Word(end)}: RMS travel", "m", r => r.Response.Rms(RideSignal.Travel(r.Response.Model, 2 * (int)end)));

    /// <summary>Root mean square change of the load of an axle's left tyre over its static load (–).</summary>
    public static RideMeasure LoadVariation(AxleEnd end) => new($"{Word(end)}: RMS change of tyre load", "", r => r.Response.LoadVariation(2 * (int)end));

    /// <summary>Vertical acceleration at a seat as it is, m/s².</summary>
    /// <param name="seat">Its name; a car without such a seat has no number.</param>
    public static RideMeasure SeatVertical(string seat) => At(seat, "RMS vertical", c => c.UnweightedVertical);

    /// <summary>Vertical acceleration at a seat by the standard's weighting Wk, m/s².</summary>
    /// <param name="seat">Its name.</param>
    public static RideMeasure SeatVerticalWeighted(string seat) => At(seat, "RMS vertical by Wk", c => c.Vertical);

    /// <summary>Pitch acceleration at a seat by the standard's weighting We, times its factor 0.4 m/rad [ISO 2631-1, quoted from memory], m/s².</summary>
    /// <param name="seat">Its name.</param>
    public static RideMeasure SeatPitch(string seat) => At(seat, "pitch by We, times 0.4 m/rad", c => 0.4 * c.Pitch);

    /// <summary>Fore-aft specific force at a seated head by Wd, m/s².</summary>
    /// <param name="seat">Its name.</param>
    public static RideMeasure HeadForeAft(string seat) => At(seat, "head fore-aft by Wd", c => c.HeadForeAft);

    /// <summary>Mean height that unequal dampers pull the car to, m; negative is down.</summary>
    public static RideMeasure MeanHeave { get; } = new("mean height, pulled by unequal dampers", "m", r => r.Response.MeanHeave);

    /// <summary>All of the above for both axles and every seat of a car.</summary>
    public static IReadOnlyList<RideMeasure> All(Car car) =>
    [
        PitchAcceleration, PitchAngle, HeaveAcceleration, RollAcceleration,
        .. car.Seats.SelectMany(s => new[] { SeatVertical(s.Name), SeatVerticalWeighted(s.Name), SeatPitch(s.Name), HeadForeAft(s.Name) }),
        Travel(AxleEnd.Front), LoadVariation(AxleEnd.Front), Travel(AxleEnd.Rear), LoadVariation(AxleEnd.Rear), MeanHeave,
    ];

    // A drawn car's seats are where its measurements leave them: the seat is looked up by its name.
    private static RideMeasure At(string seat, string what, Func<RandomComfort, double> of) => new($"{seat}: {what}", "m/s²", r => r.Comfort(seat) is { } comfort ? of(comfort) : double.NaN);

    private static string Word(AxleEnd end) => end == AxleEnd.Front ? "front" : "rear";
}
