using System.Collections.Immutable;

namespace Heaveline.Search;

/// <summary>
/// A piece of work: some setups of a study in one car. What comes of it is a function of the piece and the study alone, wherever and however often it
/// is done.
/// </summary>
/// <param name="Stage">What is done.</param>
/// <param name="Setups">The setups, by their numbers.</param>
/// <param name="Draw">The drawn car, from 0; <see cref="AsStated"/> for the car as stated.</param>
internal sealed record Piece(PieceStage Stage, ImmutableArray<long> Setups, int Draw)
{
    /// <summary>The car as stated.</summary>
    public const int AsStated = -1;
}
