using System.Runtime.Intrinsics;
using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Elements;

/// <summary>Nothing within a clearance, then ±C·pᵉ with p the travel past it: towards +x, or against −x.</summary>
/// <param name="what">What it is, in words ("bump stop with an exponent").</param>
internal sealed class PowerLaw(string what) : Law
{
    // A run must reckon with being so far past the clearance, m: a choice of ours.
    private const double Deep = 0.05;

    // Where means over it are taken in parts, m past the clearance.
    private static readonly double[] Steep = [1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 5e-3];

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
        Steep.Prepend(0.0).Select(beyond => Direction * (Clearance + beyond));

    /// <inheritdoc/>
    public override T Force<T>(T x)
    {
        var stop = new StopLaw<T> { Clearance = T.Of(Clearance), Factor = T.Of(Coefficient), Exponent = T.Of(Exponent) };
        return T.Of(Direction) * stop.Push(T.Of(Direction) * x);
    }

    /// <inheritdoc/>
    public override (double Force, double Slope) Mean(double mean, double deviation, double low, double high)
    {
        // Seen in its own direction, nothing happens short of the clearance: what is left is a share of the whole.
        var side = Direction * mean;
        var (from, to) = Direction > 0.0 ? (low, high) : (-high, -low);
        if (!(deviation > 0.0))
        {
            var still = Force(new DualLane(Math.Clamp(mean, low, high), 1.0));
            return (still.Value, still.Slope);
        }

        var start = Math.Max(from, Clearance);
        if (to <= Clearance || start >= Gaussian.Farthest(side, deviation))
        {
            return (0.0, 0.0);
        }

        Span<double> breaks = stackalloc double[Steep.Length];
        for (var k = 0; k < breaks.Length; k++)
        {
            breaks[k] = Clearance + Steep[k];
        }

        var (force, slope) = Gaussian.Of(new Wide(Clearance, Coefficient, Exponent), side, deviation, breaks, start, to);
        var share = Gaussian.Max(side, deviation, start, from, to).Slope;
        return share > 0.0 ? (Direction * share * force, share * slope) : (0.0, 0.0);
    }

    /// <inheritdoc/>
    public override TResult ReadBy<TResult>(ILawReader<TResult> reader) => reader.Read(this);

    // C·pᵉ and e·C·pᵉ⁻¹.
    private readonly struct Wide(double clearance, double factor, double exponent) : IWidePair
    {
        public (Vector512<double> Value, Vector512<double> Slope) At(Vector512<double> x)
        {
            var past = Vector512.Max(x - Vector512.Create(clearance), Vector512.Create(1e-300));
            var slope = Vector512.Create(factor * exponent) * Vector512.Exp(Vector512.Create(exponent - 1.0) * Vector512.Log(past));
            return (slope * past / Vector512.Create(exponent), slope);
        }
    }
}
