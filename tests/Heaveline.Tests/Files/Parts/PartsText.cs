using System.Globalization;
using Heaveline.Cars;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Tests.Files.Parts;

/// <summary>A list of parts as a person would type it, every digit of it.</summary>
internal static class PartsText
{
    public static string Of(PartsList list) => string.Join('\n', [
        $"parts: {list.Name}", $"currency: {list.Currency}",
        .. Group("springs", list, (CoilPart p) => $"rate: {Amount(((LinearSpring)p.Law).Rate)}{Maybe("free-length", p.FreeLength)}"
            + Maybe("block-length", p.BlockLength) + Maybe("seat-diameter", p.SeatDiameter) + Maybe("allowed-stress", p.AllowedStress)),
        .. Group("dampers", list, (DamperPart p) => $"clicks: [{string.Join(", ", p.Clicks.Select(Click))}]{Maybe("gas-force", p.GasForce)}"
            + Maybe("stroke", p.Stroke)),
        .. Group("bars", list, (BarPart p) =>
            $"holes: [{string.Join(", ", p.Holes.Select(h => $"{{hole: {h.Name}, wheel-rate: {Amount(h.WheelRate)}}}"))}]"),
        .. Group("stops", list, (StopPart p) => $"length: {Amount(p.Length)}, curve: {Table(p.Curve, "m")}{Maybe("solid-after", p.SolidAfter)}"
            + $"{Maybe("stop-per-wheel", p.PerWheel)}, cut: [{string.Join(", ", p.Cuts.Select(Amount))}]"),
        .. Group("tyres", list, (TyrePart p) => $"rate: {Amount(p.Tyre.Rate)}, damping: {Amount(p.Tyre.Damping)}, contact-length: "
            + $"{Amount(p.Tyre.ContactLength)}, mass-change: {Amount(p.Unsprung)}{Maybe("radius-change", p.RadiusChange)}"),
        .. Group("links", list, (LinkPart p) => $"rate: {Amount(p.Link.Rate)}, damping: {Amount(p.Link.Damping)}, "
            + $"front-per-wheel: {Amount(p.Link.FrontRatio)}, rear-per-wheel: {Amount(p.Link.RearRatio)}"),
        "",
    ]);

    private static IEnumerable<string> Group<T>(string key, PartsList list, Func<T, string> own)
        where T : Part
    {
        T[] parts = [.. list.Parts.OfType<T>()];
        return parts.Length == 0 ? [] : [$"{key}:", .. parts.Select(part => $"  - {{part: {part.Name}{Common(part)}, {own(part)}}}")];
    }

    private static string Common(Part part) => string.Concat(
        part.Price is { } price ? $", price: {price.Value.ToString(CultureInfo.InvariantCulture)}" : "",
        part.Stock is { } stock ? $", stock: {stock}" : "",
        part.Only is { } end ? $", fits: {end.ToString().ToLowerInvariant()}" : "",
        part.Pieces is { } pieces ? $", pieces: {pieces}" : "");

    private static string Click(DamperClick click) =>
        $"{{click: {click.Number}, bump: {Table(click.Law.Bump, "m/s")}, rebound: {Table(click.Law.Rebound, "m/s")}}}";

    private static string Table(ForceTable table, string unit) =>
        $"[{string.Join(", ", table.At.Zip(table.Force, (at, force) => $"[{at:R} {unit}, {force:R} N]"))}]";

    private static string Maybe<T>(string key, Amount<T>? amount)
        where T : struct, IDimension => amount is { } given ? $", {key}: {Amount(given)}" : "";

    private static string Amount<T>(Amount<T> amount)
        where T : struct, IDimension =>
        FormattableString.Invariant($"{amount.Si:R} {T.Symbol}").TrimEnd()
        + (amount.Doubt.IsStated ? FormattableString.Invariant($" ± {amount.Doubt.HalfWidth:R} {T.Symbol}").TrimEnd() : "");
}
