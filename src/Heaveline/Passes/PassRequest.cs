using Heaveline.Models;
using Heaveline.Roads;

namespace Heaveline.Passes;

/// <summary>One pass to be computed among many.</summary>
/// <param name="Model">Car and load at trim.</param>
/// <param name="Road">The road.</param>
/// <param name="Speed">Speed, m/s.</param>
public sealed record PassRequest(RideModel Model, Road Road, double Speed)
{
    /// <summary>Where the front wheel centres stand when the rear ones leave the obstacle (or the road's end), m.</summary>
    internal double RearLeavesAt => (Road.EventEnd ?? Road.End) + Model.Car.Wheelbase.Si;

    /// <summary>When the rear wheel centres leave the obstacle (or the road's end), s.</summary>
    internal double RearLeaves => RearLeavesAt / Speed;
}
