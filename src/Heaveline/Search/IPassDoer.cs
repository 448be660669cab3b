namespace Heaveline.Search;

/// <summary>Whoever does pieces of work. Called from several threads.</summary>
internal interface IPassDoer
{
    /// <summary>Does one piece.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>A row for each of its setups, in their order.</returns>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    IReadOnlyList<SetupRow> Do(Piece piece, CancellationToken cancellation);
}
