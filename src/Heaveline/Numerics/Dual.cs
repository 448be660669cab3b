namespace Heaveline.Numerics;

/// <summary>
/// Numbers of any lane with their derivatives in one direction, as <see cref="DualLane"/> has them of one: which of two is larger is chosen by the
/// lanes themselves.
/// </summary>
internal readonly struct Dual<T>(T value, T slope) : ILane<Dual<T>>
    where T : unmanaged, ILane<T>
{
    public static int Count => T.Count;

    public T Value { get; } = value;

    public T Slope { get; } = slope;

    public static Dual<T> Of(double value) => new(T.Of(value), default);

    public static Dual<T> From(ReadOnlySpan<double> values) => new(T.From(values), default);

    public void To(Span<double> values) => Value.To(values);

    public static Dual<T> Fma(Dual<T> a, Dual<T> b, Dual<T> c) => (a * b) + c;

    public static Dual<T> Max(Dual<T> a, Dual<T> b) => new(T.Max(a.Value, b.Value), Chosen(a, b, a.Slope, b.Slope));

    public static Dual<T> Min(Dual<T> a, Dual<T> b) => new(T.Min(a.Value, b.Value), Chosen(a, b, b.Slope, a.Slope));

    public static Dual<T> Sqrt(Dual<T> a)
    {
        var root = T.Sqrt(a.Value);
        return new(root, a.Slope / (root + root));
    }

    // As of one number: the exponent has no slope.
    public static Dual<T> Power(Dual<T> a, Dual<T> b)
    {
        var power = T.Power(a.Value, b.Value);
        return new(power, b.Value * power / a.Value * a.Slope);
    }

    public static bool AnyAbove(Dual<T> a, Dual<T> b) => T.AnyAbove(a.Value, b.Value);

    public static Dual<T> WhereAtMost(Dual<T> a, Dual<T> limit, Dual<T> then, Dual<T> otherwise) => new(
        T.WhereAtMost(a.Value, limit.Value, then.Value, otherwise.Value), T.WhereAtMost(a.Value, limit.Value, then.Slope, otherwise.Slope));

    public static Dual<T> operator +(Dual<T> a, Dual<T> b) => new(a.Value + b.Value, a.Slope + b.Slope);

    public static Dual<T> operator -(Dual<T> a, Dual<T> b) => new(a.Value - b.Value, a.Slope - b.Slope);

    public static Dual<T> operator *(Dual<T> a, Dual<T> b) => new(a.Value * b.Value, (a.Slope * b.Value) + (a.Value * b.Slope));

    public static Dual<T> operator /(Dual<T> a, Dual<T> b) =>
        new(a.Value / b.Value, ((a.Slope * b.Value) - (a.Value * b.Slope)) / (b.Value * b.Value));

    public static Dual<T> operator -(Dual<T> a) => new(-a.Value, -a.Slope);

    // Where a is larger, where b is; at a tie the mean of both.
    private static T Chosen(Dual<T> a, Dual<T> b, T aLarger, T bLarger) => T.WhereAtMost(
        a.Value, b.Value, T.WhereAtMost(b.Value, a.Value, T.Of(0.5) * (aLarger + bLarger), bLarger), aLarger);
}
