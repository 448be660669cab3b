using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>
/// A displacer at each end of one side, each with a compliance, joined by a line:
/// p_f = p₀ + (A_f·s_f − q)/C_f, p_r = p₀ + (A_r·s_r + q)/C_r, I·q̈ = p_f − p_r − R·q̇; forces A_f·p_f and A_r·p_r at the wheels.
/// </summary>
public sealed record FluidLink : Interconnection
{
    /// <summary>Displaced volume per front wheel travel A_f, m².</summary>
    public required Amount<Area> FrontArea { get; init => field = Checked.Positive(value, "Piston area times the motion ratio of the displacer."); }

    /// <summary>Displaced volume per rear wheel travel A_r, m².</summary>
    public required Amount<Area> RearArea { get; init => field = Checked.Positive(value, "Piston area times the motion ratio of the displacer."); }

    /// <summary>Compliance of the front unit.</summary>
    public required Accumulator Front { get; init; }

    /// <summary>Compliance of the rear unit.</summary>
    public required Accumulator Rear { get; init; }

    /// <summary>Gauge pressure in the reference state, Pa. Above zero.</summary>
    public required Amount<Pressure> BasePressure { get; init => field = Checked.Positive(value, "The pressure at ride height, read on a gauge."); }

    /// <summary>The line between the ends.</summary>
    public required FluidLine Line { get; init; }
}
