using Heaveline.Cars;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Cars;

/// <summary>
/// Warns of a damper table in which one row does not go with its neighbours, or whose velocities are none of a road. Limits: common practice, no
/// source.
/// </summary>
internal static class DamperSlips
{
    // Blow-off makes a damper softer with velocity; the hardest valves double or treble their slope.
    private const double MostGrowth = 8.0;

    // Road dampers see 0.5 to 3 m/s at most.
    private const double FastestRow = 6.0;

    /// <summary>Adds the warnings of one axle.</summary>
    /// <param name="law">Its damper.</param>
    /// <param name="damper">Where that stands in the file; null: nowhere.</param>
    /// <param name="reader">Receives them.</param>
    public static void Check(DamperLaw law, Node? damper, Reader reader)
    {
        if (law is not TableDamper table || damper is null)
        {
            return;
        }

        foreach (var (side, rows) in new[] { ("bump", table.Bump), ("rebound", table.Rebound) })
        {
            var slopes = Slopes(rows).ToList();
            for (var k = 1; k < slopes.Count; k++)
            {
                if (slopes[k] > MostGrowth * Math.Abs(slopes[k - 1]))
                {
                    reader.Warn(
                        Row(damper, side, rows, k).Place,
                        FormattableString.Invariant($"this row of {side} rises {slopes[k] / Math.Abs(slopes[k - 1]):F0} times as steeply ")
                        + "as the one before it.",
                        "Likely slip: a digit too many, or kN for N.");
                }
            }

            if (rows.At[^1] > FastestRow)
            {
                reader.Warn(
                    Row(damper, side, rows, rows.At.Count - 1) is { Items: [var velocity, ..] } last ? velocity.Place : damper.Place,
                    FormattableString.Invariant($"{side} goes up to {rows.At[^1]:G3} m/s; on the road a damper sees 0.5 to 3 m/s."),
                    "Likely slip: velocities in mm/s or cm/s written as m/s.");
            }
        }
    }

    /// <summary>Where a row of a table stands in the file.</summary>
    /// <param name="damper">The damper in the file.</param>
    /// <param name="side">The table's key.</param>
    /// <param name="rows">The table.</param>
    /// <param name="k">Which of its rows.</param>
    public static Node Row(Node damper, string side, ForceTable rows, int k)
    {
        var written = damper.At(side)?.Items ?? [];
        // A written zero is one row more than the table holds.
        return written.Count > 0 ? written[Math.Clamp(k + written.Count - rows.At.Count, 0, written.Count - 1)] : damper;
    }

    /// <summary>Slope of each piece from zero on, N s/m.</summary>
    public static IEnumerable<double> Slopes(ForceTable rows) => rows.At.Select((v, k) =>
        (rows.Force[k] - (k > 0 ? rows.Force[k - 1] : 0.0)) / (v - (k > 0 ? rows.At[k - 1] : 0.0)));
}
