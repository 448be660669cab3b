namespace Heaveline.Web.Serving;

/// <summary>What a request sends, read by a thread that waits for it: for writers that write whole files or none.</summary>
/// <param name="body">What is sent.</param>
/// <param name="gone">Whoever sends it has gone.</param>
internal sealed class BlockingBody(Stream body, CancellationToken gone) : Stream
{
    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override int Read(byte[] buffer, int offset, int count) =>
        body.ReadAsync(buffer.AsMemory(offset, count), gone).AsTask().GetAwaiter().GetResult();

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
