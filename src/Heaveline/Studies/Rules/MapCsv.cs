using System.Globalization;
using System.Text;
using Heaveline.Measures;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>A map as CSV: one row a place, the units in the header.</summary>
public static class MapCsv
{
    /// <summary>The text, in UTF-8.</summary>
    /// <param name="map">The map.</param>
    public static byte[] Of(RuleMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        // Angles are read in degrees.
        var inRadians = map.Measure.Symbol.StartsWith("rad", StringComparison.Ordinal) && map.Measure != PassMeasure.HitAcceleration;
        var (factor, unit) = inRadians ? (180.0 / Math.PI, "deg" + map.Measure.Symbol[3..]) : (1.0, map.Measure.Symbol);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"speed [km/h],\"{map.Axis.Name}{(map.Axis.Symbol.Length > 0 ? $" [{map.Axis.Symbol}]" : "")}\",{map.Measure.Name} [{unit}],over that of {map.Axis.Against},verdict\n");
        for (var i = 0; i < map.Speeds.Count; i++)
        {
            for (var j = 0; j < map.Axis.Values.Count; j++)
            {
                text.Append(CultureInfo.InvariantCulture, $"{3.6 * map.Speeds[i]:G9},{map.Axis.Values[j]:G9},{factor * map.Measured[i][j]:G9},{map.Relative(i, j):G9},{map.Verdict(i, j)}\n");
            }
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
