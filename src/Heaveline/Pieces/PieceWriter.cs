using System.Buffers;
using System.Buffers.Binary;

namespace Heaveline.Pieces;

/// <summary>Writes numbers into the bytes of a piece or of an answer, the lowest byte of each first.</summary>
internal sealed class PieceWriter
{
    private readonly ArrayBufferWriter<byte> bytes = new();

    /// <summary>A byte.</summary>
    public void Byte(byte value) => bytes.Write([value]);

    /// <summary>A whole number.</summary>
    public void Whole(int value)
    {
        BinaryPrimitives.WriteInt32LittleEndian(bytes.GetSpan(sizeof(int)), value);
        bytes.Advance(sizeof(int));
    }

    /// <summary>A long whole number.</summary>
    public void Long(long value)
    {
        BinaryPrimitives.WriteInt64LittleEndian(bytes.GetSpan(sizeof(long)), value);
        bytes.Advance(sizeof(long));
    }

    /// <summary>Numbers, and before them how many, every bit as it is.</summary>
    public void Numbers(ReadOnlySpan<double> values)
    {
        Whole(values.Length);
        foreach (var value in values)
        {
            BinaryPrimitives.WriteDoubleLittleEndian(bytes.GetSpan(sizeof(double)), value);
            bytes.Advance(sizeof(double));
        }
    }

    /// <summary>All that was written.</summary>
    public byte[] ToArray() => bytes.WrittenSpan.ToArray();
}
