using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Figures;

/// <summary>
/// A rule of the trade over speed: where it is true, where false, where it makes no difference, and where this car stands under each load.
/// </summary>
public static class RuleMapFigure
{
    /// <summary>The figure, page wide.</summary>
    /// <param name="map">The map.</param>
    /// <param name="standing">The car's own value by load state.</param>
    /// <param name="forms">
    /// The closed forms for the best frequency ratio, drawn beside it where the map's measure is of the settling; null on a map of another rule.
    /// </param>
    /// <exception cref="RefusedValueException">Fewer than two speeds or values.</exception>
    public static Figure Of(RuleMap map, IReadOnlyList<(string Load, double Value)> standing, RatioForms? forms = null)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(standing);
        var (speeds, values) = (map.Speeds, map.Axis.Values);
        var relative = new double[values.Count, speeds.Count];
        for (var j = 0; j < values.Count; j++)
        {
            for (var i = 0; i < speeds.Count; i++)
            {
                relative[j, i] = map.Relative(i, j);
            }
        }

        // A best value at the edge is only the end of what was tried: no curve there.
        double[] best = [.. map.Best.Select(b => b is { AtEdge: false } inside ? inside.Value : double.NaN)];
        var closed = forms is null ? null : ClosedFormCurves.Of(map, forms);
        return RatioMapFigure.Of(
            $"{map.Model.Car.Name}: is it true that {char.ToLowerInvariant(map.Axis.Claim[0])}{map.Axis.Claim[1..].TrimEnd('.')}?",
            Caption(map) + (closed?.Caption ?? ""),
            "",
            [.. speeds.Select(v => In.KilometresPerHour.Of(v))],
            [.. values],
            relative,
            "relative to " + map.Axis.Against,
            "",
            1.0,
            [.. standing.Select(s => (s.Load, s.Value))],
            best.Any(double.IsFinite) ? best : [],
            map.Axis.ShortName,
            map.Axis.Symbol,
            closed?.Curves ?? [],
            closed?.Marks ?? [],
            [.. Zones(map)]);
    }

    /// <summary>The same with the car as a point under each load instead of a line across, page wide.</summary>
    /// <param name="map">The map.</param>
    /// <param name="points">Where the car stands.</param>
    /// <param name="speed">Speed at which the points are drawn, m/s: what is turned does not hang on it.</param>
    /// <param name="forms">As above.</param>
    public static Figure WithPoints(RuleMap map, IReadOnlyList<RulePoint> points, double speed, RatioForms? forms = null)
    {
        ArgumentNullException.ThrowIfNull(points);
        var figure = Of(map, [], forms);
        var panel = (MapPanel)figure.Panels[0];
        // The map's own load stands at the speed, the others beside it, so that points do not cover one another.
        var (from, to) = (panel.Grid.Xs[0], panel.Grid.Xs[^1]);
        var at = Math.Clamp(In.KilometresPerHour.Of(speed), from, to);
        var beside = (at > 0.5 * (from + to) ? -0.04 : 0.04) * (to - from);
        Mark[] marks =
        [
            .. points.Where(p => p.Value >= panel.Grid.Ys[0] && p.Value <= panel.Grid.Ys[^1]).OrderBy(p => !p.IsMapped).Select((p, k) => new Mark
            {
                X = Math.Clamp(at + (k * beside), from, to),
                Y = p.Value,
                Low = p.Low,
                High = p.High,
                IsHere = p.IsMapped,
                Symbol = p.IsMapped ? MarkSymbol.Dot : MarkSymbol.Ring,
                Label = Words(p, map.Axis.Symbol),
            }),
        ];
        return figure with
        {
            AltText = figure.AltText + (marks.Length > 0 ? $" The car stands at {string.Join("; ", marks.Select(mark => mark.Label))}." : ""),
            Caption = figure.Caption.Replace(LinesAcross, PointsAt, StringComparison.Ordinal),
            Panels = [panel with { Marks = [.. panel.Marks, .. marks] }],
        };
    }

    private const string LinesAcross = "Lines across: this car under each load, on the map of the load named here.";

    private const string PointsAt =
        "Points: this car under each load, with the 90 % of its doubt as a bar; hollow: a load that has another map than this one.";

    private static string Words(RulePoint point, string symbol)
    {
        var unit = symbol.Length > 0 ? " " + symbol : "";
        var doubt = point is { Low: { } low, High: { } high } && high - low >= 0.01
            ? FormattableString.Invariant($" ± {0.5 * (high - low):F2}{unit}")
            : "";
        return FormattableString.Invariant($"{point.Load} {point.Value:F2}{unit}") + doubt;
    }

    // Points without a value against the reference that say something all the same.
    private static IEnumerable<MapZone> Zones(RuleMap map)
    {
        MapZone Of(RuleVerdict verdict, string label, bool? isBetter) => new()
        {
            Label = label,
            IsBetter = isBetter,
            Nodes =
            [
                .. from j in Enumerable.Range(0, map.Axis.Values.Count)
                   from i in Enumerable.Range(0, map.Speeds.Count)
                   select map.Verdict(i, j) == verdict,
            ],
        };
        MapZone[] all =
        [
            Of(RuleVerdict.OnlyThisPasses, $"{map.Axis.Plain.BottomsOut}, this passes", isBetter: true),
            Of(RuleVerdict.OnlyReferencePasses, $"this bottoms out, {map.Axis.Plain.Passes}", isBetter: false),
            Of(RuleVerdict.NeitherPasses, "both bottom out", isBetter: null),
        ];
        return all.Where(zone => zone.Nodes.Contains(true));
    }

    private static string Caption(RuleMap map) =>
        $"{FirstLetter.Raised(map.Measure.Name)}, over that of {map.Axis.Against}: "
        + $"below 1 it {(map.JudgesHit || map.JudgesSettling ? "pitches less" : "is better")} by this measure, and only by this one. "
        + $"Turned: {map.Axis.Name}. {FirstLetter.Raised(map.Model.Load.Name)}, over {map.Road.CaptionFor(map.Model.Rolls)}. "
        + $"{LinesAcross} Best: the value with the least of the measure; "
        + "not drawn where it lies at the edge.";
}
