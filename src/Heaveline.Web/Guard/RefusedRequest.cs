using System.IO.Pipelines;
using System.Text;
using Microsoft.AspNetCore.Connections;

namespace Heaveline.Web.Guard;

/// <summary>
/// Puts words into the answers to requests that the server itself cannot read: an address with a zero in it, a line too long, no name of the host.
/// They never come as far as the pages, and the server answers them with an empty body and none of the headers that go with every other answer.
/// </summary>
internal static class RefusedRequest
{
    private const string Sentence = "This request cannot be read: its address or one of its headers is not in order.";

    private const string TooLong =
        "This address is too long: up to 8 kB of it are read. Open the page without it and set there what it should show.";

    // A browser sends what any program on this machine has left with it for this name, whatever its port.
    private const string TooMuch = "The headers of this request are too long or too many: up to 32 kB and 100 of them are read. Clear the cookies "
        + "that the browser keeps for this address; other programs on this machine may have filled them.";

    /// <summary>Serves a connection whose empty refusals get words.</summary>
    public static async Task Serve(ConnectionContext connection, ConnectionDelegate next)
    {
        var plain = connection.Transport;
        connection.Transport = new Pipes(plain.Input, new Output(plain.Output));
        try
        {
            await next(connection);
        }
        finally
        {
            connection.Transport = plain;
        }
    }

    /// <summary>The head of an answer with words, or null where it is none of the server's own refusals.</summary>
    /// <param name="head">All the bytes that were written at once.</param>
    internal static byte[]? WithWords(ReadOnlySpan<byte> head)
    {
        if (!head.StartsWith("HTTP/1.1 4"u8) || !head.EndsWith("\r\n\r\n"u8) || head.IndexOf("\r\nContent-Length: 0\r\n"u8) < 0
            || head.IndexOf("\r\nContent-Security-Policy:"u8) >= 0)
        {
            return null;
        }

        var sentence = head.StartsWith("HTTP/1.1 414"u8) ? TooLong : head.StartsWith("HTTP/1.1 431"u8) ? TooMuch : Sentence;
        var headers = Encoding.ASCII.GetString(head)[..^2].Replace(
            "\r\nContent-Length: 0\r\n", FormattableString.Invariant($"\r\nContent-Length: {sentence.Length}\r\n"), StringComparison.Ordinal);
        return Encoding.ASCII.GetBytes(
            $"{headers}Content-Type: text/plain; charset=utf-8\r\nCache-Control: no-store\r\nX-Content-Type-Options: nosniff\r\n"
            + $"X-Frame-Options: DENY\r\nContent-Security-Policy: {PageHeaders.Policy}\r\n\r\n{sentence}");
    }

    private sealed record Pipes(PipeReader Input, PipeWriter Output) : IDuplexPipe;

    private sealed class Output(PipeWriter inner) : PipeWriter
    {
        private Memory<byte> lent;

        public override bool CanGetUnflushedBytes => inner.CanGetUnflushedBytes;

        public override long UnflushedBytes => inner.UnflushedBytes;

        public override Memory<byte> GetMemory(int sizeHint = 0) => lent = inner.GetMemory(sizeHint);

        public override Span<byte> GetSpan(int sizeHint = 0) => GetMemory(sizeHint).Span;

        public override void Advance(int bytes)
        {
            if (WithWords(lent.Span[..bytes]) is { } words && words.Length <= lent.Length)
            {
                words.CopyTo(lent);
                bytes = words.Length;
            }

            inner.Advance(bytes);
            lent = lent[bytes..];
        }

        public override ValueTask<FlushResult> FlushAsync(CancellationToken cancellationToken = default) => inner.FlushAsync(cancellationToken);

        public override void CancelPendingFlush() => inner.CancelPendingFlush();

        public override void Complete(Exception? exception = null) => inner.Complete(exception);

        public override ValueTask CompleteAsync(Exception? exception = null) => inner.CompleteAsync(exception);
    }
}
