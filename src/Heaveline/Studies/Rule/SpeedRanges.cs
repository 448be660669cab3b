using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Speeds of a map in words: neighbours as a range, the rest one by one.</summary>
internal static class SpeedRanges
{
    /// <summary>How a speed in km/h is written, no finer than people drive.</summary>
    internal const string Format = "0.#";

    /// <summary>"from 30 to 50, at 70 and from 90 to 110 km/h".</summary>
    /// <param name="all">All speeds of the map, m/s, rising.</param>
    /// <param name="some">Those that are meant, at least one of them.</param>
    public static string Of(IReadOnlyList<double> all, IEnumerable<double> some)
    {
        var meant = some.ToHashSet();
        var parts = new List<string>();
        for (var i = 0; i < all.Count; i++)
        {
            var first = i;
            while (i < all.Count && meant.Contains(all[i]))
            {
                i++;
            }

            if (i > first)
            {
                parts.Add(i - first > 1 ? $"from {Number(all[first])} to {Number(all[i - 1])}" : $"at {Number(all[first])}");
            }
        }

        return And(parts) + " km/h";
    }

    /// <summary>A speed in km/h.</summary>
    public static string Number(double speed) => In.KilometresPerHour.Of(speed).ToString(Format, CultureInfo.InvariantCulture);

    /// <summary>"a, b and c".</summary>
    public static string And(IReadOnlyList<string> parts) => parts.Count > 1 ? $"{string.Join(", ", parts.SkipLast(1))} and {parts[^1]}" : parts[0];
}
