using System.Buffers.Binary;
using System.Text;

namespace Heaveline.Recording;

/// <summary>Bytes of a WebAssembly module as its binary format writes them (WebAssembly Core Specification, 2.0, W3C, chapter 5).</summary>
internal sealed class ModuleBytes
{
    public const byte Number = 0x7c;
    public const byte Pair = 0x7b;
    public const byte Integer = 0x7f;

    private readonly List<byte> bytes = [];

    public int Count => bytes.Count;

    public byte[] Written => [.. bytes];

    public ModuleBytes Add(params ReadOnlySpan<byte> values)
    {
        bytes.AddRange(values);
        return this;
    }

    public ModuleBytes Add(ModuleBytes other)
    {
        bytes.AddRange(other.bytes);
        return this;
    }

    /// <summary>An unsigned number, seven bits a byte.</summary>
    public ModuleBytes Unsigned(long value)
    {
        for (; value > 0x7f; value >>= 7)
        {
            bytes.Add((byte)(value | 0x80));
        }

        bytes.Add((byte)value);
        return this;
    }

    /// <summary>A signed one.</summary>
    public ModuleBytes Signed(long value)
    {
        for (; value is < -64 or > 63; value >>= 7)
        {
            bytes.Add((byte)(value | 0x80));
        }

        bytes.Add((byte)(value & 0x7f));
        return this;
    }

    public ModuleBytes Double(double value)
    {
        Span<byte> eight = stackalloc byte[sizeof(double)];
        BinaryPrimitives.WriteDoubleLittleEndian(eight, value);
        return Add(eight);
    }

    public ModuleBytes Name(string name)
    {
        var letters = Encoding.UTF8.GetBytes(name);
        return Unsigned(letters.Length).Add(letters);
    }

    /// <summary>An instruction on a register of two numbers.</summary>
    public ModuleBytes Wide(int instruction) => Add(0xfd).Unsigned(instruction);

    /// <summary>A section, with its length before it.</summary>
    public ModuleBytes Section(byte id, ModuleBytes body) => Add(id).Unsigned(body.Count).Add(body);
}
