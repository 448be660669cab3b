using System.Globalization;
using System.Text;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>The heights of a road as CSV, in the form that measured profiles are read in.</summary>
public static class HeightsCsv
{
    /// <summary>The text, in UTF-8: distance in m, height in mm of the one track or of the left and the right.</summary>
    /// <param name="road">The road.</param>
    public static byte[] Of(Road road)
    {
        ArgumentNullException.ThrowIfNull(road);
        var one = ReferenceEquals(road.Left, road.Right);
        var text = new StringBuilder(one ? "distance [m],height [mm]\n" : "distance [m],left [mm],right [mm]\n");
        foreach (var x in road.Left.Knots)
        {
            text.Append(x.ToString("G9", CultureInfo.InvariantCulture)).Append(',').Append(In.Millimetres.Of(road.Left.Height(x)).ToString(
                "F4", CultureInfo.InvariantCulture));
            if (!one)
            {
                text.Append(',').Append(In.Millimetres.Of(road.Right.Height(x)).ToString("F4", CultureInfo.InvariantCulture));
            }

            text.Append('\n');
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
