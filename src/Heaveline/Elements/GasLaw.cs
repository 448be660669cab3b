using Heaveline.Elements.Forces;

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
    public override TResult ReadBy<TResult>(ILawReader<TResult> reader) => reader.Read(this);
}
