using Heaveline.Drives.Identification;

namespace Heaveline.Drives.Comparison;

/// <summary>What became of one number of the car that moves like the drive.</summary>
/// <param name="Number">Which.</param>
/// <param name="Before">Before the change, Hz or a ratio.</param>
/// <param name="After">After it.</param>
/// <param name="Effect">The change of its logarithm with its interval.</param>
public sealed record NumberChange(CarNumber Number, double Before, double After, EffectInterval Effect)
{
    /// <summary>
    /// Whether it changed beyond chance among all numbers that were compared (Bonferroni): one of them is told wrongly as often as one interval
    /// alone would be.
    /// </summary>
    public required bool IsTold { get; init; }
}
