using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>A round torsion bar with an arm: k_t = π·d⁴·G/(32·L); at the end of a level arm k = k_t/arm².</summary>
public sealed record TorsionBarDimensions : SpringDimensions
{
    /// <summary>Bar diameter d, m.</summary>
    public required Amount<Length> Diameter { get; init => field = Checked.Positive(value, "Diameter of the working part."); }

    /// <summary>Working length L, m.</summary>
    public required Amount<Length> Length { get; init => field = Checked.Positive(value, "Between the splines."); }

    /// <summary>Arm from the bar's axis to the wheel, m, level.</summary>
    public required Amount<Length> Arm { get; init => field = Checked.Positive(value, "Level distance from bar to wheel centre."); }

    /// <summary>Shear modulus G, Pa. Default 79.3 GPa for spring steel.</summary>
    public Amount<Pressure> ShearModulus { get; init => field = Checked.Positive(value, "79.3 GPa for spring steel."); } = new(79.3e9);

    /// <summary>Torsional rate, N m/rad.</summary>
    public double TorsionalRate => Math.PI * Math.Pow(Diameter.Si, 4) * ShearModulus.Si / (32.0 * Length.Si);

    /// <summary>Rate at the end of the arm, level, N/m.</summary>
    public override double Rate => TorsionalRate / (Arm.Si * Arm.Si);

    /// <inheritdoc/>
    public override string StressKind => "shear";

    /// <summary>Largest shear stress under a force at the end of the level arm, τ = 16·F·arm/(π·d³), Pa.</summary>
    /// <param name="force">F, N.</param>
    public override double StressUnder(double force) => 16.0 * force * Arm.Si / (Math.PI * Math.Pow(Diameter.Si, 3));
}
