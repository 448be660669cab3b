using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;

namespace Heaveline.Web.Frame;

/// <summary>
/// A TrueType face in the form that browsers load (WOFF 2.0, W3C Recommendation): its tables as they are, one behind the other, in one Brotli stream.
/// </summary>
internal static class CompressedFace
{
    private const int HeaderLength = 48;

    private const int OwnTag = 63;

    // Table 3 of the Recommendation, as far as a TrueType face of text goes: a table's place here stands for its name.
    private static readonly string[] Known =
    [
        "cmap", "head", "hhea", "hmtx", "maxp", "name", "OS/2", "post", "cvt ", "fpgm", "glyf", "loca", "prep", "CFF ", "VORG", "EBDT", "EBLC",
        "gasp", "hdmx", "kern", "LTSH", "PCLT", "VDMX", "vhea", "vmtx", "BASE", "GDEF", "GPOS", "GSUB",
    ];

    /// <summary>The face, compressed.</summary>
    /// <param name="face">A TrueType file.</param>
    /// <exception cref="InvalidDataException">It is not one.</exception>
    public static byte[] Of(ReadOnlySpan<byte> face)
    {
        const int directory = 12, entry = 16;
        if (face.Length < directory || BinaryPrimitives.ReadUInt32BigEndian(face) != 0x00010000)
        {
            throw new InvalidDataException("This is no TrueType face.");
        }

        var count = BinaryPrimitives.ReadUInt16BigEndian(face[4..]);
        var tables = new List<(string Tag, byte[] Bytes)>();
        for (var i = 0; i < count; i++)
        {
            var at = face.Slice(directory + (entry * i), entry);
            var (from, length) = ((int)BinaryPrimitives.ReadUInt32BigEndian(at[8..]), (int)BinaryPrimitives.ReadUInt32BigEndian(at[12..]));
            tables.Add((Encoding.ASCII.GetString(at[..4]), face.Slice(from, length).ToArray()));
        }

        // Where the outlines lie is told right behind the outlines (5.3).
        var places = tables.Single(table => table.Tag == "loca");
        tables.Remove(places);
        tables.Insert(tables.FindIndex(table => table.Tag == "glyf") + 1, places);

        using var names = new MemoryStream();
        using var packed = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            foreach (var (tag, bytes) in tables)
            {
                Name(names, tag, bytes.Length);
                brotli.Write(bytes);
            }
        }

        var end = HeaderLength + (int)names.Length + (int)packed.Length;
        var made = new byte[Padded(end)];
        BinaryPrimitives.WriteUInt32BigEndian(made, 0x774F4632);
        BinaryPrimitives.WriteUInt32BigEndian(made.AsSpan(4), 0x00010000);
        BinaryPrimitives.WriteUInt32BigEndian(made.AsSpan(8), (uint)made.Length);
        BinaryPrimitives.WriteUInt16BigEndian(made.AsSpan(12), count);
        BinaryPrimitives.WriteUInt32BigEndian(made.AsSpan(16), (uint)(directory + (entry * count) + tables.Sum(table => Padded(table.Bytes.Length))));
        BinaryPrimitives.WriteUInt32BigEndian(made.AsSpan(20), (uint)packed.Length);
        names.ToArray().CopyTo(made, HeaderLength);
        packed.ToArray().CopyTo(made, HeaderLength + (int)names.Length);
        return made;
    }

    private static int Padded(int length) => (length + 3) & ~3;

    // Flags, the tag where it is none of those known, the length (4.1). Outlines and their places are said to be as they were: 3, of all others 0.
    private static void Name(Stream names, string tag, int length)
    {
        var known = Array.IndexOf(Known, tag);
        var asItWas = tag is "glyf" or "loca" ? 3 : 0;
        names.WriteByte((byte)((known < 0 ? OwnTag : known) | (asItWas << 6)));
        if (known < 0)
        {
            names.Write(Encoding.ASCII.GetBytes(tag));
        }

        for (var shift = 28; shift >= 0; shift -= 7)
        {
            if (shift == 0 || length >> shift > 0)
            {
                names.WriteByte((byte)(((length >> shift) & 0x7F) | (shift > 0 ? 0x80 : 0)));
            }
        }
    }
}
