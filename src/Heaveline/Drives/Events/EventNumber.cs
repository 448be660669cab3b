using Heaveline.Measures;

namespace Heaveline.Drives.Events;

/// <summary>One number of a bump that was driven over.</summary>
/// <param name="Measure">What it is: a measure of a computed pass, by its key, label and unit.</param>
/// <param name="Value">The number, SI; not finite where there is none.</param>
/// <param name="HalfWidth">
/// Half-width of its 90 % interval as a measurement (noise, onset and length of the bump, the gyro's gain),
/// SI; not what one pass differs from another.
/// </param>
public sealed record EventNumber(Measure Measure, double Value, double HalfWidth)
{
    /// <summary>By how much it changes where the instants of the bump lie later, SI over s.</summary>
    internal double PerSecond { get; init; }
}
