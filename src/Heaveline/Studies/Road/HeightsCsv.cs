using System.Buffers;
using System.Globalization;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>The heights of a road as CSV, in the form that measured profiles are read in.</summary>
public static class HeightsCsv
{
    private const int Longest = 320;

    /// <summary>The text, in UTF-8: distance in m, height in mm of the one track or of the left and the right.</summary>
    /// <param name="road">The road.</param>
    public static byte[] Of(Road road)
    {
        ArgumentNullException.ThrowIfNull(road);
        var one = ReferenceEquals(road.Left, road.Right);
        var text = new ArrayBufferWriter<byte>(1 << 16);
        text.Write(one ? "distance [m],height [mm]\n"u8 : "distance [m],left [mm],right [mm]\n"u8);
        var (left, right) = (road.Left.Reader(), road.Right.Reader());
        foreach (var x in road.Left.Knots)
        {
            Write(text, x, "G9");
            left.At(x, out var height, out _);
            text.Write(","u8);
            Write(text, In.Millimetres.Of(height), "F4");
            if (!one)
            {
                right.At(x, out height, out _);
                text.Write(","u8);
                Write(text, In.Millimetres.Of(height), "F4");
            }

            text.Write("\n"u8);
        }

        return text.WrittenSpan.ToArray();
    }

    private static void Write(ArrayBufferWriter<byte> text, double number, string format)
    {
        // No double has more digits before its point than 309.
        number.TryFormat(text.GetSpan(Longest), out var written, format, CultureInfo.InvariantCulture);
        text.Advance(written);
    }
}
