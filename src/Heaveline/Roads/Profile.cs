using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// Height of the road in one wheel track: cubic pieces over the distance x, constant before the first knot and after the last. Immutable.
/// A sharp step is written as two knots at one x; at that x the height after the step holds, and the slope is always the one ahead.
/// </summary>
public sealed partial class Profile
{
    // Heights at a knot may differ by rounding only, unless two knots stand at one x.
    private const double Meets = 1e-9;

    private readonly LongAverage? average;
    private readonly Lazy<(double[] Knots, double[] Coefficients)>? whole;
    private readonly double[]? ownKnots;
    private readonly double[]? ownCoefficients;

    private Profile(double[] knots, double[] coefficients)
    {
        ownKnots = knots;
        ownCoefficients = coefficients;
        (Start, End, StartHeight, EndHeight) = (knots[0], knots[^1], coefficients[0], coefficients[^Cubic.Order]);
        HasJump = Jumps(knots, coefficients);
    }

    // An average never jumps. A pass reads it block by block; whoever asks for all of it at once gets that, and it is kept.
    private Profile(LongAverage average)
    {
        this.average = average;
        whole = new(average.Whole);
        (Start, End, StartHeight, EndHeight) = (average.Start, average.End, average.StartHeight, average.EndHeight);
    }

    private double[] AllKnots => ownKnots ?? whole!.Value.Knots;

    private double[] AllCoefficients => ownCoefficients ?? whole!.Value.Coefficients;

    /// <summary>A level road at height 0.</summary>
    public static Profile Flat { get; } = new([0.0], [0.0, 0.0, 0.0, 0.0]);

    /// <summary>Whether it is at height 0 everywhere.</summary>
    internal bool IsLevel => AllCoefficients.All(c => c == 0.0);

    /// <summary>Where pieces begin, x, m, never decreasing, shape (n), n at least 1.</summary>
    public ReadOnlySpan<double> Knots => AllKnots;

    /// <summary>
    /// c0, c1, c2, c3 of every piece, shape (n, 4), with height = c0 + c1 d + c2 d² + c3 d³ and d = x − knot; the last piece is level.
    /// </summary>
    public ReadOnlySpan<double> Coefficients => AllCoefficients;

    /// <summary>First knot, m. The road is level before it.</summary>
    public double Start { get; }

    /// <summary>Last knot, m. The road is level after it.</summary>
    public double End { get; }

    /// <summary>Height before the first knot, m.</summary>
    public double StartHeight { get; }

    /// <summary>Height after the last knot, m.</summary>
    public double EndHeight { get; }

    /// <summary>
    /// Whether the height jumps somewhere. The rate of tyre compression is infinite there: with tyre damping such a road needs an edge
    /// length, or the average over a contact length (<see cref="AveragedOver"/>).
    /// </summary>
    public bool HasJump { get; }

    /// <summary>A profile from pieces as they are.</summary>
    /// <param name="knots">x, m, never decreasing, shape (n).</param>
    /// <param name="coefficients">c0 … c3 of each piece, shape (n, 4); c1 … c3 of the last are 0.</param>
    public static Profile FromCubics(ReadOnlySpan<double> knots, ReadOnlySpan<double> coefficients) =>
        FromOwnCubics(knots.ToArray(), coefficients.ToArray());

    // The profile keeps the arrays: nobody may write to them any more. A long road has them once.
    internal static Profile FromOwnCubics(double[] knots, double[] coefficients)
    {
        if (knots.Length == 0 || coefficients.Length != Cubic.Order * knots.Length)
        {
            throw new RefusedValueException(
                "profile",
                $"{knots.Length} knots with {coefficients.Length} coefficients",
                "at least 1 knot, 4 coefficients each",
                "Give c0, c1, c2, c3 for each knot.");
        }

        foreach (var value in coefficients)
        {
            _ = Checked.Within(value, -double.MaxValue, double.MaxValue, "Give finite numbers.", "ProfileCoefficient");
        }

        for (var i = 0; i < knots.Length; i++)
        {
            _ = Checked.Within(knots[i], i == 0 ? -double.MaxValue : knots[i - 1], double.MaxValue, "Sort the knots by distance.", "ProfileKnot");
            var width = i == 0 ? 0.0 : knots[i] - knots[i - 1];
            var height = coefficients[Cubic.Order * i];
            var before = i == 0 ? height : Cubic.Height(coefficients, i - 1, width);
            if (width > 0.0 && Math.Abs(height - before) > Meets * (1.0 + Math.Abs(height)))
            {
                throw new RefusedValueException(
                    "profile",
                    string.Create(CultureInfo.InvariantCulture, $"broken by {height - before:G3} m at {knots[i]:G6} m"),
                    "without a break between pieces",
                    "Write a sharp step as two knots at one distance.");
            }
        }

        return coefficients.AsSpan()[^3..].IndexOfAnyExcept(0.0) < 0
            ? new Profile(knots, coefficients)
            : throw new RefusedValueException(
                "profile", "sloping after its last knot", "level there", "End the profile with a knot whose c1, c2 and c3 are 0.");
    }

    /// <summary>Height at <paramref name="x"/>, m.</summary>
    public double Height(double x) => Cubic.PieceAt(AllKnots, x) is var i and >= 0 ? Cubic.Height(AllCoefficients, i, x - AllKnots[i]) : StartHeight;

    /// <summary>Slope dh/dx at <paramref name="x"/> (–), the one ahead of a knot. A jump has no slope and adds none.</summary>
    public double Slope(double x) => Cubic.PieceAt(AllKnots, x) is var i and >= 0 ? Cubic.Slope(AllCoefficients, i, x - AllKnots[i]) : 0.0;

    /// <summary>A reader with a cursor, for many distances that mostly grow. One for each thread.</summary>
    public ProfileReader Reader() => average is null ? new(ownKnots!, ownCoefficients!) : new(average);

    private static bool Jumps(double[] knots, double[] coefficients)
    {
        for (var i = 1; i < knots.Length; i++)
        {
            if (knots[i] == knots[i - 1] && coefficients[Cubic.Order * i] != coefficients[Cubic.Order * (i - 1)])
            {
                return true;
            }
        }

        return false;
    }
}
