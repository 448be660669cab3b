using Heaveline.Elements.Forces;

namespace Heaveline.Elements;

/// <summary>Nothing within a clearance, then ±C·pᵉ with p the travel past it: towards +x, or against −x.</summary>
/// <param name="what">What it is, in words ("bump stop with an exponent").</param>
internal sealed class PowerLaw(string what) : Law
{
    // A run must reckon with being so far past the clearance, m: a choice of ours.
    private const double Deep = 0.05;

    /// <summary>Travel until it touches, m, on either side positive.</summary>
    public required double Clearance { get; init; }

    /// <summary>C, N/mᵉ.</summary>
    public required double Coefficient { get; init; }

    /// <summary>e (–), 1 or more.</summary>
    public required double Exponent { get; init; }

    /// <summary>+1 when it is touched by x above the clearance, −1 by x below minus it.</summary>
    public required double Direction { get; init; }

    /// <inheritdoc/>
    public override string Curved => what;

    /// <inheritdoc/>
    public override bool Bends => true;

    /// <inheritdoc/>
    public override double Steepest => Coefficient * Exponent * Math.Pow(Deep, Exponent - 1.0);

    /// <inheritdoc/>
    public override IEnumerable<double> Breaks =>
        new[] { 0.0, 1e-5, 1e-4, 1e-3, 5e-3 }.Select(beyond => Direction * (Clearance + beyond));

    /// <inheritdoc/>
    public override T Force<T>(T x)
    {
        var stop = new StopLaw<T> { Clearance = T.Of(Clearance), Factor = T.Of(Coefficient), Exponent = T.Of(Exponent) };
        return T.Of(Direction) * stop.Push(T.Of(Direction) * x);
    }

    /// <inheritdoc/>
    public override TResult ReadBy<TResult>(ILawReader<TResult> reader) => reader.Read(this);
}
