using System.Collections.Immutable;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>One change that makes a car pitch less, with its effect, its price and its chance.</summary>
public sealed record Cure
{
    /// <summary>What is done and how far ("softer front spring, from 24 N/mm to 18.5 N/mm").</summary>
    public required string Words { get; init; }

    /// <summary>What is done, without how far.</summary>
    public required string Act { get; init; }

    /// <summary>Why it may be turned no farther; null where it may, up to the end of its slider, and for a pair.</summary>
    public required CureEnd? End { get; init; }

    /// <summary>What is set, by the keys of the settings, in their units: as the page of the pass sets it.</summary>
    public required ImmutableSortedDictionary<string, double> Values { get; init; }

    /// <summary>The car with it, under the load asked about.</summary>
    public required LoadedCar Car { get; init; }

    /// <summary>Its crossing under each load, that which is asked about first.</summary>
    public required IReadOnlyList<PassAnswer> Passes { get; init; }

    /// <summary>The car with it standing under its fullest load.</summary>
    public required CarAtRest Full { get; init; }

    /// <summary>The car with it on the ordinary random road at the same speed, under the load asked about; null where that cannot be told.</summary>
    public required CarOnRoad? Ride { get; init; }

    /// <summary>In how many drawn cars it helps; null where the car states no doubts.</summary>
    public CureChance? Chance { get; init; }
}
