using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>
/// A spring's rate from pairs of its length and the force on it: least squares with an interval, a check whether one rate is enough, free length,
/// preload at any length.
/// </summary>
public sealed record SpringSheet
{
    // A richer shape is taken when one straight line would give such pairs once in 200 times; once in 20 is called a bend.
    private const double Proof = 0.005;
    private const double Hint = 0.05;

    private SpringSheet(SpringCurve curve) => Curve = curve;

    /// <summary>Which shape the pairs ask for.</summary>
    public required SpringShape Shape { get; init; }

    /// <summary>Whether the pairs miss one straight line in order, one side after the other, but are too few to say which shape they have.</summary>
    public required bool Bends { get; init; }

    /// <summary>Rate of each step from one length to the next shorter one, repeats at one length averaged.</summary>
    public required IReadOnlyList<SpringStep> Steps { get; init; }

    /// <summary>Largest miss of the straight line, N.</summary>
    public required double WorstMiss { get; init; }

    /// <summary>Half-width of what a pair can be read to, its length's at the line's rate included, N; 0 when no reading states a doubt.</summary>
    public required double Readable { get; init; }

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

    /// <summary>The pair (m, N) that no other agrees with, where the pairs make no spring and one of them is the cause; else null.</summary>
    public (double Length, double Force)? Misread { get; private init; }

    /// <summary>
    /// Whether the pairs are good for a car file: none misread, and a rate in doubt by less than half of itself or a table whose forces rise.
    /// </summary>
    public bool IsUsable => Misread is null && (Shape == SpringShape.Straight && !Bends ? !IsLost(Rate) : Steps.All(s => s.Rate.Si > 0.0));

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
                "the number of different lengths",
                $"{lengths.Select(l => l.Si).Distinct().Count()}",
                "three or more, each with its force",
                "Press the spring to at least three lengths, better six, up and down.");
        }

        var sorted = Enumerable.Range(0, lengths.Count).OrderByDescending(k => lengths[k].Si).ToArray();
        double[] length = [.. sorted.Select(k => lengths[k].Si)];
        double[] force = [.. sorted.Select(k => forces[k].Si)];
        var line = SpringCurve.Straight(length, force);
        double[] lengthDoubts = [.. sorted.Select(k => lengths[k].Doubt.HalfWidth)];
        double[] forceDoubts = [.. sorted.Select(k => forces[k].Doubt.HalfWidth)];
        var slope = line.Rate(length[0]);
        if (!(slope > 0.0))
        {
            var odd = OddReading.Of([.. length.Select(l => new[] { 1.0, l })], force, 0.0, line.Fit.SumOfSquares);
            throw new RefusedValueException(
                "spring rate",
                $"{Numeral.Of(In.NewtonsPerMillimetre.Of(slope), 1)} N/mm",
                "above 0 N/mm",
                odd is { } k
                    ? $"{MisreadWords((length[k], force[k]))} Read it again."
                    : "The force must grow as the spring gets shorter: give its length, or compressions as lengths from the free one.");
        }

        var readable = Math.Sqrt(forceDoubts.Zip(lengthDoubts, (f, l) => (f * f) + (slope * l * slope * l)).Average());
        var richer = SpringCurve.Richer(length, force).Select(c => (Curve: c, Chance: c.ChanceOf(line, 0.5 * readable))).ToList();
        var proven = richer.Where(c => c.Chance < Proof).Select(c => c.Curve).OrderBy(c => c.Variance(0.5 * readable));
        var best = proven.FirstOrDefault() ?? line;

        var mean = force.Average();
        double[] doubts = [.. lengthDoubts, .. forceDoubts];
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
            Bends = best == line && richer.Any(c => c.Chance < Hint),
            Steps = SpringStep.Of([.. sorted.Select(k => (lengths[k], forces[k]))]),
            WorstMiss = length.Zip(force, (l, f) => Math.Abs(f - line.Force(l))).Max(),
            Readable = readable,
            Rate = Wider(line.RateWithDoubt(length[0]), c => c.Rate(length[0])),
            FreeLength = Wider(line.ZeroAt, c => c.ZeroAt.Si),
            Scatter = best.Fit.Deviation,
            Straightness = 1.0 - (line.Fit.SumOfSquares / force.Sum(f => (f - mean) * (f - mean))),
            EndRates = [best.RateWithDoubt(length[0]), best.RateWithDoubt(length[^1])],
            CrossoverLength = best.Shape == SpringShape.TwoRates ? best.Knot : null,
            CrossoverForce = best.Shape == SpringShape.TwoRates ? best.Force(best.Knot) : null,
            Notes = [],
        };
        sheet = sheet with { Misread = MisreadOf() };
        return sheet with { Notes = [.. NotesOf(sheet, length.Length)] };

        // Asked only where something is wrong: a spring of two rates bends too.
        (double Length, double Force)? MisreadOf() =>
            (IsLost(sheet.Rate) || sheet.Steps.Any(s => s.Rate.Si < -s.Rate.Doubt.HalfWidth))
            && OddReading.Of([.. length.Select(l => new[] { 1.0, l })], force, 0.5 * readable, line.Fit.SumOfSquares) is { } k
                ? (length[k], force[k])
                : null;
    }

    // The doubt swallows the value.
    private static bool IsLost(Amount<Stiffness> rate) => rate.Doubt.HalfWidth > 0.5 * rate.Si;

    private static string MisreadWords((double Length, double Force) pair) => FormattableString.Invariant(
        $"The pair {In.Millimetres.Of(pair.Length):0.##} mm, {pair.Force:0.#} N misses the straight line that all others keep: likely misread.");

    private static IEnumerable<SheetNote> NotesOf(SpringSheet sheet, int count)
    {
        if (sheet.Misread is { } pair)
        {
            yield return new("misread", MisreadWords(pair) + " Read it again or leave it out; there is no line for the car file until then.");
        }
        else if (!sheet.IsUsable)
        {
            yield return new(
                "no-line",
                (sheet.Shape == SpringShape.Straight && !sheet.Bends
                    ? "The rate is in doubt by more than half of itself"
                    : "The force does not grow at every step")
                + ": there is no line for the car file. Look for a misread pair, and press the spring to more lengths.");
        }
        else
        {
            yield return Described(sheet);
        }

        if (count < 6 && !sheet.Bends)
        {
            yield return new("few-pairs", "With fewer than six pairs a curve can hide: press it to more lengths, down and up.");
        }

        if (sheet.Rate.Doubt.HalfWidth == 0.0)
        {
            yield return new(
                "no-scatter",
                "The pairs lie on one line to the last digit, so their scatter tells nothing: give the doubt of the readings.");
        }

        yield return new(
            "pressed-spring",
            "A spring pressed together stores enough to kill: press it between guides behind a guard, stand clear of its ends and never in line with "
            + "them, and let it out before you reach in.");
    }

    private static SheetNote Described(SpringSheet sheet) =>
        new("shape", sheet.Shape switch
        {
            SpringShape.Straight when sheet.Bends => FormattableString.Invariant(
                $"The misses bend: one straight line misses these pairs by up to {sheet.WorstMiss:F0} N, one side after the other. ")
                + "Press at more lengths before you trust one rate; until then use the table in the car file.",
            SpringShape.Straight when sheet.Scatter <= Math.Max(sheet.Readable, 1e-6 * sheet.Rate.Si * sheet.FreeLength.Si) =>
                "One rate describes these pairs as well as they can be read.",
            SpringShape.Straight => FormattableString.Invariant(
                $"One rate describes these pairs: they scatter about it by {sheet.Scatter:F0} N, without a bend that so many could show."),
            SpringShape.Progressive => "The rate changes steadily: use the table in the car file, and the rate at the load the spring carries.",
            _ => "Two rates with a crossover describe these pairs better than one: use the table in the car file.",
        });
}
