using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Figures;

namespace Heaveline.Studies;

/// <summary>What is asked of a standing car: under which loads, with which doubts.</summary>
public sealed record DescribeAsked
{
    /// <summary>The car.</summary>
    public required Car Car { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>The loads, at least one, in the order of the columns.</summary>
    public required ImmutableArray<LoadState> Loads { get; init => field = Drawable.Some(value, "Give at least one load state."); }

    /// <summary>Whether loads that the car cannot bear are left out, each with its reason. Otherwise one of them refuses the whole.</summary>
    public bool LeavesOutUnbearable { get; init; }

    /// <summary>Whether all damped modes under the first load state in the file are listed, and drawn before the load states.</summary>
    public bool WithModes { get; init; }

    /// <summary>Whether every wheel's load and travel, the ride rates and the loaded body's inertias are listed too.</summary>
    public bool WithWheels { get; init; }

    /// <summary>Whether every number gets its doubt by slopes (JCGM 100:2008, clause 5): fast.</summary>
    public bool WithSlopes { get; init; }

    /// <summary>How many cars are drawn within the stated doubts, for every number's interval; null for none.</summary>
    public int? Draws { get; init; }

    /// <summary>Seed of the draws.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>A car empty and under every load state that it has.</summary>
    public static DescribeAsked Of(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        return new DescribeAsked { Car = car, Loads = AllLoads(car) };
    }

    /// <summary>Empty, and every load state of a car.</summary>
    public static ImmutableArray<LoadState> AllLoads(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        return [LoadState.Reference, .. car.LoadStates];
    }
}
