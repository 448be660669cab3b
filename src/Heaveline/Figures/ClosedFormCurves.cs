using System.Collections.Immutable;
using Heaveline.Measures;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Figures;

/// <summary>
/// The closed forms for the best frequency ratio as curves over a ratio map, and the speeds at which they give the car's own ratio.
/// </summary>
/// <param name="Curves">The curves of the map's own window, named.</param>
/// <param name="Marks">Where the car's own ratio meets them.</param>
/// <param name="Caption">What they are, for the caption.</param>
internal sealed record ClosedFormCurves(ImmutableArray<Trace> Curves, ImmutableArray<Mark> Marks, string Caption)
{
    // Enough for a hyperbola to look round, however few speeds the map has.
    private const int Places = 121;

    /// <summary>The form of the window that the map's measure looks at; null where none is known for it.</summary>
    public static ClosedFormCurves? Of(RuleMap map, RatioForms forms) =>
        map.Measure == SettlingCatalogue.LatePitch ? Late(map, forms)
        : map.Measure == SettlingCatalogue.RmsPitch ? InStep(map, forms)
        : null;

    private static ClosedFormCurves Late(RuleMap map, RatioForms forms)
    {
        double? speed = map.Own > 1.0 ? RatioRule.LateCoefficient * forms.Ends.Wheelbase * forms.MeanFrequency / (map.Own - 1.0) : null;
        return new(
            [Curve(map, "1 + 0.6 L f/V", forms.Late, Dash.Dashed, 1.4)],
            Shown(map, [(speed, "")]),
            " 1 + 0.6 L f/V: the closed form for this window, wheelbase L, mean frequency f, speed V; of linear cars with a dynamic index near 1, "
            + "read off our own runs. The mark: where it gives this car's ratio.");
    }

    private static ClosedFormCurves InStep(RuleMap map, RatioForms forms)
    {
        var marks = Shown(map, [(forms.Ends.SuitedSpeed, "in step: ")]);
        return new(
            [
                Curve(map, "in step, 0.7 cycles", v => forms.InStep(v, Coincidence.SuitedCycles), Dash.Dashed, 1.4),
                Curve(map, "", v => forms.InStep(v, Coincidence.FewestCycles), Dash.Dotted, 0.9),
                Curve(map, "", v => forms.InStep(v, Coincidence.MostCycles), Dash.Dotted, 0.9),
            ],
            marks,
            " In step: the ratio at which front and rear swing alike again 0.7 cycles after the bump (dashed), 0.6 and 0.8 cycles after it "
            + "(dotted, 0.6 the upper); of linear cars with a dynamic index near 1, read off our own runs."
            + (marks.IsEmpty ? "" : " The mark: the speed at which this car's own ends do so."));
    }

    private static Trace Curve(RuleMap map, string name, Func<double, double> of, Dash dash, double width)
    {
        var (from, to) = (map.Speeds[0], map.Speeds[^1]);
        double[] speeds = [.. Enumerable.Range(0, Places).Select(i => from + ((to - from) * i / (Places - 1)))];
        return Trace.From(
            name, [.. speeds.Select(v => In.KilometresPerHour.Of(v))], [.. speeds.Select(of)], Pen.Of(Ink.Second, dash) with { Width = width });
    }

    private static ImmutableArray<Mark> Shown(RuleMap map, IEnumerable<(double? Speed, string Name)> places) =>
    [
        .. from place in places
           let speed = place.Speed ?? double.NaN
           where speed >= map.Speeds[0] && speed <= map.Speeds[^1] && map.Own >= map.Axis.Values[0] && map.Own <= map.Axis.Values[^1]
           select new Mark
           {
               X = In.KilometresPerHour.Of(speed),
               Y = map.Own,
               Label = FormattableString.Invariant($"{place.Name}{In.KilometresPerHour.Of(speed):F0} km/h"),
               Ink = Ink.Second,
           },
    ];
}
