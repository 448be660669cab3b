using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>
/// The curve through a sampled trace: between two samples the cubic of the four nearest, tamed at corners. Every number that is read off a pass is
/// one of this curve, so that a window begins and ends where it says and a peak between two samples counts.
/// </summary>
/// <remarks>
/// A swing of f hertz, sampled r times a second, is missed by at most (2πf/r)⁴/20 of its size: 2·10⁻⁸ for a body at 1.5 Hz, 6·10⁻⁵ for a wheel that
/// hops at 12 Hz, with 400 samples a second. Only values are read, never the recorded rates: a record without rates gives the same numbers. Where the
/// trace has a corner (an acceleration as a damper turns round) the larger of the two neighbouring second differences gives way to their
/// harmonic mean, so that the curve does not swing past the corner; a peak at a corner is then off by some hundredths of the step from
/// sample to sample. The scheme is the "piecewise polynomial harmonic" one of Amat, Donat, Liandrat and Trillo (Foundations of
/// Computational Mathematics 6, 2006; from memory).
/// </remarks>
/// <param name="start">Time of the first sample, s.</param>
/// <param name="step">Time from one sample to the next, s.</param>
/// <param name="values">One value a sample.</param>
internal readonly ref struct Curve(double start, double step, ReadOnlySpan<double> values)
{
    // A crossing is sought by halving until nothing is left of the piece.
    private const int Halvings = 50;

    private readonly ReadOnlySpan<double> values = values;
    private readonly CurvePoints points = new(values);
    private readonly double start = values.Length > 0 ? start : 0.0;
    private readonly double step = step;

    /// <summary>The curve through values by the clock of a pass.</summary>
    public Curve(Pass pass, ReadOnlySpan<double> values)
        : this(pass.Start, pass.SampleStep, values)
    {
    }

    /// <summary>The curve through a trace of the pass.</summary>
    [OverloadResolutionPriority(-1)]
    public Curve(Pass pass, ImmutableArray<double> trace)
        : this(pass, trace.AsSpan())
    {
    }

    private static Window Record { get; } = new(double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>Largest |x| of the record.</summary>
    public double Peak() => Peak(Record);

    /// <summary>Largest |x| in a window; 0 of nothing.</summary>
    public double Peak(Window window) => Math.Abs(Top(window).Value);

    /// <summary>When x is farthest from zero in a window, and its value then; 0 of nothing.</summary>
    public (double Time, double Value) Top(Window window)
    {
        var (from, to) = Places(window);
        var (least, most) = Ends(from, to);
        var (place, value) = most.Value >= -least.Value ? most : least;
        return double.IsFinite(value) ? (start + (place * step), value) : (window.From, 0.0);
    }

    /// <summary>Least and greatest value in a stretch counted in samples from the first.</summary>
    public (double Least, double Most) Range(double from, double to)
    {
        var (least, most) = Ends(from, to);
        return (least.Value, most.Value);
    }

    /// <summary>Turning points away from zero, signed, in order: those later than a time at which |x| passes a limit.</summary>
    public List<double> Lobes(double limit, double after)
    {
        var lobes = new List<double>();
        for (var k = 1; k < values.Length - 1; k++)
        {
            if (points.Lobe(k) is var (place, top) && start + (place * step) > after && Math.Abs(top) > limit)
            {
                lobes.Add(top);
            }
        }

        return lobes;
    }

    /// <summary>The last time at which |x| falls through a limit, s: 0 when it never stood above, null when it does at the record's end.</summary>
    public double? LastAbove(double limit)
    {
        if (values.Length > 0 && Math.Abs(values[^1]) > limit)
        {
            return null;
        }

        for (var k = values.Length - 2; k >= 0; k--)
        {
            var piece = points.Piece(k);
            if (Math.Abs(values[k]) > limit || (piece.Turn is { } turn && Math.Abs(piece.At(turn)) > limit))
            {
                return start + ((k + Falls(piece, limit)) * step);
            }
        }

        return 0.0;
    }

    /// <summary>Where in a piece |x| falls through a limit that it passes in it for the last time, 0 to 1.</summary>
    public static double Falls(CurvePiece piece, double limit)
    {
        var from = Math.Abs(piece.C0) > limit ? 0.0 : piece.Turn ?? 0.0;
        var to = 1.0;
        for (var i = 0; i < Halvings; i++)
        {
            var middle = 0.5 * (from + to);
            (from, to) = Math.Abs(piece.At(middle)) > limit ? (middle, to) : (from, middle);
        }

        return to;
    }

    /// <summary>How often x rises above a level; above it from the start counts as once.</summary>
    public int Rises(double level)
    {
        var count = values.Length > 0 && values[0] > level ? 1 : 0;
        for (var k = 0; k < values.Length - 1; k++)
        {
            var (before, after) = (values[k] > level, values[k + 1] > level);
            // Between two samples on one side it may cross and come back.
            var through = before == after && points.Piece(k) is { Turn: { } turn } piece && piece.At(turn) > level != before;
            count += (after && !before) || through ? 1 : 0;
        }

        return count;
    }

    /// <summary>∫x² over a stretch counted in samples from the first.</summary>
    public double Squares(double from, double to)
    {
        if (!(to > from))
        {
            return 0.0;
        }

        var (first, last) = ((int)from, (int)to);
        // Whole pieces from the one that the window begins in to the one that it ends in, less what is not of it: in the order of time.
        var sum = 0.0 - points.Piece(first).SquareIntegral(from - first);
        // The second difference at a piece's end is that at the next one's beginning.
        var before = values.Length > 2 ? points.Second(Math.Max(1, first)) : 0.0;
        for (var k = first; k < last; k++)
        {
            var after = k + 2 < values.Length ? points.Second(k + 1) : before;
            sum += CurvePiece.Of(values[k], values[k + 1], before, after).SquareIntegral();
            before = after;
        }

        return last < to ? sum + points.Piece(last).SquareIntegral(to - last) : sum;
    }

    private (double From, double To) Places(Window window) => window.Places(start, step, values.Length);

    // Least and greatest value with their places.
    private ((double Place, double Value) Least, (double Place, double Value) Most) Ends(double from, double to)
    {
        var (least, most) = ((Place: 0.0, Value: double.PositiveInfinity), (Place: 0.0, Value: double.NegativeInfinity));
        if (values.Length == 1)
        {
            return ((0.0, values[0]), (0.0, values[0]));
        }

        if (to > from)
        {
            Include((from, points.At(from)));
            Include((to, points.At(to)));
            for (var k = (int)Math.Ceiling(from); k <= to; k++)
            {
                Include((k, values[k]));
            }

            // The curve turns beside a sample that stands out among its neighbours, and nowhere else.
            for (var k = Math.Max(1, (int)from); k <= Math.Min(values.Length - 2, (int)Math.Ceiling(to)); k++)
            {
                if (points.StandsOut(k) && points.Turn(k) is var turn && turn.Place > from && turn.Place < to)
                {
                    Include(turn);
                }
            }
        }

        return (least, most);

        void Include((double Place, double Value) x)
        {
            least = x.Value < least.Value ? x : least;
            most = x.Value > most.Value ? x : most;
        }
    }
}
