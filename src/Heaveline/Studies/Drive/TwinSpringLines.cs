using Heaveline.Cars;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>A scaled spring as a variant of its car file states it: in the file's own terms, but a rate in place of sizes.</summary>
internal static class TwinSpringLines
{
    /// <summary>The lines of the group.</summary>
    /// <param name="spring">The scaled spring.</param>
    /// <param name="doubt">Its doubt, as "5.0 %".</param>
    /// <exception cref="NotSupportedException">A law that no file has.</exception>
    public static IReadOnlyList<string> Of(Spring spring, string doubt) => spring.Law switch
    {
        // A rate at the wheel is a rate at a spring that moves with the wheel.
        LinearSpring linear =>
        [
            Text($"rate: {In.NewtonsPerMillimetre.Of(linear.Rate.Si):F2} N/mm ± {doubt}"),
            .. spring.MotionRatio == MotionRatio.One && spring.Swap is null ? ["spring-per-wheel: 1"] : Array.Empty<string>(),
        ],
        TableSpring table =>
        [
            "table: [" + string.Join(", ", table.Table.At.Zip(table.Table.Force, (x, f) => Text($"[{In.Millimetres.Of(x):F2} mm, {f:F1} N]"))) + "]",
            $"table-doubt: ± {doubt}",
        ],
        GasSpring gas => ["gas:", Text($"  volume: {gas.Volume.Si:G5} m³ ± {doubt}")],
        _ => throw new NotSupportedException($"No way is known to state a {spring.Law.GetType().Name}."),
    };
}
