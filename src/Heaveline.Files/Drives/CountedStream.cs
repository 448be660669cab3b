namespace Heaveline.Files.Drives;

/// <summary>Bytes in memory, read only, that count how many of them were read.</summary>
/// <param name="bytes">The bytes.</param>
internal sealed class CountedStream(byte[] bytes) : MemoryStream(bytes, writable: false)
{
    /// <summary>How many bytes were read so far, those read twice counted twice.</summary>
    public long CountRead { get; private set; }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count)
    {
        // The spans of a stream that is derived come this way too.
        var read = base.Read(buffer, offset, count);
        CountRead += read;
        return read;
    }

    /// <inheritdoc/>
    public override int ReadByte()
    {
        var value = base.ReadByte();
        CountRead += value < 0 ? 0 : 1;
        return value;
    }
}
