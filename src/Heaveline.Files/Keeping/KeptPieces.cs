using Heaveline.Pieces;

namespace Heaveline.Files.Keeping;

/// <summary>Does pieces by way of a file: what it keeps is not done again, and what is done is kept.</summary>
/// <param name="doer">Does the others.</param>
/// <param name="file">The file.</param>
public sealed class KeptPieces(IPieceDoer doer, PieceFile file) : IPieceDoer
{
    /// <inheritdoc/>
    /// <exception cref="IOException">The answer cannot be written.</exception>
    public byte[] Do(byte[] piece, CancellationToken cancellation)
    {
        if (file.Of(piece) is { } kept)
        {
            return kept;
        }

        // What was begun is done to its end, and kept: whoever stops loses nothing.
        cancellation.ThrowIfCancellationRequested();
        var answer = doer.Do(piece, CancellationToken.None);
        file.Keep(piece, answer);
        return answer;
    }
}
