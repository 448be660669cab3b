namespace Heaveline.Measures;

/// <summary>The pieces of a <see cref="Curve"/>, counted in samples from the first.</summary>
/// <param name="values">One value a sample.</param>
internal readonly ref struct CurvePoints(ReadOnlySpan<double> values)
{
    private readonly ReadOnlySpan<double> values = values;

    /// <summary>The value at a place.</summary>
    public double At(double place)
    {
        var k = Math.Min((int)place, values.Length - 2);
        return Piece(k).At(place - k);
    }

    /// <summary>Whether the curve may turn beside a sample: it stands out among its neighbours, above or below both.</summary>
    public bool StandsOut(int k) => (values[k] - values[k - 1]) * (values[k] - values[k + 1]) >= 0.0;

    /// <summary>The turn beside a sample that stands out.</summary>
    public (double Place, double Value) Turn(int k)
    {
        var (best, away) = ((Place: (double)k, Value: values[k]), -Second(k));
        for (var j = k - 1; j <= k; j++)
        {
            if (Piece(j) is { Turn: { } turn } piece && away * (piece.At(turn) - best.Value) > 0.0)
            {
                best = (j + turn, piece.At(turn));
            }
        }

        return best;
    }

    /// <summary>The turn beside a sample if it is a swing's top away from zero; null where it is none.</summary>
    public (double Place, double Value)? Lobe(int k)
    {
        // Told by the samples, so that one swing counts once; the top lies beside the highest of them.
        var (x, rise, fall) = (values[k], values[k] - values[k - 1], values[k] - values[k + 1]);
        return rise != 0.0 && rise * fall >= 0.0 && x * rise > 0.0 ? Turn(k) : null;
    }

    /// <summary>The piece that begins at a sample. At the record's ends there is one second difference only, and none among two samples.</summary>
    public CurvePiece Piece(int k)
    {
        var last = values.Length - 2;
        return CurvePiece.Of(values[k], values[k + 1], last > 0 ? Second(Math.Max(1, k)) : 0.0, last > 0 ? Second(Math.Min(k + 1, last)) : 0.0);
    }

    /// <summary>The second difference at a sample.</summary>
    public double Second(int k) => values[k - 1] - (2.0 * values[k]) + values[k + 1];
}
