using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>
/// A gas spring of constant area: F = (p_abs − p_atm)·A, p_abs·Vⁿ constant. Its pressure in the reference state follows from the load it carries
/// there. Rate from the absolute, force from the gauge pressure: k = n·p_abs·A²/V.
/// </summary>
public sealed record GasSpring : SpringLaw
{
    /// <summary>Standard atmosphere, Pa (ISO 2533).</summary>
    public const double Atmosphere = 101325.0;

    /// <summary>Effective area, m².</summary>
    public required Amount<Area> Area { get; init => field = Checked.Positive(value, "π/4 times the bore squared."); }

    /// <summary>Gas volume in the reference state, m³.</summary>
    public required Amount<Volume> Volume { get; init => field = Checked.Positive(value, "Gas volume at ride height."); }

    /// <summary>Polytropic exponent (–): 1 slow, 1.4 fast and dry. 1 to 1.7.</summary>
    public Amount<Plain> Exponent { get; init => field = Checked.Within(value, 1.0, 1.7, "1.0 for slow, about 1.38 for fast motion."); } = new(1.38);

    /// <inheritdoc/>
    public override bool IsPiecewiseLinear => false;

    /// <inheritdoc/>
    public override double RateAtReference(double carried) => Exponent.Si * Absolute(carried) * Area.Si * Area.Si / Volume.Si;

    /// <inheritdoc/>
    public override double ForceAt(double travel, double carried) =>
        Area.Si * ((Absolute(carried) * Math.Pow(Volume.Si / (Volume.Si - (Area.Si * travel)), Exponent.Si)) - Atmosphere);

    private double Absolute(double carried) => (carried / Area.Si) + Atmosphere;
}
