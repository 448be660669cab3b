namespace Heaveline.Files.Drives;

/// <summary>
/// The check sum that archives keep of each file: cyclic redundancy check of 32 bits, polynomial 0xEDB88320 (ISO 3309, bits turned).
/// </summary>
internal static class Crc32
{
    private static readonly uint[] Steps = [.. Enumerable.Range(0, 256).Select(Step)];

    /// <summary>The check sum of bytes.</summary>
    /// <param name="bytes">All of them.</param>
    public static uint Of(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var value in bytes)
        {
            sum = Steps[(byte)(sum ^ value)] ^ (sum >> 8);
        }

        return ~sum;
    }

    private static uint Step(int value)
    {
        var sum = (uint)value;
        for (var bit = 0; bit < 8; bit++)
        {
            sum = (sum & 1) != 0 ? 0xEDB88320u ^ (sum >> 1) : sum >> 1;
        }

        return sum;
    }
}
