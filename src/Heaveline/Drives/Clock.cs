using System.Collections.Immutable;

namespace Heaveline.Drives;

/// <summary>How a sensor kept time.</summary>
public sealed record Clock
{
    /// <summary>Samples a second, Hz: steps over the time that they take, gaps left out.</summary>
    public required double Rate { get; init; }

    /// <summary>Spread of the steps between samples, s: 1.4826 times the median of their distances from the median step.</summary>
    public required double Jitter { get; init; }

    /// <summary>Where samples are missing: steps longer than four median steps.</summary>
    public required ImmutableArray<Stretch> Gaps { get; init; }

    /// <summary>How many rows bore the stamp of the row before.</summary>
    public required int Repeats { get; init; }

    /// <summary>By how much the stamps stepped back, s, each time; what follows was moved on.</summary>
    public required ImmutableArray<double> StepsBack { get; init; }

    /// <summary>Whether stamps came in batches, so that the instants were drawn again as straight lines.</summary>
    public required bool IsBatched { get; init; }

    /// <summary>How long the sensor ran, s, gaps included.</summary>
    public required double Length { get; init; }
}
