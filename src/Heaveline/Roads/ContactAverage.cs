namespace Heaveline.Roads;

/// <summary>
/// The moving average of a profile over a contact length c. Between the distances at which either end of the contact passes a knot, the
/// average is one quartic (the antiderivative's difference over c), with fourth derivative (h‴ at the front end − h‴ at the rear end)/c.
/// </summary>
internal static class ContactAverage
{
    // Error allowed between knots, m.
    private const double Tolerance = 1e-7;

    // Distances nearer than this are one knot, m.
    private const double Same = 1e-12;

    internal static (double[] Knots, double[] Coefficients) Of(ReadOnlySpan<double> knots, ReadOnlySpan<double> coefficients, double contact)
    {
        var areas = AreasUpTo(knots, coefficients);
        var averageKnots = new List<double>(4 * knots.Length);
        var average = new List<double>(Cubic.Order * 4 * knots.Length);
        var half = contact / 2.0;
        var front = -1;
        var rear = -1;
        var x = knots[0] - half;
        while (true)
        {
            while (front + 1 < knots.Length && knots[front + 1] - half <= x + Same)
            {
                front++;
            }

            while (rear + 1 < knots.Length && knots[rear + 1] + half <= x + Same)
            {
                rear++;
            }

            if (rear + 1 == knots.Length)
            {
                break;
            }

            // The front end is ahead of the rear, so the rear has a next knot whenever the front has.
            var next = knots[rear + 1] + half;
            next = front + 1 < knots.Length ? Math.Min(next, knots[front + 1] - half) : next;
            var fourth = 6.0 * (Third(coefficients, front) - Third(coefficients, rear)) / contact;
            var pieces = Cubic.Pieces(next - x, fourth, Tolerance);
            var width = (next - x) / pieces;
            var (height, slope) = At(knots, coefficients, areas, contact, front, rear, x);
            for (var piece = 1; piece <= pieces; piece++)
            {
                var start = x + ((piece - 1) * width);
                var (endHeight, endSlope) = At(knots, coefficients, areas, contact, front, rear, piece == pieces ? next : x + (piece * width));
                averageKnots.Add(start);
                Cubic.Append(average, width, height, slope, endHeight, endSlope);
                (height, slope) = (endHeight, endSlope);
            }

            x = next;
        }

        averageKnots.Add(x);
        average.AddRange([coefficients[^Cubic.Order], 0.0, 0.0, 0.0]);
        return ([.. averageKnots], [.. average]);
    }

    private static double Third(ReadOnlySpan<double> coefficients, int piece) => piece < 0 ? 0.0 : coefficients[(Cubic.Order * piece) + 3];

    // Height and slope of the average while the front end is on one given piece and the rear on another: one-sided limits come out right at jumps.
    private static (double Height, double Slope) At(
        ReadOnlySpan<double> knots, ReadOnlySpan<double> coefficients, double[] areas, double contact, int front, int rear, double x)
    {
        var (frontArea, frontHeight) = End(knots, coefficients, areas, front, x + (contact / 2.0));
        var (rearArea, rearHeight) = End(knots, coefficients, areas, rear, x - (contact / 2.0));
        return ((frontArea - rearArea) / contact, (frontHeight - rearHeight) / contact);
    }

    private static (double Area, double Height) End(
        ReadOnlySpan<double> knots, ReadOnlySpan<double> coefficients, double[] areas, int piece, double x)
    {
        if (piece < 0)
        {
            return (coefficients[0] * (x - knots[0]), coefficients[0]);
        }

        var d = x - knots[piece];
        return (areas[piece] + Cubic.Area(coefficients, piece, d), Cubic.Height(coefficients, piece, d));
    }

    private static double[] AreasUpTo(ReadOnlySpan<double> knots, ReadOnlySpan<double> coefficients)
    {
        var areas = new double[knots.Length];
        for (var i = 1; i < knots.Length; i++)
        {
            areas[i] = areas[i - 1] + Cubic.Area(coefficients, i - 1, knots[i] - knots[i - 1]);
        }

        return areas;
    }
}
