using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Insight;

/// <summary>
/// One car that the measurements leave possible: every doubtful amount drawn from a normal distribution with half its half-width as standard deviation.
/// A draw that no car can have, or that cannot stand, is drawn again.
/// </summary>
public sealed record CarDraw
{
    private const int MostAttempts = 64;

    /// <summary>The drawn car under the drawn load, at its trim.</summary>
    public required RideModel Model { get; init; }

    /// <summary>Error of each source in standard deviations.</summary>
    public required IReadOnlyList<double> Errors { get; init; }

    /// <summary>How many draws were refused before this one.</summary>
    public required int Refused { get; init; }

    /// <summary>Draw number <paramref name="index"/> of a seed: a function of both, whatever else is drawn.</summary>
    /// <exception cref="RefusedValueException">64 draws in a row were refused: the doubts are too wide for such a car.</exception>
    public static CarDraw Of(CarDoubts doubts, ulong seed, int index)
    {
        ArgumentNullException.ThrowIfNull(doubts);
        for (var attempt = 0; ; attempt++)
        {
            var errors = Normals(SplitMix.At(seed, ((ulong)index * MostAttempts) + (ulong)attempt), doubts.Sources.Count);
            try
            {
                var (car, load) = doubts.At(errors);
                return new CarDraw { Model = RideModel.Of(car, load), Errors = errors, Refused = attempt };
            }
            catch (RefusedValueException refusal) when (attempt == MostAttempts - 1)
            {
                throw new RefusedValueException("doubt", $"so wide that {MostAttempts} draws in a row were refused ({refusal.What})", "narrow enough for a car to be drawn", "Narrow the doubt of that value.");
            }
            catch (RefusedValueException)
            {
                continue;
            }
        }
    }

    /// <summary>Draw number <paramref name="index"/> of a car as described, without loads.</summary>
    public static CarDraw Of(Car car, ulong seed, int index) => Of(CarDoubts.Of(car), seed, index);

    private static double[] Normals(ulong seed, int count)
    {
        var normals = new double[count];
        for (var i = 0; i < count; i += 2)
        {
            var (first, second) = SplitMix.Normals(seed, (ulong)i);
            normals[i] = first;
            if (i + 1 < count)
            {
                normals[i + 1] = second;
            }
        }

        return normals;
    }
}
