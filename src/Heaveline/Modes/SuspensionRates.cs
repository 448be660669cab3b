using MathNet.Numerics.LinearAlgebra;
using Heaveline.Cars;
using Heaveline.Models;

namespace Heaveline.Modes;

/// <summary>Tangent rates ∂F_i/∂s_j at the four wheels, seen by axle, through the tyres, and with a fluid line at rest.</summary>
internal static class SuspensionRates
{
    /// <summary>
    /// With each fluid line in equilibrium, p_f = p_r: what a slow change meets. Null without a fluid line that flows.
    /// From q̈ = 0 the flow is q = −Σ (∂q̈/∂s_j) s_j / (∂q̈/∂q); the forces follow by ∂F_i/∂q = −I ∂q̈/∂s_i (both are slopes of one energy). Without
    /// inertance the same with q̇ and R.
    /// </summary>
    public static Matrix<double>? LineOpen(RideModel model)
    {
        if (!model.Numbers.Laws.FluidFlows)
        {
            return null;
        }

        var places = model.Tangent.ByPlace;
        var scale = model.Numbers.Laws.FluidScale;
        var open = model.Tangent.SuspensionRate.Clone();
        for (var side = 0; side < 2; side++)
        {
            var row = 7 + side;
            for (var i = side; i < 4; i += 2)
            {
                for (var j = side; j < 4; j += 2)
                {
                    open[i, j] += scale * places[row, 3 + i] * places[row, 3 + j] / places[row, row];
                }
            }
        }

        return open;
    }

    /// <summary>Rates of whole axles against whole axles, [ff fr; rf rr], N/m: both wheels of an axle move together.</summary>
    public static Matrix<double> ByAxle(Matrix<double> wheels)
    {
        var axles = Matrix<double>.Build.Dense(2, 2);
        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
            {
                axles[i / 2, j / 2] += wheels[i, j];
            }
        }

        return axles;
    }

    /// <summary>Suspension rates in series with the tyres', K·(K + K_t)⁻¹·K_t.</summary>
    public static Matrix<double> ThroughTyres(Matrix<double> suspension, IEnumerable<double> tyres)
    {
        var tyre = Matrix<double>.Build.DenseOfDiagonalArray([.. tyres]);
        var through = suspension * (suspension + tyre).Solve(tyre);
        return 0.5 * (through + through.Transpose());
    }

    /// <summary>Tyre rate of a whole axle, N/m.</summary>
    public static double TyresOf(RideModel model, AxleEnd end)
    {
        var first = end == AxleEnd.Front ? 0 : 2;
        return model.Numbers.TyreRate[first] + model.Numbers.TyreRate[first + 1];
    }
}
