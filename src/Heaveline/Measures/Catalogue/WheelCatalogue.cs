using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>Measures of a pass at each wheel: travel, stops, tyre load.</summary>
public static class WheelCatalogue
{
    private const MeasureUse Few = MeasureUse.Table | MeasureUse.BeforeAfter | MeasureUse.Short;

    private static readonly ShownUnit OfStatic = In.PercentOf("static");

    /// <summary>All of one place, in the order of a table.</summary>
    public static IReadOnlyList<Measure<Pass>> Of(WheelPlace place) =>
    [
        At(place, "bump", "most bump travel", In.Millimetres, 0, Better.Less, (p, i) => WheelMeasures.BumpOf(p, i),
            "Most travel of the wheel towards the body, from the reference state."),
        At(place, "bump-margin", "left to the bump stop", In.Millimetres, 0, Better.More, WheelMeasures.BumpMarginOf,
            "Least travel left before the bump stop touches; below 0: pressed by so much.") with { Uses = Few },
        At(place, "rebound-margin", "left to the rebound stop", In.Millimetres, 0, Better.More, WheelMeasures.ReboundMarginOf,
            "Least travel left before the rebound stop touches; below 0: pulled by so much."),
        At(
            place,
            "least-load",
            "least tyre load",
            OfStatic,
            0,
            Better.More,
            (p, i) => WheelMeasures.LeastLoadOf(p, i) / p.StandingLoad(i),
            "Least load of the tyre on the road over its load at trim.") with { Uses = Few },
        LoadVariation(place),
        At(place, "lift-off", "off the road", In.Seconds, 2, Better.Less, (p, i) => WheelMeasures.LiftOffOf(p, i),
            "Time without any load on the road.") with { Nothing = 0.0, Uses = MeasureUse.Table | MeasureUse.BeforeAfter },
    ];

    /// <summary>What is lost of the grip.</summary>
    public static Measure<Pass> LoadVariation(WheelPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return CurvedMeasure.Of($"{place.Key}-load-variation", $"{place.Name}: RMS change of tyre load", OfStatic, 0,
            p => p.Model.Rolls == place.HasSides ? place.Worst(Better.Less, i => WheelMeasures.LoadVariationOf(p, i)) : double.NaN,
            "Root mean square change of the tyre's load over its load at trim: over an obstacle in the 3 s from "
            + "first touch on, else from t = 0.") with
        {
            Better = Better.Less,
            Uses = MeasureUse.Table | MeasureUse.Comparison,
        };
    }

    private static Measure<Pass> At(
        WheelPlace place, string key, string what, ShownUnit unit, int digits, Better better,
        Func<MeasuredCurves, int, NotedNumber?> of, string says) =>
        CurvedMeasure.Of($"{place.Key}-{key}", $"{place.Name}: {what}", unit, digits,
            p => p.Model.Rolls == place.HasSides ? place.Worst(better, i => of(p, i) ?? double.NaN) : double.NaN,
            says) with
        { Better = better };
}
