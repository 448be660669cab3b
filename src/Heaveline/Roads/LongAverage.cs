namespace Heaveline.Roads;

/// <summary>
/// The average of a road of very many points, worked out block by block where it is read: whole, it would fill twice the room of the road itself.
/// Immutable, and the same numbers as <see cref="ContactAverage.Whole"/>.
/// </summary>
internal sealed class LongAverage
{
    /// <summary>A profile of more knots is averaged so.</summary>
    internal const int From = 1 << 16;

    // About 300 kB a block.
    private const int Stretches = 1 << 12;

    private readonly ContactAverage average;
    private readonly ContactPlace[] places;
    private readonly double[] starts;

    internal LongAverage(ContactAverage average)
    {
        this.average = average;
        var found = new List<ContactPlace>();
        var place = average.Start;
        for (var i = 0; ; i++)
        {
            if (i % Stretches == 0)
            {
                found.Add(place);
            }

            if (average.Next(ref place) is not { } next)
            {
                break;
            }

            place = place with { X = next };
        }

        places = [.. found];
        starts = [.. found.Select(p => p.X)];
        End = place.X;
    }

    /// <summary>First knot, m.</summary>
    internal double Start => starts[0];

    /// <summary>Last knot, m.</summary>
    internal double End { get; }

    /// <summary>Height from the last knot on, m.</summary>
    internal double EndHeight => average.EndHeight;

    /// <summary>Height up to the first knot, m.</summary>
    internal double StartHeight => Block(0).Coefficients[0];

    /// <summary>All knots and pieces at once.</summary>
    internal (double[] Knots, double[] Coefficients) Whole() => average.Whole();

    /// <summary>Which block has the piece at a distance; the first one before its beginning too.</summary>
    internal int BlockAt(double x) => Math.Max(0, Cubic.PieceAt(starts, x));

    /// <summary>The distances for which a block is asked, m: from, and up to but without, the other.</summary>
    internal (double From, double To) Reach(int block) =>
        (block == 0 ? double.NegativeInfinity : starts[block], block + 1 < starts.Length ? starts[block + 1] : double.PositiveInfinity);

    /// <summary>Knots and pieces of a block.</summary>
    internal (double[] Knots, double[] Coefficients) Block(int block)
    {
        var (knots, pieces) = (new List<double>(3 * Stretches), new List<double>(Cubic.Order * 3 * Stretches));
        var place = places[block];
        for (var i = 0; i < Stretches; i++)
        {
            if (average.Next(ref place) is not { } next)
            {
                average.Close(place, knots, pieces);
                break;
            }

            average.Write(place, next, knots, pieces);
            place = place with { X = next };
        }

        return ([.. knots], [.. pieces]);
    }
}
