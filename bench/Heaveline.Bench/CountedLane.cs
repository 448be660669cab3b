using Heaveline.Numerics;

namespace Heaveline.Bench;

/// <summary>A double that counts what is done with it: a multiply-add as two operations, everything else as one.</summary>
internal readonly struct CountedLane(double value) : ILane<CountedLane>
{
    private readonly double value = value;

    /// <summary>Operations so far.</summary>
    public static long Operations { get; private set; }

    public static int Count => 1;

    public static CountedLane Of(double value) => new(value);

    public static CountedLane From(ReadOnlySpan<double> values) => new(values[0]);

    public void To(Span<double> values) => values[0] = value;

    public static CountedLane Fma(CountedLane a, CountedLane b, CountedLane c) => Counted((a.value * b.value) + c.value, 2);

    public static CountedLane Max(CountedLane a, CountedLane b) => Counted(a.value > b.value ? a.value : b.value);

    public static CountedLane Min(CountedLane a, CountedLane b) => Counted(a.value < b.value ? a.value : b.value);

    public static CountedLane Sqrt(CountedLane a) => Counted(Math.Sqrt(a.value));

    public static CountedLane Power(CountedLane a, CountedLane b) => Counted(Math.Pow(a.value, b.value));

    public static bool AnyAbove(CountedLane a, CountedLane b) => a.value > b.value;

    public static CountedLane WhereAtMost(CountedLane a, CountedLane limit, CountedLane then, CountedLane otherwise) =>
        Counted(a.value <= limit.value ? then.value : otherwise.value);

    public static CountedLane operator +(CountedLane a, CountedLane b) => Counted(a.value + b.value);

    public static CountedLane operator -(CountedLane a, CountedLane b) => Counted(a.value - b.value);

    public static CountedLane operator *(CountedLane a, CountedLane b) => Counted(a.value * b.value);

    public static CountedLane operator /(CountedLane a, CountedLane b) => Counted(a.value / b.value);

    public static CountedLane operator -(CountedLane a) => Counted(-a.value);

    private static CountedLane Counted(double value, int operations = 1)
    {
        Operations += operations;
        return new(value);
    }
}
