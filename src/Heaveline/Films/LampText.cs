using System.Globalization;
using System.Text;

namespace Heaveline.Films;

/// <summary>The text of a lamp's kept brightness: a line of what it is, one of the share of frames that saturate, then a row a frame, blank where
/// the lamp is not seen.</summary>
public static class LampText
{
    /// <summary>The first line.</summary>
    public const string First = "heaveline lamp track,1";

    /// <summary>The line of the columns' names.</summary>
    public const string Head = "time_s,brightness";

    /// <summary>The text.</summary>
    /// <param name="lamp">The brightness.</param>
    public static string Of(LampTrack lamp)
    {
        ArgumentNullException.ThrowIfNull(lamp);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{First}\nsaturated,{lamp.Saturated:R}\n{Head}\n");
        for (var i = 0; i < lamp.Times.Length; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{lamp.Times[i]:R},");
            text.Append(lamp.Brightness[i] > 0.0 ? string.Create(CultureInfo.InvariantCulture, $"{lamp.Brightness[i]:R}\n") : "\n");
        }

        return text.ToString();
    }
}
