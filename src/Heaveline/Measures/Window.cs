namespace Heaveline.Measures;

/// <summary>A stretch of time of a pass.</summary>
/// <param name="From">Its beginning, s.</param>
/// <param name="To">Its end, s.</param>
public readonly record struct Window(double From, double To)
{
    /// <summary>From t = 0 to the end of the record.</summary>
    public static Window Whole { get; } = new(0.0, double.PositiveInfinity);

    /// <summary>Its length, s.</summary>
    public double Length => To - From;

    /// <summary>The samples inside it, both ends included.</summary>
    internal ReadOnlySpan<double> Of(ReadOnlySpan<double> time, ReadOnlySpan<double> trace)
    {
        var first = time.BinarySearch(From - 1e-9);
        first = first < 0 ? ~first : first;
        var last = time.BinarySearch(To + 1e-9);
        last = last < 0 ? ~last : last + 1;
        return last > first ? trace[first..last] : [];
    }
}
