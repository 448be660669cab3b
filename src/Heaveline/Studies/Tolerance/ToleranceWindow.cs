using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>Where a reading of a fitted car must lie.</summary>
/// <param name="Reading">What is read.</param>
/// <param name="Low">Least: m, or swings; minus infinity where there is none.</param>
/// <param name="High">Most; infinity where there is none.</param>
public sealed record ToleranceWindow(WorkshopReading Reading, double Low, double High)
{
    /// <summary>Whether a reading lies in it.</summary>
    public bool Holds(double value) => value >= Low && value <= High;
}
