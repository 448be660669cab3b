using System.Collections.Immutable;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What is asked of a ride: which cars, on which random road, at which speeds.</summary>
public sealed record RideAsked
{
    /// <summary>The cars, at least one.</summary>
    public required ImmutableArray<LoadedCar> Cars { get; init => field = Drawable.Some(value, "Give at least one car."); }

    /// <summary>The random road.</summary>
    public required NamedSpectrum Road { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>Speeds, m/s, rising, at least one; each 0.5 to 120.</summary>
    public required ImmutableArray<double> Speeds { get; init => field = Drawable.Some(value, "Give at least one speed."); }

    /// <summary>Tables and passes in time stand at every so many of the speeds, from the first on. 1 for all of them.</summary>
    public int Every
    {
        get;
        init => field = value >= 1
            ? value
            : throw new RefusedValueException("every how many of the speeds", $"{value}", "at least 1", "1 stands for all of them.");
    }
    = 1;

    /// <summary>Name of the first car's seat that the figures speak of; null: its first.</summary>
    public string? Seat { get; init; }

    /// <summary>Whether the whole car is also driven in time over made roads.</summary>
    public bool InTime { get; init; }

    /// <summary>How many cars are drawn within the stated doubts, for every number's interval; null for none.</summary>
    public int? Draws { get; init; }

    /// <summary>Seed of the made roads and of the draws.</summary>
    public ulong Seed { get; init; } = 1;
}
