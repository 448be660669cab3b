using System.Globalization;
using System.Text;
using Heaveline.Quantities;
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
        var unit = map.Measure.Unit;
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"speed [km/h],\"{map.Axis.Name}{(map.Axis.Symbol.Length > 0 ? $" [{map.Axis.Symbol}]" : "")}\",{map.Measure.Name} [{unit.Plain}],over that of {map.Axis.Against},verdict\n");
        for (var i = 0; i < map.Speeds.Count; i++)
        {
            for (var j = 0; j < map.Axis.Values.Count; j++)
            {
                text.Append(CultureInfo.InvariantCulture, $"{In.KilometresPerHour.Of(map.Speeds[i]):G9},{map.Axis.Values[j]:G9},{unit.Of(map.Measured[i][j]):G9},{map.Relative(i, j):G9},{map.Verdict(i, j)}\n");
            }
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
