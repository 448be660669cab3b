using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>One car of a study: as stated, or drawn. Whatever parts stand in it, its own errors are the same.</summary>
/// <param name="seed">The seed.</param>
/// <param name="draw">The draw; <see cref="Piece.AsStated"/> for the car as stated.</param>
/// <param name="attempt">Which time it is drawn.</param>
internal sealed class ChooseDraw(ulong seed, int draw, int attempt)
{
    // As often as draws of a car alone.
    private const int MostAttempts = 64;

    /// <summary>The first attempt with which the car as it is stands under all loads.</summary>
    /// <param name="car">The car as it is.</param>
    /// <param name="loads">The loads.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="draw">The draw.</param>
    /// <exception cref="RefusedValueException">The doubts are too wide for such a car.</exception>
    public static ChooseDraw Of(Car car, IReadOnlyList<LoadState> loads, ulong seed, int draw)
    {
        for (var attempt = 0; ; attempt++)
        {
            var drawn = new ChooseDraw(seed, draw, attempt);
            try
            {
                foreach (var load in loads)
                {
                    _ = drawn.ModelOf(car, load);
                }

                return drawn;
            }
            catch (RefusedValueException) when (draw != Piece.AsStated && attempt + 1 < MostAttempts)
            {
                continue;
            }
        }
    }

    /// <summary>A setup in this car under a load.</summary>
    /// <exception cref="RefusedValueException">It cannot stand so.</exception>
    public RideModel ModelOf(Car car, LoadState load)
    {
        if (draw == Piece.AsStated)
        {
            return RideModel.Of(car, load);
        }

        var doubts = CarDoubts.Of(car, load);
        var (drawn, under) = doubts.At(ErrorsOf(doubts));
        return RideModel.Of(drawn, under);
    }

    /// <summary>The errors of a car in this draw, in the order of its sources.</summary>
    /// <param name="doubts">The car's doubts.</param>
    public double[] ErrorsOf(CarDoubts doubts) => NamedErrors.Of(doubts, seed, draw, attempt);
}
