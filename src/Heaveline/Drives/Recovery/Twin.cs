using System.Collections.Immutable;
using Heaveline.Cars;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// A car file scaled until its own passes over the recovered road, at the speeds of the drive and through the same estimator, give the numbers that
/// the drive gave. What the estimator makes of springs that are not straight is thereby the same on both sides.
/// </summary>
public sealed record Twin
{
    /// <summary>The car with its springs, dampers, friction and inertia scaled.</summary>
    public required Car Car { get; init; }

    /// <summary>The factors, in the order of <see cref="TwinScale"/>.</summary>
    public required ImmutableArray<TwinFactor> Factors { get; init; }

    /// <summary>Steps that it took.</summary>
    public required int Steps { get; init; }

    /// <summary>Passes computed.</summary>
    public required int Passes { get; init; }

    /// <summary>Sum of the squared differences left, each over its standard deviation: about as many as numbers less factors.</summary>
    public required double Misfit { get; init; }

    /// <summary>Why nothing of it is to be believed; blank otherwise.</summary>
    public string Refusal { get; init; } = "";
}
