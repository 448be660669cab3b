using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>
/// Dry friction of one wheel's suspension: a stiff spring in series with a slider that gives way at F_c (an elasto-plastic element). Below F_c it
/// holds like a spring, so that a suspension comes to real rest away from its balance; past it F_c stands against the motion.
/// </summary>
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

    /// <summary>
    /// Wheel travel from rest over which friction rises from nothing to F_c, m: it sticks and gives way as a spring first. Above zero; default
    /// 0.3 mm, common practice, no source.
    /// </summary>
    public Amount<Length> PreSliding
    {
        get;
        init => field = Checked.Within(value, 1e-5, 0.01, "0.3 mm is usual where nobody has measured it.");
    } = new(0.0003);

    /// <summary>
    /// Wheel speed at which 71 % of the friction acts in a random ride made straight, F_c · v/√(v² + v_s²), m/s; a pass does not use it. Above zero;
    /// default 5 mm/s.
    /// </summary>
    public Amount<Velocity> SpeedScale
    {
        get;
        init => field = Checked.Within(value, 1e-4, 0.2, "5 mm/s keeps the friction sharp for body motions.");
    } = new(0.005);
}
