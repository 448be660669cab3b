using System.Buffers.Binary;
using System.IO.Hashing;

namespace Heaveline.Files.Keeping;

/// <summary>
/// A kept piece as it lies in a file: lengths of piece and answer, CRC-32 of both lengths, piece, answer, CRC-32 of all before it; numbers with their
/// lowest byte first. CRC-32 as of ISO 3309 and ITU-T V.42.
/// </summary>
internal static class PieceRecord
{
    private const int Head = 12;
    private const int Foot = 4;

    // No piece and no answer is longer.
    private const int Longest = 1 << 28;

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

    /// <summary>The record that begins at a place; null where none does that is whole and sound.</summary>
    /// <param name="bytes">A file.</param>
    /// <param name="at">The place.</param>
    public static (byte[] Piece, byte[] Answer, int Length)? At(ReadOnlySpan<byte> bytes, int at)
    {
        var from = bytes[at..];
        if (from.Length < Head + Foot || BinaryPrimitives.ReadUInt32LittleEndian(from[8..]) != Crc32.HashToUInt32(from[..8]))
        {
            return null;
        }

        var (piece, answer) = (BinaryPrimitives.ReadInt32LittleEndian(from), BinaryPrimitives.ReadInt32LittleEndian(from[4..]));
        if (piece is < 0 or > Longest || answer is < 0 or > Longest || (long)Head + piece + answer + Foot > from.Length)
        {
            return null;
        }

        var body = Head + piece + answer;
        return BinaryPrimitives.ReadUInt32LittleEndian(from[body..]) == Crc32.HashToUInt32(from[..body])
            ? (from.Slice(Head, piece).ToArray(), from.Slice(Head + piece, answer).ToArray(), body + Foot)
            : null;
    }
}
