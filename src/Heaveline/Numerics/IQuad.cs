namespace Heaveline.Numerics;

/// <summary>
/// Four values, one per corner (front left, front right, rear left, rear right): a road under the wheels as a step reads it.
/// </summary>
internal interface IQuad<TSelf, TLane>
    where TSelf : struct, IQuad<TSelf, TLane>
    where TLane : struct, ILane<TLane>
{
    static abstract TSelf Of(TLane frontLeft, TLane frontRight, TLane rearLeft, TLane rearRight);

    /// <summary>The same value at every corner.</summary>
    static abstract TSelf All(TLane value);

    /// <summary>Value at corner 0 to 3.</summary>
    TLane At(int corner);

    static abstract TSelf Fma(TSelf a, TSelf b, TSelf c);

    static abstract TSelf Max(TSelf a, TSelf b);

    static abstract TSelf Min(TSelf a, TSelf b);

    static abstract TSelf Sqrt(TSelf a);

    static abstract TSelf Power(TSelf a, TSelf b);

    /// <summary>Whether a is above b at any corner of any car.</summary>
    static abstract bool AnyAbove(TSelf a, TSelf b);

    static abstract TSelf WhereAtMost(TSelf a, TSelf limit, TSelf then, TSelf otherwise);

    /// <summary>Left and right exchanged.</summary>
    static abstract TSelf SwapSides(TSelf a);

    /// <summary>Front and rear exchanged.</summary>
    static abstract TSelf SwapEnds(TSelf a);

    /// <summary>(front left + front right) + (rear left + rear right).</summary>
    static abstract TLane Sum(TSelf a);

    static abstract TSelf operator +(TSelf a, TSelf b);

    static abstract TSelf operator -(TSelf a, TSelf b);

    static abstract TSelf operator *(TSelf a, TSelf b);

    static abstract TSelf operator /(TSelf a, TSelf b);
}
