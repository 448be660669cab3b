namespace Heaveline.Web.Serving;

/// <summary>Numbers of which each resembles the one before it, so laid out that they compress: a script's reading of it is in livefile.js.</summary>
internal static class Neighbours
{
    /// <summary>
    /// The differences from number to number, taken as integers; of them the lowest byte of each, then the next one of each, and so on.
    /// </summary>
    /// <param name="numbers">Little-endian numbers.</param>
    /// <param name="width">Bytes of a number, at most 8.</param>
    public static byte[] Of(ReadOnlySpan<byte> numbers, int width)
    {
        var (count, laid, before) = (numbers.Length / width, new byte[numbers.Length], 0UL);
        for (var i = 0; i < count; i++)
        {
            var value = 0UL;
            for (var p = width - 1; p >= 0; p--)
            {
                value = (value << 8) | numbers[(width * i) + p];
            }

            for (var (p, difference) = (0, unchecked(value - before)); p < width; p++, difference >>= 8)
            {
                laid[(p * count) + i] = (byte)difference;
            }

            before = value;
        }

        return laid;
    }
}
