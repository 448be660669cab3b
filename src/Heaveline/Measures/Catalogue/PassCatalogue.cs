using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Measures;

/// <summary>
/// All measures of a pass: what tables, pages, doubts, maps, reports and the glossary take their rows, words and units from. A new one is a line in
/// the list of its group.
/// </summary>
public static class PassCatalogue
{
    private static readonly ShownUnit OfPeak = In.PercentOf("its peak");

    /// <summary>
    /// The two numbers of a crossing that are told first: settling pitch and hit of an event; of a whole road its pitch and the pitch's acceleration.
    /// </summary>
    internal static Measure<Pass>[] PitchOver(Road road) => road.Event is null
        ? [WholePassCatalogue.RmsPitch, WholePassCatalogue.RmsPitchAcceleration]
        : [SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration];

    /// <summary>What a pass is.</summary>
    public static IReadOnlyList<Measure<Pass>> Drive { get; } =
    [
        CurvedMeasure.Of("speed", "speed", In.KilometresPerHour, 0, p => p.Speed, "Speed of the pass, the same from end to end."),
        CurvedMeasure.Of("recorded", "recorded", In.Seconds, 2, p => p.Last - p.First, "Length of the record."),
    ];

    /// <summary>The dipped beam; none without a lamp.</summary>
    public static IReadOnlyList<Measure<Pass>> Lamp { get; } =
    [
        CurvedMeasure.Of("lamp-highest", "beam drop at its highest", In.Percent, 2, HeadlampMeasures.HighestOf,
            "Least drop of the dipped beam per distance; below 0 it points above the horizon.") with
        {
            Better = Better.More,
            Uses = MeasureUse.Table | MeasureUse.BeforeAfter | MeasureUse.Short,
        },
        CurvedMeasure.Of("lamp-lowest", "beam drop at its lowest", In.Percent, 2, HeadlampMeasures.LowestOf,
            "Greatest drop of the dipped beam per distance."),
        new("lamp-flash-share", "beam in an oncoming eye at 1.20 m, 50 m off", In.PercentOf("time"), 0, p => Flash(p)?.Share ?? double.NaN,
            "Part of the time that the beam's upper edge is at or above an oncoming eye.") { Better = Better.Less },
        new("lamp-flashes", "flashes it gives there", In.Plain, 0, p => Flash(p)?.Flashes ?? double.NaN,
            "How often the beam's upper edge comes up to an oncoming eye.") { Better = Better.Less },
    ];

    /// <summary>How far off the computing itself is.</summary>
    public static IReadOnlyList<Measure<Pass>> OwnError { get; } =
    [
        new("error-pitch", "pitch angle: numerical error below", OfPeak, 4, p => p.Statistics.PitchError ?? double.NaN,
            "What the computed pitch is off by at most, 19 times out of 20, from the equations it solves: by a run in steps twice as long.")
            {
                Page = "decisions/0002-fixed-step-adams-bashforth.md",
            },
        new("error-load", "tyre load: numerical error below", OfPeak, 4, p => p.Statistics.TyreLoadError ?? double.NaN,
            "What the computed tyre loads are off by at most, 19 times out of 20, from the equations they solve: by a run in steps twice as long.")
            {
                Page = "decisions/0002-fixed-step-adams-bashforth.md",
            },
    ];

    /// <summary>Those by which a rule can be judged, each with its word. At a seat, of the worst one.</summary>
    public static IReadOnlyList<Measure<Pass>> Judges { get; } = [.. Of([SeatPlace.Worst], []).Where(m => m.Word is not null)];

    /// <summary>All of them at some places, in the order of a table.</summary>
    /// <param name="seats">The seats.</param>
    /// <param name="wheels">The wheels.</param>
    public static IReadOnlyList<Measure<Pass>> Of(IEnumerable<SeatPlace> seats, IEnumerable<WheelPlace> wheels) =>
    [
        .. Drive, .. SettlingCatalogue.All, .. HitCatalogue.All, .. WholePassCatalogue.All,
        .. seats.SelectMany(SeatCatalogue.Of), .. wheels.SelectMany(WheelCatalogue.Of), .. Lamp, .. OwnError,
    ];

    /// <summary>Those that are taken up somewhere, of the worst seat and of each axle's worse wheel.</summary>
    /// <param name="model">The car.</param>
    /// <param name="road">The road.</param>
    /// <param name="use">Where.</param>
    public static IReadOnlyList<Measure<Pass>> For(RideModel model, Road road, MeasureUse use)
    {
        ArgumentNullException.ThrowIfNull(model);
        return [.. Of(model.Car.Seats.Count > 0 ? [SeatPlace.Worst] : [], WheelPlace.Axles(model.Rolls)).Where(m => m.IsUsed(road, use))];
    }

    // What somebody coming the other way gets of the dipped beam.
    private static HeadlampFlash? Flash(Pass pass) => pass.Outcome == PassOutcome.Completed && HeadlampFlash.Of(pass, [50.0]) is [var at] ? at : null;
}
