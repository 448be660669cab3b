using System.Runtime.CompilerServices;

namespace Heaveline.Numerics;

/// <summary>Complex numbers side by side, as many as <typeparamref name="T"/> has places: the same bits in a register of any width.</summary>
internal readonly struct LaneComplex<T>(T real, T imaginary)
    where T : unmanaged, ILane<T>
{
    public T Real { get; } = real;

    public T Imaginary { get; } = imaginary;

    /// <summary>|a|².</summary>
    public T Square
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => T.Fma(Real, Real, Imaginary * Imaginary);
    }

    /// <summary>1/a.</summary>
    public LaneComplex<T> Inverse
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get
        {
            var scale = T.Of(1.0) / Square;
            return new(scale * Real, -(scale * Imaginary));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneComplex<T> operator +(LaneComplex<T> a, LaneComplex<T> b) => new(a.Real + b.Real, a.Imaginary + b.Imaginary);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneComplex<T> operator -(LaneComplex<T> a, LaneComplex<T> b) => new(a.Real - b.Real, a.Imaginary - b.Imaginary);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneComplex<T> operator *(LaneComplex<T> a, LaneComplex<T> b) => new(
        T.Fma(a.Real, b.Real, -(a.Imaginary * b.Imaginary)), T.Fma(a.Real, b.Imaginary, a.Imaginary * b.Real));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneComplex<T> operator *(T a, LaneComplex<T> b) => new(a * b.Real, a * b.Imaginary);

    /// <summary>a·b + c.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneComplex<T> Fma(T a, LaneComplex<T> b, LaneComplex<T> c) => new(T.Fma(a, b.Real, c.Real), T.Fma(a, b.Imaginary, c.Imaginary));

    /// <summary>a·b + c.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneComplex<T> Fma(LaneComplex<T> a, LaneComplex<T> b, LaneComplex<T> c) => new(
        T.Fma(a.Real, b.Real, T.Fma(-a.Imaginary, b.Imaginary, c.Real)), T.Fma(a.Real, b.Imaginary, T.Fma(a.Imaginary, b.Real, c.Imaginary)));
}
