using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>A tilt test: one axle lifted with the suspension locked, the other on the scales.</summary>
public sealed record TiltReadings
{
    /// <summary>The whole car, kg.</summary>
    public required Amount<Mass> Total { get; init; }

    /// <summary>Load of the axle that stays down, car level, kg.</summary>
    public required Amount<Mass> Level { get; init; }

    /// <summary>Load of the same axle with the other one lifted, kg.</summary>
    public required Amount<Mass> Lifted { get; init; }

    /// <summary>By how much the car was turned from level, rad. 0.02 to 1.</summary>
    public required Amount<Angle> Angle
    {
        get;
        init => field = Checked.Within(value, 0.02, 1.0, "Lay an inclinometer on a sill: 10° to 20° is worth the trouble.");
    }

    /// <summary>Wheelbase, m.</summary>
    public required Amount<Length> Wheelbase { get; init => field = Checked.Positive(value, "From front to rear wheel centre."); }

    /// <summary>Height of the front wheel centres above the ground, car level, m.</summary>
    public required Amount<Length> FrontRadius { get; init => field = Checked.Positive(value, "Measure from the ground to the wheel's centre."); }

    /// <summary>Height of the rear wheel centres above the ground, car level, m.</summary>
    public required Amount<Length> RearRadius { get; init => field = Checked.Positive(value, "Measure from the ground to the wheel's centre."); }

    /// <summary>Which axle was lifted.</summary>
    public AxleEnd LiftedEnd { get; init; } = AxleEnd.Front;

    /// <summary>Whether rods or blocks held the suspension.</summary>
    public bool Locked { get; init; } = true;
}
