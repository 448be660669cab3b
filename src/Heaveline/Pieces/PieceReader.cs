using System.Buffers.Binary;

namespace Heaveline.Pieces;

/// <summary>Reads numbers out of the bytes of a piece or of an answer, the lowest byte of each first.</summary>
/// <param name="bytes">The bytes.</param>
internal ref struct PieceReader(ReadOnlySpan<byte> bytes)
{
    private ReadOnlySpan<byte> left = bytes;

    /// <summary>The next byte.</summary>
    /// <exception cref="FormatException">None is left.</exception>
    public byte Byte() => Take(sizeof(byte))[0];

    /// <summary>The next whole number.</summary>
    /// <exception cref="FormatException">None is left.</exception>
    public int Whole() => BinaryPrimitives.ReadInt32LittleEndian(Take(sizeof(int)));

    /// <summary>The next long whole number.</summary>
    /// <exception cref="FormatException">None is left.</exception>
    public long Long() => BinaryPrimitives.ReadInt64LittleEndian(Take(sizeof(long)));

    /// <summary>How many follow.</summary>
    /// <param name="least">Fewest bytes of each.</param>
    /// <exception cref="FormatException">So many cannot be left.</exception>
    public int Count(int least) => Whole() is var count && count >= 0 && count <= left.Length / least ? count : throw Short();

    /// <summary>The next numbers, every bit as it was.</summary>
    /// <exception cref="FormatException">They are not all there.</exception>
    public double[] Numbers()
    {
        var numbers = new double[Count(sizeof(double))];
        for (var k = 0; k < numbers.Length; k++)
        {
            numbers[k] = BinaryPrimitives.ReadDoubleLittleEndian(Take(sizeof(double)));
        }

        return numbers;
    }

    /// <summary>Says that this is all.</summary>
    /// <exception cref="FormatException">Something follows.</exception>
    public readonly void End()
    {
        if (left.Length > 0)
        {
            throw Short();
        }
    }

    private ReadOnlySpan<byte> Take(int count)
    {
        if (left.Length < count)
        {
            throw Short();
        }

        var taken = left[..count];
        left = left[count..];
        return taken;
    }

    private static FormatException Short() => new("The bytes are those of no piece, or of no answer to one.");
}
