using Heaveline.Figures;

namespace Heaveline.Press.Scales;

/// <summary>The numbered places along an axis. Linear: steps of 1, 2 or 5 times a power of ten.</summary>
/// <param name="Values">The places in rising order, in the unit of the axis.</param>
/// <param name="Step">The step of a linear axis; 0 on a logarithmic one.</param>
internal sealed record Ticks(double[] Values, double Step)
{
    private static readonly int[] Mantissas = [1, 2, 5];

    /// <summary>The places inside a range, at most so many, as many as fit.</summary>
    public static Ticks Of(double from, double to, int most, AxisScale scale = AxisScale.Linear) =>
        scale == AxisScale.Logarithmic ? Logarithmic(from, to, most) : Linear(from, to, Math.Max(2, most));

    /// <summary>The smallest range of whole steps that holds a range, with the step that splits it into at most so many parts.</summary>
    public static (double From, double To) Rounded(double from, double to, int most)
    {
        for (var exponent = ExponentBelow(to - from); ; exponent++)
        {
            foreach (var mantissa in Mantissas)
            {
                var (first, last) = (FloorOf(from, mantissa, exponent), CeilingOf(to, mantissa, exponent));
                if (last - first <= Math.Max(1, most))
                {
                    return (Place(first, mantissa, exponent), Place(last, mantissa, exponent));
                }
            }
        }
    }

    private static Ticks Linear(double from, double to, int most)
    {
        for (var exponent = ExponentBelow(to - from); ; exponent++)
        {
            foreach (var mantissa in Mantissas)
            {
                var (first, last) = (CeilingOf(from, mantissa, exponent), FloorOf(to, mantissa, exponent));
                if (last - first + 1 <= most)
                {
                    var values = new double[(int)Math.Max(0, last - first + 1)];
                    for (var i = 0; i < values.Length; i++)
                    {
                        values[i] = Place(first + i, mantissa, exponent);
                    }

                    return new Ticks(values, Place(1, mantissa, exponent));
                }
            }
        }
    }

    private static Ticks Logarithmic(double from, double to, int most)
    {
        int[][] choices = [[1, 2, 3, 4, 5, 6, 7, 8, 9], [1, 2, 5], [1]];
        var (low, high) = ((int)Math.Floor(Math.Log10(from)), (int)Math.Ceiling(Math.Log10(to)));
        foreach (var mantissas in choices)
        {
            var values = InDecades(from, to, low, high, 1, mantissas);
            if (values.Length <= most)
            {
                return new Ticks(values, 0.0);
            }
        }

        var every = (int)Math.Ceiling((high - low + 1.0) / Math.Max(2, most));
        return new Ticks(InDecades(from, to, low, high, every, [1]), 0.0);
    }

    private static double[] InDecades(double least, double largest, int low, int high, int every, int[] mantissas) =>
    [
        .. from exponent in Enumerable.Range(low, high - low + 1)
           where exponent % every == 0
           from mantissa in mantissas
           let value = Place(1, mantissa, exponent)
           where value >= least * (1.0 - 1e-9) && value <= largest * (1.0 + 1e-9)
           select value,
    ];

    // A thousandth of the range as the first step is far too fine for any axis, so the search always starts below its answer.
    private static int ExponentBelow(double range) => (int)Math.Floor(Math.Log10(range)) - 3;

    private static double CeilingOf(double value, int mantissa, int exponent) => Math.Ceiling(InSteps(value, mantissa, exponent) - 1e-9);

    private static double FloorOf(double value, int mantissa, int exponent) => Math.Floor(InSteps(value, mantissa, exponent) + 1e-9);

    private static double InSteps(double value, int mantissa, int exponent) =>
        exponent < 0 ? value * Math.Pow(10.0, -exponent) / mantissa : value / (mantissa * Math.Pow(10.0, exponent));

    // Dividing by a whole power of ten rounds once, so that three steps of 0.1 are the number written 0.3.
    private static double Place(double steps, int mantissa, int exponent) =>
        exponent < 0 ? steps * mantissa / Math.Pow(10.0, -exponent) : steps * mantissa * Math.Pow(10.0, exponent);
}
