using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>The line between two displacers. Inertance I = ρ·l/a, laminar resistance R = 128·μ·l/(π·d⁴) (Hagen–Poiseuille).</summary>
public sealed record FluidLine
{
    /// <summary>Pipe, shut or open.</summary>
    public LineState State { get; init; } = LineState.Pipe;

    /// <summary>Inertance I, kg/m⁴. 0 for a pipe that only resists: R·q̇ = p_f − p_r.</summary>
    public Amount<Inertance> Inertance { get; init => field = Checked.NotNegative(value, "Give bore, length and fluid instead."); } = new(0.0);

    /// <summary>Resistance R, Pa s/m³. Needed above zero for a pipe without inertance.</summary>
    public Amount<Resistance> Resistance { get; init => field = Checked.NotNegative(value, "Give bore, length and fluid instead."); } = new(0.0);

    /// <summary>
    /// Inner diameter of the pipe, m, by which it is told whether the flow stays laminar; null when the line is given by inertance and resistance.
    /// </summary>
    public Amount<Length>? Bore { get; init => field = value is { } v ? Checked.Positive(v, "Inner diameter of the pipe.") : null; }

    /// <summary>From a round pipe full of fluid.</summary>
    public static FluidLine FromPipe(Amount<Length> bore, Amount<Length> length, Amount<Density> density, Amount<Viscosity> viscosity)
    {
        Checked.Positive(bore, "Inner diameter of the pipe.", "Bore");
        Checked.Positive(length, "Length of the pipe.", "Length");
        Checked.Positive(density, "Water with glycol has about 1030 kg/m³.", "Density");
        Checked.NotNegative(viscosity, "Water with glycol has about 2.5 mPa s.", "Viscosity");
        var d = bore.Si;
        var area = Math.PI * d * d / 4.0;
        return new FluidLine
        {
            Bore = bore,
            Inertance = new Amount<Inertance>(density.Si * length.Si / area),
            Resistance = new Amount<Resistance>(128.0 * viscosity.Si * length.Si / (Math.PI * d * d * d * d)),
        };
    }
}
