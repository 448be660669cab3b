using Heaveline.Quantities;

namespace Heaveline.Drives;

/// <summary>How forward lay before and after the place at which two fits explain most more than one.</summary>
/// <param name="Angle">By how much forward turned against the phone, rad.</param>
/// <param name="Deviation">Standard deviation of that, rad.</param>
/// <param name="From">Not before, s.</param>
/// <param name="To">Not after, s.</param>
/// <param name="Explained">The lesser share that the two fits explain (–).</param>
internal sealed record ForwardTurn(double Angle, double Deviation, double From, double To, double Explained)
{
    // The place is the best of nine: three standard deviations leave it to chance about as rarely as 90 % of one place.
    private const double Sure = 3.0;

    // Less harms nothing (the half-width that forward needs).
    private static readonly double Least = 10.0 / In.Degrees.Factor;

    private const double LeastExplained = 0.5;

    /// <summary>Whether the phone turned round in its place.</summary>
    public bool IsSure => Explained >= LeastExplained && Math.Abs(Angle) > Math.Max(Least, Sure * Deviation);
}
