using System.Buffers.Binary;
using System.Text;
using Heaveline.Files.Drives;

namespace Heaveline.Press.Paper;

/// <summary>
/// Adds to a PNG what the encoder leaves out: its size on paper and its texts [W3C Portable Network Graphics, chunks pHYs and iTXt].
/// </summary>
internal static class PngChunks
{
    // Signature of 8 bytes, then the header chunk: length, name, 13 bytes, checksum. Both new kinds must stand before the picture data.
    private const int AfterHeader = 8 + 4 + 4 + 13 + 4;

    /// <summary>The picture with the new chunks behind its header.</summary>
    public static byte[] WithPaperSize(byte[] png, double dotsPerInch, IEnumerable<(string Keyword, string Text)> texts)
    {
        using var whole = new MemoryStream();
        whole.Write(png.AsSpan(0, AfterHeader));

        var size = new byte[9];
        var perMetre = (uint)Math.Round(dotsPerInch / 0.0254);
        BinaryPrimitives.WriteUInt32BigEndian(size, perMetre);
        BinaryPrimitives.WriteUInt32BigEndian(size.AsSpan(4), perMetre);
        size[8] = 1;
        Write(whole, "pHYs", size);
        foreach (var (keyword, text) in texts)
        {
            // Keyword, end; not compressed, method 0; no language, end; no translated keyword, end; the text in UTF-8.
            Write(whole, "iTXt", [.. Encoding.Latin1.GetBytes(keyword), 0, 0, 0, 0, 0, .. Encoding.UTF8.GetBytes(text)]);
        }

        whole.Write(png.AsSpan(AfterHeader));
        return whole.ToArray();
    }

    private static void Write(MemoryStream whole, string name, ReadOnlySpan<byte> content)
    {
        byte[] checkedPart = [.. Encoding.ASCII.GetBytes(name), .. content];
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(number, (uint)content.Length);
        whole.Write(number);
        whole.Write(checkedPart);
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc32.Of(checkedPart));
        whole.Write(number);
    }
}
