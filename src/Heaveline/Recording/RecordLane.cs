using Heaveline.Numerics;

namespace Heaveline.Recording;

/// <summary>A pair of numbers that notes what is done to it: the lines of the kernel run on it as on any other lane.</summary>
/// <param name="line">Its line in the record that the thread writes; 0 is zero.</param>
internal readonly struct RecordLane(int line) : ILane<RecordLane>
{
    public static int Count => 2;

    /// <summary>Its line.</summary>
    public int Line { get; } = line;

    private static Record Record => Record.Writing;

    public static RecordLane Of(double value) => new(Record.Number(value));

    public static RecordLane From(ReadOnlySpan<double> values) => new(Record.Constant(values[0], values[1]));

    public void To(Span<double> values) => throw new NotSupportedException("What is recorded has no value yet.");

    public static RecordLane Fma(RecordLane a, RecordLane b, RecordLane c) => new(Record.Fused(a.Line, b.Line, c.Line));

    public static RecordLane Max(RecordLane a, RecordLane b) => new(Record.Larger(a.Line, b.Line));

    public static RecordLane Min(RecordLane a, RecordLane b) => new(Record.Smaller(a.Line, b.Line));

    public static RecordLane Sqrt(RecordLane a) => new(Record.Root(a.Line));

    public static RecordLane Power(RecordLane a, RecordLane b) => new(Record.Power(a.Line, b.Line));

    // Who asks may pass something over where the answer is no; what is not known yet may be above.
    public static bool AnyAbove(RecordLane a, RecordLane b) => !Record.IsNowhereAbove(a.Line, b.Line);

    public static RecordLane WhereAtMost(RecordLane a, RecordLane limit, RecordLane then, RecordLane otherwise) =>
        new(Record.Choice(a.Line, limit.Line, then.Line, otherwise.Line));

    /// <summary>Both places exchanged.</summary>
    public static RecordLane Swap(RecordLane a) => new(Record.Exchanged(a.Line));

    /// <summary>The first place twice.</summary>
    public static RecordLane First(RecordLane a) => new(Record.First(a.Line));

    /// <summary>The second place twice.</summary>
    public static RecordLane Second(RecordLane a) => new(Record.Second(a.Line));

    /// <summary>The first places of two.</summary>
    public static RecordLane Joined(RecordLane front, RecordLane rear) => new(Record.Joined(front.Line, rear.Line));

    public static RecordLane operator +(RecordLane a, RecordLane b) => new(Record.Sum(a.Line, b.Line));

    public static RecordLane operator -(RecordLane a, RecordLane b) => new(Record.Difference(a.Line, b.Line));

    public static RecordLane operator *(RecordLane a, RecordLane b) => new(Record.Product(a.Line, b.Line));

    public static RecordLane operator /(RecordLane a, RecordLane b) => new(Record.Quotient(a.Line, b.Line));

    public static RecordLane operator -(RecordLane a) => new(Record.Negative(a.Line));
}
