using Heaveline.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A tilt test to be worked out.</summary>
public sealed record TiltAsked : SheetAsked
{
    /// <summary>The readings.</summary>
    public required TiltReadings Readings { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>All unsprung mass, kg, to give the body's own height; null when not known.</summary>
    public Amount<Mass>? Unsprung { get; init; }
}
