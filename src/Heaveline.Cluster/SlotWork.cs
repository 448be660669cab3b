using Heaveline.Pieces;

namespace Heaveline.Cluster;

/// <summary>What the places of this machine have in common: who does the pieces, on which threads.</summary>
internal sealed class SlotWork : IDisposable
{
    private readonly OwnThreads threads;
    private volatile IPieceDoer? doer;

    /// <param name="count">How many threads.</param>
    public SlotWork(int count) => threads = new OwnThreads(count);

    /// <summary>Whether the study was read, and pieces are done.</summary>
    public bool IsReady => doer is not null;

    /// <summary>From now on pieces are done.</summary>
    public void Begin(IPieceDoer own) => doer = own;

    /// <summary>Does a piece.</summary>
    public Task<byte[]> Do(byte[] piece) => doer is { } own
        ? threads.Run(() => own.Do(piece, CancellationToken.None))
        : Task.FromException<byte[]>(new SiloUnavailableException("This machine does no pieces."));

    /// <inheritdoc/>
    public void Dispose() => threads.Dispose();
}
