namespace Heaveline.Cli.Output;

/// <summary>
/// Standard output or the error stream as whoever started the program left it: closed, it says so in words. What the error stream does not take is
/// lost, since there is nowhere else to say it.
/// </summary>
/// <param name="inner">The stream.</param>
/// <param name="isForRemarks">Whether it is the error stream.</param>
internal sealed class StandardStream(Stream inner, bool isForRemarks) : Stream
{
    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        try
        {
            inner.Write(buffer);
        }
        catch (Exception failure) when (isForRemarks && (failure is UnauthorizedAccessException or IOException))
        {
            // Nobody listens any more, and that is no reason to fail.
        }
        catch (UnauthorizedAccessException closed)
        {
            throw new IOException("standard output is closed.", closed);
        }
    }

    public override void Flush()
    {
        // Nothing is held back here.
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
