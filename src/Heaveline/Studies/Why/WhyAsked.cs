using Heaveline.Causes;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What is asked when a car pitches: which car, over which road, how fast.</summary>
public sealed record WhyAsked
{
    /// <summary>The car.</summary>
    public required LoadedCar Car { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>The road.</summary>
    public required Road Road { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>Speed, m/s, 0.5 to 120.</summary>
    public required double Speed { get; init; }

    /// <summary>The neutral car that it is held against.</summary>
    public WhyOptions Options { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = WhyOptions.Default;
}
