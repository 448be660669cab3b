using Heaveline.Answers;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The numbers of a list of parts, a table a sort, a column a part.</summary>
internal static class PartsTables
{
    // The velocity at which dampers are told apart: what a hump asks of one at the pace of a village; a choice of ours.
    private const double Brisk = 0.3;

    // More columns nobody reads side by side; a choice of ours.
    private const int Most = 40;

    public static IReadOnlyList<FactTable> Of(PartsList list) =>
    [
        .. new[]
        {
            First<CoilPart>(list.Parts, Springs), First<DamperPart>(list.Parts, Dampers), First<BarPart>(list.Parts, Bars),
            First<StopPart>(list.Parts, Stops), First<TyrePart>(list.Parts, Tyres), First<LinkPart>(list.Parts, Links),
        }.Where(table => table.Rows.Count > 0),
    ];

    // Of a long list the first, with a word.
    private static FactTable First<T>(IEnumerable<Part> all, Func<IReadOnlyList<T>, string, FactTable> table)
        where T : Part
    {
        T[] parts = [.. all.OfType<T>()];
        return table(
            [.. parts.Take(Most)],
            parts.Length > Most ? FormattableString.Invariant($", the first {Most} of {parts.Length}") : "");
    }

    private static FactTable Springs(IReadOnlyList<CoilPart> parts, string which) => Priced(
        Table($"Springs{which}", parts)
            .Add("rate", "rate", "N/mm", "F1", parts.Select(part => Shown(In.NewtonsPerMillimetre, part.Rate)))
            .Add("free-length", "free length", "mm", "F0", parts.Select(part => Shown(In.Millimetres, part.FreeLength?.Si)))
            .Add("block-length", "block length", "mm", "F0", parts.Select(part => Shown(In.Millimetres, part.BlockLength?.Si))),
        parts);

    private static FactTable Dampers(IReadOnlyList<DamperPart> parts, string which) => Priced(
        Table($"Dampers, at 0.3 m/s, first and last click{which}", parts)
            .Add("bump-first", "bump, first click", "N", "F0", parts.Select(part => (double?)part.Clicks[0].Law.Whole.ForceAt(Brisk)))
            .Add("bump-last", "bump, last click", "N", "F0", parts.Select(part => (double?)part.Clicks[^1].Law.Whole.ForceAt(Brisk)))
            .Add("rebound-first", "rebound, first click", "N", "F0", parts.Select(part => (double?)-part.Clicks[0].Law.Whole.ForceAt(-Brisk)))
            .Add("rebound-last", "rebound, last click", "N", "F0", parts.Select(part => (double?)-part.Clicks[^1].Law.Whole.ForceAt(-Brisk)))
            .Add("stroke", "stroke", "mm", "F0", parts.Select(part => Shown(In.Millimetres, part.Stroke?.Si)))
            .Add("gas-force", "gas force", "N", "F0", parts.Select(part => part.GasForce?.Si)),
        parts);

    private static FactTable Bars(IReadOnlyList<BarPart> parts, string which) => Priced(
        Table($"Bars, at the wheel{which}", parts)
            .Add("stiffest", "stiffest hole", "N/mm", "F1", parts.Select(part => Shown(In.NewtonsPerMillimetre, part.Holes.Max(h => h.WheelRate.Si))))
            .Add("softest", "softest hole", "N/mm", "F1", parts.Select(part => Shown(In.NewtonsPerMillimetre, part.Holes.Min(h => h.WheelRate.Si)))),
        parts);

    private static FactTable Stops(IReadOnlyList<StopPart> parts, string which) => Priced(
        Table($"Bump stops{which}", parts)
            .Add("length", "length", "mm", "F0", parts.Select(part => Shown(In.Millimetres, part.Length.Si)))
            .Add("solid-after", "solid after", "mm", "F0", parts.Select(part => Shown(In.Millimetres, part.SolidAfter?.Si))),
        parts);

    private static FactTable Tyres(IReadOnlyList<TyrePart> parts, string which) => Priced(
        Table($"Tyres{which}", parts)
            .Add("rate", "rate", "N/mm", "F0", parts.Select(part => Shown(In.NewtonsPerMillimetre, part.Tyre.Rate.Si)))
            .Add("mass-change", "mass change", "kg", "F1", parts.Select(part => (double?)part.Unsprung.Si))
            .Add("radius-change", "radius change", "mm", "F1", parts.Select(part => Shown(In.Millimetres, part.RadiusChange?.Si))),
        parts);

    private static FactTable Links(IReadOnlyList<LinkPart> parts, string which) => Priced(
        Table($"Links{which}", parts)
            .Add("rate", "rate", "N/mm", "F1", parts.Select(part => Shown(In.NewtonsPerMillimetre, part.Link.Rate.Si)))
            .Add("damping", "damping", "N s/m", "F0", parts.Select(part => (double?)part.Link.Damping.Si)),
        parts);

    private static FactTable Table(string title, IReadOnlyList<Part> parts) => new(title, [.. parts.Select(part => part.Name)]);

    private static FactTable Priced(FactTable table, IReadOnlyList<Part> parts)
    {
        if (parts.Count == 0)
        {
            return table;
        }

        var priced = WithPrice(table, parts);
        if (parts.Any(part => part.Labour is not null))
        {
            priced = priced.Add("labour", "time to fit", "h", "0.##", parts.Select(part => Shown(In.Hours, part.Labour?.Si)));
        }

        return parts.FirstOrDefault(part => part.FittingPrice is not null)?.FittingPrice is { Currency: var currency }
            ? priced.Add("fitting-price", "price of fitting", currency, "F2", parts.Select(part => (double?)part.FittingPrice?.Value))
            : priced;
    }

    private static FactTable WithPrice(FactTable table, IReadOnlyList<Part> parts) =>
        table.Add(
            "price",
            "price of one",
            parts.FirstOrDefault(part => part.Price is { Currency.Length: > 0 })?.Price?.Currency ?? "–",
            "F2",
            parts.Select(part => (double?)part.Price?.Value));

    private static double? Shown(ShownUnit unit, double? si) => si is { } value ? unit.Of(value) : null;
}
