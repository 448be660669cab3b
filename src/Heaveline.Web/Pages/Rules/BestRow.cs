using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Web.Pages.Rules;

/// <summary>The best value of a map at one speed, for the table that stands for the picture.</summary>
/// <param name="Speed">Speed, km/h.</param>
/// <param name="Best">The best value; null where it lies at the edge of those tried or nothing was computed.</param>
/// <param name="Relative">The measure there over that at the reference (–).</param>
/// <param name="Own">The measure at the car's own value, the nearest one tried, over that at the reference (–); NaN where not computed.</param>
/// <param name="Closed">The closed forms at this speed; null where there are none.</param>
internal sealed record BestRow(double Speed, double? Best, double? Relative, double Own, RatioRule? Closed)
{
    // A page holds so many.
    private const int Rows = 11;

    /// <summary>Rows at even speeds of a map.</summary>
    public static IReadOnlyList<BestRow> Of(RuleMap map, IReadOnlyList<RatioRule>? closed)
    {
        ArgumentNullException.ThrowIfNull(map);
        var best = map.Best;
        var own = Nearest(map.Axis.Values, map.Own);
        int[] rows = [.. Enumerable.Range(0, Math.Min(Rows, map.Speeds.Count))
            .Select(k => (int)Math.Round(k * (map.Speeds.Count - 1.0) / (Math.Min(Rows, map.Speeds.Count) - 1.0))).Distinct()];
        return [.. rows.Select(i => new BestRow(
            In.KilometresPerHour.Of(map.Speeds[i]),
            best[i] is { AtEdge: false } inside ? inside.Value : null,
            best[i] is { AtEdge: false } there ? there.Relative : null,
            map.Relative(i, own),
            closed?[i]))];
    }

    private static int Nearest(IReadOnlyList<double> values, double value) =>
        Enumerable.Range(0, values.Count).MinBy(j => Math.Abs(values[j] - value));
}
