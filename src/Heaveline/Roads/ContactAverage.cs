namespace Heaveline.Roads;

/// <summary>
/// The moving average of a profile over a contact length c. Between the distances at which either end of the contact passes a knot, the
/// average is one quartic (the antiderivative's difference over c), with fourth derivative (h‴ at the front end − h‴ at the rear end)/c.
/// </summary>
internal sealed class ContactAverage
{
    // Error allowed between knots, m.
    private const double Tolerance = 1e-7;

    // Distances nearer than this are one knot, m.
    private const double Same = 1e-12;

    private readonly double[] knots;
    private readonly double[] coefficients;
    private readonly double[] areas;
    private readonly double contact;
    private readonly double half;

    /// <param name="knots">Knots of the profile, shape (n).</param>
    /// <param name="coefficients">Its pieces, shape (n, 4).</param>
    /// <param name="contact">c, m, above 0.</param>
    internal ContactAverage(double[] knots, double[] coefficients, double contact)
    {
        (this.knots, this.coefficients, this.contact, half) = (knots, coefficients, contact, contact / 2.0);
        areas = AreasUpTo(knots, coefficients);
    }

    /// <summary>Where the average begins.</summary>
    internal ContactPlace Start => new(-1, -1, knots[0] - half);

    /// <summary>Height from the end of the average on, m.</summary>
    internal double EndHeight => coefficients[^Cubic.Order];

    /// <summary>The average's knots and pieces.</summary>
    internal (double[] Knots, double[] Coefficients) Whole()
    {
        var (averageKnots, average) = (new List<double>(2 * knots.Length), new List<double>(Cubic.Order * 2 * knots.Length));
        var place = Start;
        while (Next(ref place) is { } next)
        {
            Write(place, next, averageKnots, average);
            place = place with { X = next };
        }

        Close(place, averageKnots, average);
        return ([.. averageKnots], [.. average]);
    }

    /// <summary>Puts both ends of the contact on the pieces that they are on ahead of the place.</summary>
    /// <returns>Where the first of them leaves its piece, m; null where the average has ended.</returns>
    internal double? Next(ref ContactPlace place)
    {
        var (front, rear, x) = place;
        while (front + 1 < knots.Length && knots[front + 1] - half <= x + Same)
        {
            front++;
        }

        while (rear + 1 < knots.Length && knots[rear + 1] + half <= x + Same)
        {
            rear++;
        }

        place = new ContactPlace(front, rear, x);
        if (rear + 1 == knots.Length)
        {
            return null;
        }

        // The front end is ahead of the rear, so the rear has a next knot whenever the front has.
        var next = knots[rear + 1] + half;
        return front + 1 < knots.Length ? Math.Min(next, knots[front + 1] - half) : next;
    }

    /// <summary>Appends the pieces from a place to where an end leaves its piece.</summary>
    internal void Write(ContactPlace place, double next, List<double> averageKnots, List<double> average)
    {
        var (front, rear, x) = place;
        var fourth = 6.0 * (Third(front) - Third(rear)) / contact;
        var pieces = Cubic.Pieces(next - x, fourth, Tolerance);
        var width = (next - x) / pieces;
        var (height, slope) = At(front, rear, x);
        for (var piece = 1; piece <= pieces; piece++)
        {
            var start = x + ((piece - 1) * width);
            var (endHeight, endSlope) = At(front, rear, piece == pieces ? next : x + (piece * width));
            averageKnots.Add(start);
            Cubic.Append(average, width, height, slope, endHeight, endSlope);
            (height, slope) = (endHeight, endSlope);
        }
    }

    /// <summary>Appends the last knot, from which on all is level.</summary>
    internal void Close(ContactPlace place, List<double> averageKnots, List<double> average)
    {
        averageKnots.Add(place.X);
        average.AddRange([EndHeight, 0.0, 0.0, 0.0]);
    }

    private double Third(int piece) => piece < 0 ? 0.0 : coefficients[(Cubic.Order * piece) + 3];

    // Height and slope of the average while the front end is on one given piece and the rear on another: one-sided limits come out right at jumps.
    private (double Height, double Slope) At(int front, int rear, double x)
    {
        var (frontArea, frontHeight) = End(front, x + (contact / 2.0));
        var (rearArea, rearHeight) = End(rear, x - (contact / 2.0));
        return ((frontArea - rearArea) / contact, (frontHeight - rearHeight) / contact);
    }

    private (double Area, double Height) End(int piece, double x)
    {
        if (piece < 0)
        {
            return (coefficients[0] * (x - knots[0]), coefficients[0]);
        }

        var d = x - knots[piece];
        return (areas[piece] + Cubic.Area(coefficients, piece, d), Cubic.Height(coefficients, piece, d));
    }

    private static double[] AreasUpTo(double[] knots, double[] coefficients)
    {
        var areas = new double[knots.Length];
        for (var i = 1; i < knots.Length; i++)
        {
            areas[i] = areas[i - 1] + Cubic.Area(coefficients, i - 1, knots[i] - knots[i - 1]);
        }

        return areas;
    }
}
