using System.Buffers.Binary;
using System.IO.Hashing;
using Microsoft.Win32.SafeHandles;

namespace Heaveline.Files.Keeping;

/// <summary>
/// A kept piece as it lies in a file: lengths of piece and answer, CRC-32 of both lengths, piece, answer, CRC-32 of all before it; numbers with their
/// lowest byte first. One without an answer takes back the answer that came before. CRC-32 as of ISO 3309 and ITU-T V.42.
/// </summary>
internal static class PieceRecord
{
    private const int Head = 12;
    private const int Foot = 4;

    // No piece and no answer is longer.
    private const int Longest = 1 << 28;

    // Looked through at once where a file is damaged.
    private const int AtOnce = 1 << 20;

    /// <summary>A record.</summary>
    public static byte[] Of(byte[] piece, byte[] answer)
    {
        var record = new byte[Head + piece.Length + answer.Length + Foot];
        BinaryPrimitives.WriteInt32LittleEndian(record, piece.Length);
        BinaryPrimitives.WriteInt32LittleEndian(record.AsSpan(4), answer.Length);
        BinaryPrimitives.WriteUInt32LittleEndian(record.AsSpan(8), Crc32.HashToUInt32(record.AsSpan(0, 8)));
        piece.CopyTo(record, Head);
        answer.CopyTo(record, Head + piece.Length);
        BinaryPrimitives.WriteUInt32LittleEndian(record.AsSpan(record.Length - Foot), Crc32.HashToUInt32(record.AsSpan(0, record.Length - Foot)));
        return record;
    }

    /// <summary>The record that begins at a place of a file; null where none does that is whole and sound.</summary>
    /// <param name="file">The file.</param>
    /// <param name="at">The place.</param>
    /// <param name="end">Where the file ends.</param>
    public static (byte[] Piece, byte[] Answer, int Length)? At(SafeFileHandle file, long at, long end)
    {
        Span<byte> head = stackalloc byte[Head];
        if (end - at < Head + Foot || !Filled(file, head, at) || Lengths(head) is not var (piece, answer) || Head + piece + answer + Foot > end - at)
        {
            return null;
        }

        var record = new byte[Head + piece + answer + Foot];
        var body = record.AsSpan(0, record.Length - Foot);
        return Filled(file, record, at) && BinaryPrimitives.ReadUInt32LittleEndian(record.AsSpan(body.Length)) == Crc32.HashToUInt32(body)
            ? (record.AsSpan(Head, (int)piece).ToArray(), record.AsSpan(Head + (int)piece, (int)answer).ToArray(), record.Length)
            : null;
    }

    /// <summary>Whether a sound record begins anywhere from a place on.</summary>
    /// <param name="file">The file.</param>
    /// <param name="from">The place.</param>
    /// <param name="end">Where the file ends.</param>
    public static bool IsAnyFrom(SafeFileHandle file, long from, long end)
    {
        var part = new byte[AtOnce];
        for (var at = from; end - at >= Head + Foot; at += part.Length - Head + 1)
        {
            var seen = part.AsSpan(0, (int)Math.Min(part.Length, end - at));
            if (!Filled(file, seen, at))
            {
                return false;
            }

            for (var k = 0; k + Head <= seen.Length; k++)
            {
                if (Lengths(seen.Slice(k, Head)) is not null && At(file, at + k, end) is not null)
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>Fills bytes with those of a file; whether there are so many.</summary>
    public static bool Filled(SafeFileHandle file, Span<byte> bytes, long at)
    {
        while (bytes.Length > 0)
        {
            var count = RandomAccess.Read(file, bytes, at);
            if (count == 0)
            {
                return false;
            }

            bytes = bytes[count..];
            at += count;
        }

        return true;
    }

    // Of piece and answer, where the first bytes of a record are sound.
    private static (long Piece, long Answer)? Lengths(ReadOnlySpan<byte> head)
    {
        var (piece, answer) = (BinaryPrimitives.ReadInt32LittleEndian(head), BinaryPrimitives.ReadInt32LittleEndian(head[4..]));
        return piece is >= 0 and <= Longest && answer is >= 0 and <= Longest
            && BinaryPrimitives.ReadUInt32LittleEndian(head[8..]) == Crc32.HashToUInt32(head[..8])
            ? (piece, answer)
            : null;
    }
}
