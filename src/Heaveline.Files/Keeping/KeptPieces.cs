using Heaveline.Pieces;

namespace Heaveline.Files.Keeping;

/// <summary>Does pieces by way of a file: what it keeps is not done again, and what is done is kept.</summary>
/// <param name="doer">Does the others.</param>
/// <param name="file">The file.</param>
/// <param name="lost">
/// Told, once, why no more can be kept; the study then goes on without, as what was worked out must not be lost with the disk. Null: it ends there.
/// </param>
public sealed class KeptPieces(IPieceDoer doer, PieceFile file, Action<IOException>? lost = null) : IPieceDoer
{
    private int isLost;

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
        try
        {
            file.Keep(piece, answer);
        }
        catch (IOException why) when (lost is not null)
        {
            if (Interlocked.Exchange(ref isLost, 1) == 0)
            {
                lost(why);
            }
        }

        return answer;
    }
}
