using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Heaveline.Models;

namespace Heaveline.Modes;

/// <summary>Suspension rates with a fluid line's flow swinging at a frequency: complex, the imaginary part over ω is damping.</summary>
internal static class FluidLineFlow
{
    /// <summary>
    /// K(ω) = K_shut + I·a·aᵀ/(a_q + ω² − j·ω·R/I) for each side, a = ∂q̈/∂s and a_q = ∂q̈/∂q of the tangent: at ω = 0 the line at one pressure, far
    /// above its natural frequency the line shut.
    /// </summary>
    public static Matrix<Complex> Rates(RideModel model, double omega)
    {
        var rates = model.Tangent.SuspensionRate.ToComplex();
        if (!model.Numbers.Laws.FluidFlows)
        {
            return rates;
        }

        var state = model.Tangent.State;
        var count = model.Tangent.Positions;
        var laws = model.Numbers.Laws;
        for (var side = 0; side < 2; side++)
        {
            var row = count + 7 + side;
            var open = new Complex(state[row, 7 + side] + (omega * omega), -omega * laws.FluidResistance / laws.FluidInertance);
            for (var i = side; i < 4; i += 2)
            {
                for (var j = side; j < 4; j += 2)
                {
                    rates[i, j] += laws.FluidInertance * state[row, 3 + i] * state[row, 3 + j] / open;
                }
            }
        }

        return rates;
    }

    /// <summary>Natural frequency of the fluid between the two compliances, √((1/C_f + 1/C_r)/I), rad/s, at trim.</summary>
    public static double NaturalOmega(RideModel model) => Math.Sqrt(-model.Tangent.State[model.Tangent.Positions + 7, 7]);
}
