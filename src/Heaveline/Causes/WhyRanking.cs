using Heaveline.Measures;

namespace Heaveline.Causes;

/// <summary>The causes of one measure, greatest share first.</summary>
public sealed record WhyRanking
{
    /// <summary>The measure.</summary>
    public required Measure Measure { get; init; }

    /// <summary>Its value for the car as it is.</summary>
    public required double Value { get; init; }

    /// <summary>Its value for the neutral car: what the road does to any car of this weight and frequency. NaN when there is no such car.</summary>
    public required double NeutralValue { get; init; }

    /// <summary>All causes that this car can have, by the size of their share either way.</summary>
    public required IReadOnlyList<PitchCause> Causes { get; init; }
}
