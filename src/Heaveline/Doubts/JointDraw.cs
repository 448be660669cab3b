using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Doubts;

/// <summary>
/// Cars that the measurements leave possible, drawn together: every doubtful amount from a normal distribution with half its half-width as standard
/// deviation, what they have in common once. A draw that one of the cars cannot have, or in which it cannot stand, is drawn again for all.
/// </summary>
public sealed record JointDraw
{
    private const int MostAttempts = 64;

    /// <summary>The drawn cars under their drawn loads, at their trims.</summary>
    public required IReadOnlyList<RideModel> Models { get; init; }

    /// <summary>Error of each source in standard deviations.</summary>
    public required IReadOnlyList<double> Errors { get; init; }

    /// <summary>How many draws were refused before this one.</summary>
    public required int Refused { get; init; }

    /// <summary>
    /// Draw number <paramref name="index"/> of a seed: a function of both, whatever else is drawn. The first car's
    /// errors are those of a draw of that car alone.
    /// </summary>
    /// <exception cref="RefusedValueException">64 draws in a row were refused: the doubts are too wide for such a car.</exception>
    public static JointDraw Of(JointDoubts doubts, ulong seed, int index)
    {
        ArgumentNullException.ThrowIfNull(doubts);
        for (var attempt = 0; ; attempt++)
        {
            var errors = Normals(SplitMix.At(seed, ((ulong)index * MostAttempts) + (ulong)attempt), doubts.Sources.Count);
            try
            {
                RideModel Model(int car)
                {
                    var (drawn, load) = doubts.At(car, errors);
                    return RideModel.Of(drawn, load);
                }

                return new JointDraw { Models = [.. Enumerable.Range(0, doubts.Cars.Count).Select(Model)], Errors = errors, Refused = attempt };
            }
            catch (RefusedValueException refusal) when (attempt == MostAttempts - 1)
            {
                throw new RefusedValueException(
                    "doubt",
                    $"so wide that {MostAttempts} draws in a row were refused ({refusal.What})",
                    "narrow enough for a car to be drawn",
                    "Narrow the doubt of that value.");
            }
            catch (RefusedValueException)
            {
                continue;
            }
        }
    }

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
