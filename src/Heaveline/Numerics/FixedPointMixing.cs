namespace Heaveline.Numerics;

/// <summary>
/// Anderson's mixing for y = g(y): the next y is the one at which the last turns, taken as straight, would agree best [Walker and Ni, Anderson
/// acceleration for fixed-point iterations, SIAM J. Numer. Anal. 49 (2011) 1715].
/// </summary>
internal sealed class FixedPointMixing
{
    // A turn that is so nearly a mixture of the others tells nothing new.
    private const double Dependent = 1e-8;

    private readonly int size;
    private readonly int depth;
    private readonly List<(double[] Miss, double[] Found)> turns = [];

    /// <param name="size">Number of unknowns.</param>
    /// <param name="depth">How many turns are remembered.</param>
    public FixedPointMixing(int size, int depth) => (this.size, this.depth) = (size, depth);

    /// <summary>Forgets every turn.</summary>
    public void Forget() => turns.Clear();

    /// <summary>Puts the next y in place of y.</summary>
    /// <param name="y">Where the turn began.</param>
    /// <param name="found">g(y).</param>
    public void Next(Span<double> y, ReadOnlySpan<double> found)
    {
        var miss = new double[size];
        for (var i = 0; i < size; i++)
        {
            miss[i] = found[i] - y[i];
        }

        turns.Add((miss, found.ToArray()));
        if (turns.Count > depth + 1)
        {
            turns.RemoveAt(0);
        }

        found.CopyTo(y);
        var rest = (double[])miss.Clone();
        var directions = new List<(double[] Miss, double[] Found)>();
        // Newest differences first, each made square to those before it.
        for (var k = turns.Count - 1; k > 0; k--)
        {
            var (change, reply) = (Less(turns[k].Miss, turns[k - 1].Miss), Less(turns[k].Found, turns[k - 1].Found));
            var whole = Dot(change, change);
            foreach (var (unit, moved) in directions)
            {
                var share = Dot(unit, change);
                for (var i = 0; i < size; i++)
                {
                    change[i] -= share * unit[i];
                    reply[i] -= share * moved[i];
                }
            }

            var length = Math.Sqrt(Dot(change, change));
            if (!(length > Dependent * Math.Sqrt(whole)))
            {
                continue;
            }

            for (var i = 0; i < size; i++)
            {
                change[i] /= length;
                reply[i] /= length;
            }

            directions.Add((change, reply));
            var part = Dot(change, rest);
            for (var i = 0; i < size; i++)
            {
                rest[i] -= part * change[i];
                y[i] -= part * reply[i];
            }
        }
    }

    private double[] Less(double[] a, double[] b)
    {
        var less = new double[size];
        for (var i = 0; i < size; i++)
        {
            less[i] = a[i] - b[i];
        }

        return less;
    }

    private double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < size; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
