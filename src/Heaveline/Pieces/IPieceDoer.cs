namespace Heaveline.Pieces;

/// <summary>
/// Whoever does pieces of a study's work, piece and answer as bytes. What comes of a piece is a function of the piece and of the study alone: it can
/// be kept, done again, or done elsewhere. Called from several threads.
/// </summary>
public interface IPieceDoer
{
    /// <summary>Does one piece.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>Its answer.</returns>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    byte[] Do(byte[] piece, CancellationToken cancellation);
}
