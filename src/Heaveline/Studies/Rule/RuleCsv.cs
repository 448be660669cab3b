using System.Globalization;
using System.Text;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>A map of a rule as CSV: one row a point, the units in the header.</summary>
public static class RuleCsv
{
    /// <summary>The text, in UTF-8.</summary>
    /// <param name="map">The map.</param>
    public static byte[] Of(RuleMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        var (axis, measure) = (map.Axis, map.Measure);
        var unit = axis.Symbol.Length > 0 ? $" [{axis.Symbol}]" : "";
        var text = new StringBuilder(
            $"speed [km/h],\"{axis.Name}{unit}\",{measure.Name} [{measure.Unit.Plain}],over that of {axis.Against},verdict\n");
        for (var i = 0; i < map.Speeds.Count; i++)
        {
            for (var j = 0; j < axis.Values.Count; j++)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"{In.KilometresPerHour.Of(map.Speeds[i]):G9},{axis.Values[j]:G9},{Cell(measure.Unit.Of(map.Measured[i][j]))},");
                text.Append(CultureInfo.InvariantCulture, $"{Cell(map.Relative(i, j))},{map.Verdict(i, j)}\n");
            }
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    // Empty where there is no number: the verdict beside it says so.
    private static string Cell(double value) => double.IsFinite(value) ? value.ToString("G9", CultureInfo.InvariantCulture) : "";
}
