namespace Heaveline.Roads;

/// <summary>
/// Reads height and slope of one profile with a cursor that stays where it was: a few comparisons for the next distance of a pass, a
/// bisection after a long jump either way. Holds its place, so it belongs to one thread.
/// </summary>
public sealed class ProfileReader
{
    // A pass advances a fraction of a piece at a time; past this many pieces the distance was not the next one and bisection is cheaper.
    private const int Nearby = 8;

    private readonly LongAverage? average;
    private double[] knots;
    private double[] coefficients;
    private double from = double.NegativeInfinity;
    private double to = double.PositiveInfinity;
    private int piece = -1;

    internal ProfileReader(double[] knots, double[] coefficients)
    {
        this.knots = knots;
        this.coefficients = coefficients;
    }

    internal ProfileReader(LongAverage average)
    {
        this.average = average;
        (from, to) = average.Reach(0);
        (knots, coefficients) = average.Block(0);
    }

    /// <summary>
    /// Height and slope at <paramref name="x"/>; equal to <see cref="Profile.Height"/> and <see cref="Profile.Slope"/> to the last bit.
    /// </summary>
    /// <param name="x">Distance, m.</param>
    /// <param name="height">Receives the height, m.</param>
    /// <param name="slope">Receives the slope dh/dx (–).</param>
    public void At(double x, out double height, out double slope)
    {
        if (average is not null && !(x >= from && x < to))
        {
            Turn(average.BlockAt(x));
        }

        var i = Find(x);
        piece = i;
        if (i < 0)
        {
            height = coefficients[0];
            slope = 0.0;
            return;
        }

        var d = x - knots[i];
        height = Cubic.Height(coefficients, i, d);
        slope = Cubic.Slope(coefficients, i, d);
    }

    private void Turn(int block)
    {
        (from, to) = average!.Reach(block);
        (knots, coefficients) = average.Block(block);
        piece = -1;
    }

    private int Find(double x)
    {
        var all = knots;
        var i = piece;
        for (var tries = 0; tries < Nearby; tries++)
        {
            if (i >= 0 && x < all[i])
            {
                i--;
            }
            else if (i + 1 < all.Length && x >= all[i + 1])
            {
                i++;
            }
            else
            {
                return i;
            }
        }

        return Cubic.PieceAt(all, x);
    }
}
