using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>
/// A damping ratio instead of a table: c = 2ζ√(k_w·m) at the wheel, k_w the wheel rate of the spring alone, m the sprung mass on the wheel (whatever
/// carries it), both in the reference state, mean of the axle's two wheels.
/// </summary>
public sealed record RatioDamper : DamperLaw
{
    /// <summary>ζ, mean of bump and rebound (–). 0 to 3.</summary>
    public required Amount<Plain> Ratio { get; init => field = Checked.Within(value, 0.0, 3.0, "Road cars lie near 0.2 to 0.4."); }

    /// <summary>Rebound rate over bump rate (–), the mean kept. 0.2 to 10; 1 is a linear damper.</summary>
    public Amount<Plain> ReboundPerBump { get; init => field = Checked.Within(value, 0.2, 10.0, "2 to 3 is usual."); } = new(1.0);
}
