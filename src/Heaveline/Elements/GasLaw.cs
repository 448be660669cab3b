using System.Runtime.Intrinsics;
using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Elements;

/// <summary>
/// Gas that is pressed together: F₀·(1/(1 − a·x))ⁿ, F₀ its force (or absolute pressure) in the reference state, a·x the share of its volume.
/// </summary>
/// <param name="what">What holds it, in words ("gas spring").</param>
/// <param name="stiffening">How many times its rate in the reference state a run must reckon with: a choice of ours.</param>
internal sealed class GasLaw(string what, double stiffening) : Law
{
    /// <summary>F₀, N, or Pa in a volume.</summary>
    public required double Reference { get; init; }

    /// <summary>a, 1/m, or 1/m³ in a volume.</summary>
    public required double PerVolume { get; init; }

    /// <summary>Polytropic exponent n (–).</summary>
    public required double Exponent { get; init; }

    /// <summary>x past which no run goes: a tenth of the volume is left.</summary>
    public double Most => 0.9 / PerVolume;

    /// <inheritdoc/>
    public override string Curved => what;

    /// <inheritdoc/>
    public override bool Bends => true;

    /// <inheritdoc/>
    public override double Steepest => stiffening * Reference * PerVolume * Exponent;

    /// <inheritdoc/>
    public override IEnumerable<double> Breaks => [];

    /// <inheritdoc/>
    public override T Force<T>(T x) =>
        T.Of(Reference) * new GasLaw<T> { PerVolume = T.Of(PerVolume), Exponent = T.Of(Exponent) }.Rise(x);

    /// <inheritdoc/>
    public override (double Force, double Slope) Mean(double mean, double deviation, double low, double high) =>
        Gaussian.Of(new Wide(Reference, PerVolume, Exponent), mean, deviation, [], low, high);

    /// <inheritdoc/>
    public override TResult ReadBy<TResult>(ILawReader<TResult> reader) => reader.Read(this);

    // F and F·n·a/(1 − a·x).
    private readonly struct Wide(double reference, double perVolume, double exponent) : IWidePair
    {
        public (Vector512<double> Value, Vector512<double> Slope) At(Vector512<double> x)
        {
            var left = Vector512<double>.One - (Vector512.Create(perVolume) * x);
            var force = Vector512.Create(reference) * Vector512.Exp(Vector512.Create(-exponent) * Vector512.Log(left));
            return (force, force * Vector512.Create(exponent * perVolume) / left);
        }
    }
}
