using Heaveline.Roads;
using Heaveline.Ties;

namespace Heaveline.Studies;

/// <summary>What is asked of cable ties: a car, the obstacle that it crossed, and what the ties showed.</summary>
public sealed record TiesAsked
{
    /// <summary>The car under the load of the passes.</summary>
    public required LoadedCar Car { get; init; }

    /// <summary>The obstacle.</summary>
    public required Road Road { get; init; }

    /// <summary>The readings.</summary>
    public required TieReadings Readings { get; init; }

    /// <summary>Name of the car's file without its folder, for a variant of it; blank for none.</summary>
    public string CarFile { get; init; } = "";
}
