using Heaveline.Pieces;

namespace Heaveline.Search;

/// <summary>Pieces of a search, asked for and answered as bytes.</summary>
/// <param name="doer">Does them.</param>
internal sealed class PiecesByBytes(IPassDoer doer) : IPieceDoer
{
    /// <inheritdoc/>
    public byte[] Do(byte[] piece, CancellationToken cancellation) => PieceBytes.Of(doer.Do(PieceBytes.PieceOf(piece), cancellation));

    /// <summary>Pieces of a search that go, as bytes, by way of another.</summary>
    /// <param name="doer">Does them.</param>
    /// <param name="through">Who stands between; null for nobody.</param>
    public static IPassDoer Through(IPassDoer doer, Func<IPieceDoer, IPieceDoer>? through) =>
        through is null ? doer : new PassesByBytes(through(new PiecesByBytes(doer)));

    private sealed class PassesByBytes(IPieceDoer doer) : IPassDoer
    {
        public IReadOnlyList<SetupRow> Do(Piece piece, CancellationToken cancellation) =>
            PieceBytes.RowsOf(doer.Do(PieceBytes.Of(piece), cancellation));
    }
}
