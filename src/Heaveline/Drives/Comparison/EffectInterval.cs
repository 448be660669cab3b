using Heaveline.Numerics;

namespace Heaveline.Drives.Comparison;

/// <summary>What a change did to a number, as a share of it, with its interval.</summary>
public sealed record EffectInterval
{
    /// <summary>The mean difference of the number's logarithm, after less before.</summary>
    public required double Log { get; init; }

    /// <summary>Its standard error.</summary>
    public required double StandardError { get; init; }

    /// <summary>Degrees of freedom of the scatter behind it.</summary>
    public required int Freedom { get; init; }

    /// <summary>Half-width of the interval of <see cref="Log"/>.</summary>
    public required double HalfWidth { get; init; }

    /// <summary>Probability of a difference at least so large where the change did nothing, two-sided (Student's t).</summary>
    public required double Probability { get; init; }

    /// <summary>The same with a doubt beside what passes scatter by.</summary>
    /// <param name="deviation">Its standard deviation, of the logarithm.</param>
    internal EffectInterval With(double deviation)
    {
        if (!(deviation > 0.0))
        {
            return this;
        }

        var error = Math.Sqrt((StandardError * StandardError) + (deviation * deviation));
        return this with
        {
            StandardError = error,
            HalfWidth = StandardError > 0.0 ? HalfWidth * error / StandardError : Gaussian.Ninety * error,
            Probability = 2.0 * MathNet.Numerics.Distributions.StudentT.CDF(0.0, 1.0, Freedom, -Math.Abs(Log) / error),
        };
    }

    /// <summary>The change as a share: −0.15 is a fall by 15 %.</summary>
    public double Value => Math.Exp(Log) - 1.0;

    /// <summary>The interval's lower end, a share.</summary>
    public double Low => Math.Exp(Log - HalfWidth) - 1.0;

    /// <summary>The interval's upper end, a share.</summary>
    public double High => Math.Exp(Log + HalfWidth) - 1.0;
}
