using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>
/// A helical compression spring by its wire: k = G·d⁴/(8·n·D³), τ = K_w·8·F·D/(π·d³) with Wahl's factor (Wahl, Mechanical Springs).
/// </summary>
public sealed record CoilDimensions : SpringDimensions
{
    /// <summary>Wire diameter d, m.</summary>
    public required Amount<Length> Wire { get; init => field = Checked.Positive(value, "Measure the bare wire."); }

    /// <summary>Mean coil diameter D, m: outer diameter less one wire.</summary>
    public required Amount<Length> MeanDiameter { get; init => field = Checked.Positive(value, "Outer diameter less one wire."); }

    /// <summary>Number of coils that move, n (–).</summary>
    public required Amount<Plain> ActiveCoils
    {
        get;
        init => field = Checked.Within(value, 0.5, 100.0, "Total coils less about two for closed ends.");
    }

    /// <summary>Shear modulus G, Pa. Default 79.3 GPa for spring steel.</summary>
    public Amount<Pressure> ShearModulus { get; init => field = Checked.Positive(value, "79.3 GPa for spring steel."); } = new(79.3e9);

    /// <inheritdoc/>
    public override double Rate => ShearModulus.Si * Math.Pow(Wire.Si, 4) / (8.0 * ActiveCoils.Si * Math.Pow(MeanDiameter.Si, 3));

    /// <summary>Spring index C = D/d (–).</summary>
    public double Index => MeanDiameter.Si / Wire.Si;

    /// <summary>Wahl's factor (4C − 1)/(4C − 4) + 0.615/C (–).</summary>
    public double WahlFactor => (((4.0 * Index) - 1.0) / ((4.0 * Index) - 4.0)) + (0.615 / Index);

    /// <inheritdoc/>
    public override string StressKind => "shear";

    /// <inheritdoc/>
    public override double StressUnder(double force) => WahlFactor * 8.0 * force * MeanDiameter.Si / (Math.PI * Math.Pow(Wire.Si, 3));

    /// <summary>First surge frequency with both ends fixed, d/(π·n·D²)·√(G/(8ρ)), Hz.</summary>
    /// <param name="density">Density of the wire, kg/m³; steel 7850.</param>
    public double SurgeFrequency(double density) =>
        Wire.Si / (Math.PI * ActiveCoils.Si * MeanDiameter.Si * MeanDiameter.Si) * Math.Sqrt(ShearModulus.Si / (8.0 * density));
}
