using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>Dry friction of one wheel's suspension, smoothed: F = F_c · v/√(v² + v_s²).</summary>
public sealed record Friction
{
    /// <summary>No friction.</summary>
    public static Friction None { get; } = new();

    /// <summary>Half the width of the force–travel hysteresis at the wheel, N.</summary>
    public Amount<Force> HalfWidth
    {
        get;
        init => field = Checked.NotNegative(value, "Press the car down slowly, let it rise slowly; half the difference of the scale readings is it.");
    } = new(0.0);

    /// <summary>Wheel speed at which 71 % of the friction acts, m/s. Above zero; default 5 mm/s.</summary>
    public Amount<Velocity> SpeedScale
    {
        get;
        init => field = Checked.Within(value, 1e-4, 0.2, "5 mm/s keeps the friction sharp for body motions.");
    } = new(0.005);
}
