using Heaveline.Quantities;

namespace Heaveline.Cars.Worksheets;

/// <summary>
/// A spring's rate from pairs of its length and the force on it: least squares with an interval, a check whether one rate is enough, free length,
/// preload at any length.
/// </summary>
public sealed record SpringSheet
{
    // Corrected Akaike information lower by this much is taken as proof of the richer shape (Burnham and Anderson:
    // above 4 to 7 "considerably less support").
    private const double Proof = 6.0;

    private SpringSheet(SpringCurve curve) => Curve = curve;

    /// <summary>Which shape the pairs ask for.</summary>
    public required SpringShape Shape { get; init; }

    /// <summary>Rate of the straight line through all pairs, N/m: the secant over the measured range.</summary>
    public required Amount<Stiffness> Rate { get; init; }

    /// <summary>Length at which the straight line has no force, m: the free length, unless end coils lie dead before.</summary>
    public required Amount<Length> FreeLength { get; init; }

    /// <summary>Standard deviation of the forces about the chosen shape, N.</summary>
    public required double Scatter { get; init; }

    /// <summary>Part of a pure straight line in the forces' spread, R² (–).</summary>
    public required double Straightness { get; init; }

    /// <summary>Rate at the longest and at the shortest measured length by the chosen shape, N/m.</summary>
    public required IReadOnlyList<Amount<Stiffness>> EndRates { get; init; }

    /// <summary>Length at which a spring of two rates crosses over, m; null for the other shapes.</summary>
    public required double? CrossoverLength { get; init; }

    /// <summary>Force there, N.</summary>
    public required double? CrossoverForce { get; init; }

    /// <summary>What the pairs say about themselves, one sentence each.</summary>
    public required IReadOnlyList<SheetNote> Notes { get; init; }

    /// <summary>Force that the chosen shape gives at a length, N: the preload when that is the length it is fitted at.</summary>
    public double ForceAt(double length) => Curve.Force(length);

    /// <summary>Rate that the chosen shape gives at a length, N/m.</summary>
    public double RateAt(double length) => Curve.Rate(length);

    private SpringCurve Curve { get; }

    /// <summary>Works the sheet out.</summary>
    /// <param name="lengths">Length of the spring, m, at least three different ones. Their doubts are taken as each reading's own.</param>
    /// <param name="forces">Force on it, N, growing as it gets shorter.</param>
    public static SpringSheet Of(IReadOnlyList<Amount<Length>> lengths, IReadOnlyList<Amount<Force>> forces)
    {
        ArgumentNullException.ThrowIfNull(lengths);
        ArgumentNullException.ThrowIfNull(forces);
        if (lengths.Count != forces.Count || lengths.Select(l => l.Si).Distinct().Count() < 3)
        {
            throw new RefusedValueException(
                "pairs of length and force",
                $"{Math.Min(lengths.Count, forces.Count)}",
                "three or more at different lengths",
                "Press the spring to at least three lengths, better six, up and down.");
        }

        var sorted = Enumerable.Range(0, lengths.Count).OrderByDescending(k => lengths[k].Si).ToArray();
        double[] length = [.. sorted.Select(k => lengths[k].Si)];
        double[] force = [.. sorted.Select(k => forces[k].Si)];
        var line = SpringCurve.Straight(length, force);
        if (!(line.Rate(length[0]) > 0.0))
        {
            throw new RefusedValueException(
                "spring rate",
                $"{line.Rate(length[0]):G4} N/m",
                "above 0 N/m",
                "The force must grow as the spring gets shorter: give its length, or compressions as lengths from the free one.");
        }

        var best = line;
        foreach (var richer in SpringCurve.Richer(length, force))
        {
            if (richer.Information < best.Information - (best == line ? Proof : 0.0))
            {
                best = richer;
            }
        }

        var mean = force.Average();
        double[] doubts = [.. sorted.Select(k => lengths[k].Doubt.HalfWidth), .. sorted.Select(k => forces[k].Doubt.HalfWidth)];
        // The readings' scatter and what is said of the readings tell of the same errors: the larger one counts.
        Amount<T> Wider<T>(Amount<T> fitted, Func<SpringCurve, double> of)
            where T : struct, IDimension =>
            fitted with
            {
                Doubt = new Doubt(Math.Max(
                    fitted.Doubt.HalfWidth,
                    DoubtBudget.Of(v => of(SpringCurve.Straight(v[..length.Length], v[length.Length..])), [.. length, .. force], doubts))),
            };
        var sheet = new SpringSheet(best)
        {
            Shape = best.Shape,
            Rate = Wider(line.RateWithDoubt(length[0]), c => c.Rate(length[0])),
            FreeLength = Wider(line.ZeroAt, c => c.ZeroAt.Si),
            Scatter = best.Fit.Deviation,
            Straightness = 1.0 - (line.Fit.SumOfSquares / force.Sum(f => (f - mean) * (f - mean))),
            EndRates = [best.RateWithDoubt(length[0]), best.RateWithDoubt(length[^1])],
            CrossoverLength = best.Shape == SpringShape.TwoRates ? best.Knot : null,
            CrossoverForce = best.Shape == SpringShape.TwoRates ? best.Force(best.Knot) : null,
            Notes = [],
        };
        return sheet with { Notes = [.. NotesOf(sheet, length.Length)] };
    }

    private static IEnumerable<SheetNote> NotesOf(SpringSheet sheet, int count)
    {
        yield return new("shape", sheet.Shape switch
        {
            SpringShape.Straight => "One rate describes these pairs.",
            SpringShape.Progressive => "The rate changes steadily: use the table in the car file, and the rate at the load the spring carries.",
            _ => "Two rates with a crossover describe these pairs better than one: use the table in the car file.",
        });
        if (count < 6)
        {
            yield return new("few-pairs", "With fewer than six pairs a curve can hide: press it to more lengths, down and up.");
        }

        if (sheet.Rate.Doubt.HalfWidth == 0.0)
        {
            yield return new(
                "no-scatter",
                "The pairs lie on one line to the last digit, so their scatter tells nothing: give the doubt of the readings.");
        }
    }
}
