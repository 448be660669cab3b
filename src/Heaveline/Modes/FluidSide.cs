using System.Numerics;
using Heaveline.Models;

namespace Heaveline.Modes;

/// <summary>
/// The fluid line of one side at trim, as a swing sees it: wheel travels s_f and s_r push against a column of fluid that flows by q,
/// I·q̈ + R·q̇ + κ·q = g_f·s_f + g_r·s_r, and lose g_f·q and g_r·q of their forces (both are slopes of one energy).
/// </summary>
/// <param name="Front">g_f, N per m³ that flows.</param>
/// <param name="Rear">g_r, N per m³ that flows.</param>
/// <param name="Stiffness">κ, Pa per m³ that flows.</param>
/// <param name="Inertance">I, kg/m⁴; 0 for a line that only resists.</param>
/// <param name="Resistance">R, Pa s/m³.</param>
internal readonly record struct FluidSide(double Front, double Rear, double Stiffness, double Inertance, double Resistance)
{
    /// <summary>Natural frequency of the fluid between its two compliances √(κ/I), rad/s; infinite without inertance.</summary>
    public double NaturalOmega => Math.Sqrt(Stiffness / Inertance);

    /// <summary>The lines of a model at its trim, left and right; empty where no fluid flows.</summary>
    public static FluidSide[] Of(RideModel model)
    {
        if (model.Numbers.Elements.Line is not { } line)
        {
            return [];
        }

        // The flow's row of the tangent is the pressures over I, or over R without inertance.
        var places = model.Tangent.ByPlace;
        FluidSide Side(int side)
        {
            var row = 7 + side;
            return new FluidSide(
                line.Scale * places[row, 3 + side],
                line.Scale * places[row, 5 + side],
                -line.Scale * places[row, row],
                line.Inertance,
                line.Resistance);
        }

        return [Side(0), Side(1)];
    }

    /// <summary>What flows per unit of a motion with travels front and rear, at ω.</summary>
    public Complex Flow(double front, double rear, double omega) => ((front * Front) + (rear * Rear)) / Impedance(omega);

    /// <summary>
    /// What the flow takes off the rate of the line shut, for a motion with these travels against another's: real part stiffness, imaginary part
    /// over ω damping with the other sign.
    /// </summary>
    public Complex Yields((double Front, double Rear) one, (double Front, double Rear) other, double omega) =>
        double.IsInfinity(omega)
            ? Complex.Zero
            : ((one.Front * Front) + (one.Rear * Rear)) * ((other.Front * Front) + (other.Rear * Rear)) / Impedance(omega);

    private Complex Impedance(double omega) => new(Stiffness - (Inertance * omega * omega), omega * Resistance);
}
