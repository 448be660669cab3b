using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>One damper: what it does at its own velocity, and how far it moves with its wheel.</summary>
public sealed record Damper
{
    /// <summary>A measured table or a damping ratio.</summary>
    public required DamperLaw Law { get; init; }

    /// <summary>Damper travel per wheel travel.</summary>
    public MotionRatio MotionRatio { get; init; } = MotionRatio.One;

    /// <summary>Static force of its gas charge on the rod, pushing the car up, N. Zero or above.</summary>
    public Amount<Force> GasForce { get; init => field = Checked.NotNegative(value, "Give 0 N for a damper without gas pressure."); } = new(0.0);

    /// <summary>
    /// Gas force of the dampers that stood in the car on the scales, N; null: this one's. What the springs carried there follows from it, so that
    /// other gas lifts or lowers the car.
    /// </summary>
    public Amount<Force>? WeighedGasForce
    {
        get;
        init => field = value is { } v ? Checked.NotNegative(v, "Give 0 N for dampers without gas pressure.") : null;
    }
}
