using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>Four complex numbers side by side.</summary>
internal readonly struct WideComplex(Vector256<double> real, Vector256<double> imaginary)
{
    public Vector256<double> Real { get; } = real;

    public Vector256<double> Imaginary { get; } = imaginary;

    /// <summary>|a|².</summary>
    public Vector256<double> Square
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => (Real * Real) + (Imaginary * Imaginary);
    }

    public WideComplex Conjugate => new(Real, -Imaginary);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static WideComplex operator +(WideComplex a, WideComplex b) => new(a.Real + b.Real, a.Imaginary + b.Imaginary);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static WideComplex operator -(WideComplex a, WideComplex b) => new(a.Real - b.Real, a.Imaginary - b.Imaginary);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static WideComplex operator *(WideComplex a, WideComplex b) =>
        new((a.Real * b.Real) - (a.Imaginary * b.Imaginary), (a.Real * b.Imaginary) + (a.Imaginary * b.Real));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static WideComplex operator *(Vector256<double> a, WideComplex b) => new(a * b.Real, a * b.Imaginary);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static WideComplex operator *(double a, WideComplex b) => new(a * b.Real, a * b.Imaginary);
}
