using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>One axle: its wheels, what joins them and what stands between them and the body.</summary>
public sealed record Axle
{
    /// <summary>Distance between the wheels' centre planes, m. 0 for a two-wheeler, else 0.3 to 4 m.</summary>
    public Amount<Length> Track { get; init => field = Checked.Within(value, 0.0, 4.0, "Measure between the middles of the two tyres."); } = new(0.0);

    /// <summary>Unsprung mass of the whole axle: wheels, hubs, brakes, and the moving share of arms and springs, kg.</summary>
    public required Amount<Mass> UnsprungMass
    {
        get;
        init => field = Checked.Positive(value, "Weigh a wheel and hub, and add half of each arm and spring.");
    }

    /// <summary>Independent wheels or a solid axle.</summary>
    public SuspensionKind Suspension { get; init; } = SuspensionKind.Independent;

    /// <summary>Roll inertia of a solid axle with its wheels about its own centre, kg m². Needed for a solid axle.</summary>
    public Amount<Inertia>? RollInertia
    {
        get;
        init => field = value is { } v ? Checked.Positive(v, "A wheel of mass m at half-track y adds about m·y² on each side.") : null;
    }

    /// <summary>Distance between the springs along a solid axle, m; null: at the wheels. At most the track.</summary>
    public Amount<Length>? SpringBase { get; init; }

    /// <summary>Distance between the dampers along a solid axle, m; null: at the springs.</summary>
    public Amount<Length>? DamperBase { get; init; }

    /// <summary>Distance between the stops along a solid axle, m; null: at the springs.</summary>
    public Amount<Length>? StopBase { get; init; }

    /// <summary>One of the two springs (the only one of a two-wheeler's wheel).</summary>
    public required Spring Spring { get; init; }

    /// <summary>One of the two dampers.</summary>
    public required Damper Damper { get; init; }

    /// <summary>Bump stop of each wheel, or null.</summary>
    public Stop? BumpStop { get; init; }

    /// <summary>Rebound stop of each wheel, or null.</summary>
    public Stop? ReboundStop { get; init; }

    /// <summary>Friction of each wheel's suspension.</summary>
    public Friction Friction { get; init; } = Friction.None;

    /// <summary>Anti-roll bar: rate k of F_left = k·(s_left − s_right) at the wheel, N/m. 0 for none.</summary>
    public Amount<Stiffness> AntiRollBar { get; init => field = Checked.NotNegative(value, "Leave it out when there is no bar."); } = new(0.0);

    /// <summary>One tyre.</summary>
    public required Tyre Tyre { get; init; }
}
