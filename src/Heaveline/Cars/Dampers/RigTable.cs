namespace Heaveline.Cars;

/// <summary>What a damper's run in a rig says: its table, its gas force, and what one line of force against velocity cannot show.</summary>
public sealed record RigTable
{
    /// <summary>Force against velocity without the gas force, closing and opening apart, through (0, 0).</summary>
    public required TableDamper Law { get; init; }

    /// <summary>Force that was taken off every sample, N, closing positive: gas charge and any offset of the load cell.</summary>
    public required double GasForce { get; init; }

    /// <summary>Middle of the forces at which the damper turns round, N: the gas force as the ends of the stroke show it.</summary>
    public required double TurningForce { get; init; }

    /// <summary>
    /// Half the difference of the forces at which the damper turns round from closing and from opening, N. Friction and the compliance of seals,
    /// valves and mounts make it, so it is friction at most. <see cref="Law"/> holds it already at all but the lowest velocities: a car with this
    /// table is not to be given it as friction too.
    /// </summary>
    public required double HysteresisHalfWidth { get; init; }

    /// <summary>Root mean square distance of the moving samples from the table, N, hysteresis included.</summary>
    public required double Scatter { get; init; }

    /// <summary>Work the damper took in the whole cycles of the run, J.</summary>
    public required double Work { get; init; }

    /// <summary>Work the table takes at the same velocities, J. Far from <see cref="Work"/>, the table is not the damper.</summary>
    public required double TableWork { get; init; }

    /// <summary>Whole cycles in the run.</summary>
    public required int Cycles { get; init; }

    /// <summary>Fastest closing, m/s. Past it the table goes on with its end slope, which nobody measured.</summary>
    public required double FastestBump { get; init; }

    /// <summary>Fastest opening, m/s, positive.</summary>
    public required double FastestRebound { get; init; }
}
