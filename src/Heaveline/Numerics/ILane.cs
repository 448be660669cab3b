namespace Heaveline.Numerics;

/// <summary>
/// A number as kernel and laws see it: one, several side by side, or one with its derivative. The kernel's step is written once over this, so that
/// one car and many side by side are the same lines, and so is each law, so that its force in a step and its exact slope at trim are.
/// </summary>
internal interface ILane<TSelf>
    where TSelf : struct, ILane<TSelf>
{
    /// <summary>How many runs stand side by side in one value.</summary>
    static abstract int Count { get; }

    /// <summary>The same number in every place.</summary>
    static abstract TSelf Of(double value);

    /// <summary>One number per place, from <paramref name="values"/>.</summary>
    static abstract TSelf From(ReadOnlySpan<double> values);

    /// <summary>Writes one number per place.</summary>
    void To(Span<double> values);

    /// <summary>a·b + c with one rounding.</summary>
    static abstract TSelf Fma(TSelf a, TSelf b, TSelf c);

    /// <summary>Adds a·b to a sum with one rounding: in its place, so that the compiler needs no other for it.</summary>
    static virtual void AddProduct(ref TSelf sum, TSelf a, TSelf b) => sum = TSelf.Fma(a, b, sum);

    /// <summary>Adds bend·max(x, at), what a kink adds above its place.</summary>
    static virtual void AddAbove(ref TSelf sum, TSelf bend, TSelf x, TSelf at) => sum = TSelf.Fma(bend, TSelf.Max(x, at), sum);

    /// <summary>Adds bend·min(x, at), what a kink adds below its place.</summary>
    static virtual void AddBelow(ref TSelf sum, TSelf bend, TSelf x, TSelf at) => sum = TSelf.Fma(bend, TSelf.Min(x, at), sum);

    /// <summary>The larger; at a tie of dual numbers the mean of both slopes.</summary>
    static abstract TSelf Max(TSelf a, TSelf b);

    /// <summary>The smaller; at a tie of dual numbers the mean of both slopes.</summary>
    static abstract TSelf Min(TSelf a, TSelf b);

    /// <summary>Square root of a number above zero.</summary>
    static abstract TSelf Sqrt(TSelf a);

    /// <summary>a to the power b, a above zero.</summary>
    static abstract TSelf Power(TSelf a, TSelf b);

    /// <summary>Whether a is above b in any place.</summary>
    static abstract bool AnyAbove(TSelf a, TSelf b);

    /// <summary>Where a ≤ limit, then; elsewhere, otherwise.</summary>
    static abstract TSelf WhereAtMost(TSelf a, TSelf limit, TSelf then, TSelf otherwise);

    static abstract TSelf operator +(TSelf a, TSelf b);

    static abstract TSelf operator -(TSelf a, TSelf b);

    static abstract TSelf operator *(TSelf a, TSelf b);

    static abstract TSelf operator /(TSelf a, TSelf b);

    static abstract TSelf operator -(TSelf a);
}
