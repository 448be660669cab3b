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
            var errors = ErrorsOf(doubts, seed, index, attempt);
            try
            {
                return new JointDraw { Models = Cars(doubts, errors), Errors = errors, Refused = attempt };
            }
            catch (RefusedValueException refusal) when (attempt == MostAttempts - 1)
            {
                throw TooWide(doubts, seed, index, refusal);
            }
            catch (RefusedValueException)
            {
                continue;
            }
        }
    }

    private static double[] ErrorsOf(JointDoubts doubts, ulong seed, int index, int attempt) =>
        Normals(SplitMix.At(seed, ((ulong)index * MostAttempts) + (ulong)attempt), doubts.Sources.Count);

    private static IReadOnlyList<RideModel> Cars(JointDoubts doubts, double[] errors) =>
    [
        .. Enumerable.Range(0, doubts.Cars.Count).Select(car =>
        {
            var (drawn, load) = doubts.At(car, errors);
            return RideModel.Of(drawn, load);
        }),
    ];

    // The doubt to blame is the one that has most of the draws refused when it is drawn alone; the first of several.
    private static RefusedValueException TooWide(JointDoubts doubts, ulong seed, int index, RefusedValueException refusal)
    {
        var refused = new int[doubts.Sources.Count];
        for (var attempt = 0; attempt < MostAttempts; attempt++)
        {
            var errors = ErrorsOf(doubts, seed, index, attempt);
            for (var source = 0; source < errors.Length; source++)
            {
                var alone = new double[errors.Length];
                alone[source] = errors[source];
                refused[source] += IsRefused(alone) ? 1 : 0;
            }
        }

        var most = refused.Max();
        var blamed = most > 0 ? doubts.Sources[Array.IndexOf(refused, most)] : null;
        var width = blamed?.Amounts.Max(a => 2.0 * a.StandardDeviation / Math.Abs(a.Value)) ?? double.NaN;
        return new RefusedValueException(
            blamed is null ? "doubt of the values" : $"doubt of the {blamed.Words}",
            "so wide"
            + (double.IsFinite(width) ? $" (± {Numeral.Of(In.Percent.Of(width), 0)} %)" : "")
            + $" that {MostAttempts} draws in a row were refused ({FirstLetter.Lowered(refusal.What)} is out of range)",
            "narrow enough for a car to be drawn",
            blamed is null ? "Narrow the widest doubts." : "Narrow the doubt of that value.");

        bool IsRefused(double[] errors)
        {
            try
            {
                return Cars(doubts, errors).Count == 0;
            }
            catch (RefusedValueException)
            {
                return true;
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
