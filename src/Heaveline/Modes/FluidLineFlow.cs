using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Heaveline.Models;

namespace Heaveline.Modes;

/// <summary>Suspension rates with a fluid line's flow swinging at a frequency: complex, the imaginary part over ω is damping.</summary>
internal static class FluidLineFlow
{
    /// <summary>
    /// K(ω) = K_shut + b·bᵀ/(b_q + I·ω² − j·ω·R) for each side, b = ∂(p_f − p_r)/∂s and b_q = ∂(p_f − p_r)/∂q of the tangent: at ω = 0 the line at
    /// one pressure, far above its natural frequency the line shut.
    /// </summary>
    public static Matrix<Complex> Rates(RideModel model, double omega)
    {
        var rates = model.Tangent.SuspensionRate.ToComplex();
        if (!model.Numbers.Laws.FluidFlows)
        {
            return rates;
        }

        var places = model.Tangent.ByPlace;
        var laws = model.Numbers.Laws;
        var scale = laws.FluidScale;
        for (var side = 0; side < 2; side++)
        {
            var row = 7 + side;
            var open = new Complex((scale * places[row, row]) + (laws.FluidInertance * omega * omega), -omega * laws.FluidResistance);
            for (var i = side; i < 4; i += 2)
            {
                for (var j = side; j < 4; j += 2)
                {
                    rates[i, j] += scale * scale * places[row, 3 + i] * places[row, 3 + j] / open;
                }
            }
        }

        return rates;
    }

    /// <summary>Stiffness of both compliances against a flow, 1/C_f + 1/C_r, Pa/m³, at trim.</summary>
    public static double Stiffness(RideModel model) => -model.Numbers.Laws.FluidScale * model.Tangent.ByPlace[7, 7];

    /// <summary>
    /// Natural frequency of the fluid between the two compliances, √((1/C_f + 1/C_r)/I), rad/s, at trim; infinite without inertance.
    /// </summary>
    public static double NaturalOmega(RideModel model) => Math.Sqrt(Stiffness(model) / model.Numbers.Laws.FluidInertance);
}
