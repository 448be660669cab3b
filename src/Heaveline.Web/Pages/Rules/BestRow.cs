using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Web.Pages.Rules;

/// <summary>The best value of a map at one speed, for the table that stands for the picture.</summary>
/// <param name="Speed">Speed, km/h.</param>
/// <param name="Best">The best value; null where it lies at the edge of those tried or nothing was computed.</param>
/// <param name="There">The measure there over that at the reference, or itself with its unit where the reference bottoms out; blank for none.</param>
/// <param name="Own">The same at the car's own value.</param>
/// <param name="Closed">The closed forms at this speed; null where there are none.</param>
internal sealed record BestRow(double Speed, double? Best, string There, string Own, RatioRule? Closed)
{
    // A page holds so many.
    private const int Rows = 11;

    /// <summary>Rows at even speeds of a map.</summary>
    public static IReadOnlyList<BestRow> Of(RuleMap map, IReadOnlyList<RatioRule>? closed)
    {
        ArgumentNullException.ThrowIfNull(map);
        var best = map.Best;
        int[] rows = [.. Enumerable.Range(0, Math.Min(Rows, map.Speeds.Count))
            .Select(k => (int)Math.Round(k * (map.Speeds.Count - 1.0) / (Math.Min(Rows, map.Speeds.Count) - 1.0))).Distinct()];
        return [.. rows.Select(i => new BestRow(
            In.KilometresPerHour.Of(map.Speeds[i]),
            best[i] is { AtEdge: false } inside ? inside.Value : null,
            best[i] is { AtEdge: false } there ? Printed(map, i, there.Measured) : "",
            Printed(map, i, map.OwnMeasured[i]),
            closed?[i]))];
    }

    private static string Printed(RuleMap map, int speed, double measured) =>
        !double.IsFinite(measured) ? ""
        : map.OnlyReferenceBottomsOut(speed)
            ? $"{Numeral.Of(map.Measure.Unit.Of(measured), $"F{map.Measure.Digits}")} {map.Measure.Unit.Symbol}".TrimEnd()
            : Numeral.Of(measured / map.Reference[speed], "F2");
}
