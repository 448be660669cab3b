using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Heaveline.Models;

namespace Heaveline.Modes;

/// <summary>Suspension rates with a fluid line's flow swinging at a frequency: complex, the imaginary part over ω is damping.</summary>
internal static class FluidLineFlow
{
    /// <summary>
    /// K(ω) = K_shut − g·gᵀ/(κ − I·ω² + j·ω·R) for each side (<see cref="FluidSide"/>): at ω = 0 the line at one pressure, far above its natural
    /// frequency the line shut.
    /// </summary>
    public static Matrix<Complex> Rates(RideModel model, double omega)
    {
        var rates = model.Tangent.SuspensionRate.ToComplex();
        var lines = FluidSide.Of(model);
        for (var side = 0; side < lines.Length; side++)
        {
            for (var i = side; i < 4; i += 2)
            {
                for (var j = side; j < 4; j += 2)
                {
                    rates[i, j] -= lines[side].Yields(Alone(i), Alone(j), omega);
                }
            }
        }

        return rates;

        static (double Front, double Rear) Alone(int wheel) => wheel < 2 ? (1.0, 0.0) : (0.0, 1.0);
    }

    /// <summary>Natural frequency of the fluid between the two compliances, √((1/C_f + 1/C_r)/I), rad/s, at trim; infinite without it.</summary>
    public static double NaturalOmega(RideModel model) => FluidSide.Of(model)[0].NaturalOmega;
}
