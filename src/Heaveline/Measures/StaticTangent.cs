using Heaveline.Models;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Measures;

/// <summary>
/// Where a small steady push takes a car that stands at its trim: heave, pitch, roll and the four wheel heights, by the tangent stiffness.
/// </summary>
internal static class StaticTangent
{
    /// <summary>
    /// Solves Σ(F + J) = 0, M_θ + M·g·h_θ·θ = Σ x(F + J), M_φ + M·g·h_φ·φ + Σ y(F + J) = 0 and F + J + k_t·u = 0 at each wheel, with F = K·s and
    /// s = u − z + x·θ − y·φ. Positions z, θ, φ, u₀…u₃, m and rad.
    /// </summary>
    /// <param name="model">The car at its trim.</param>
    /// <param name="suspension">K, ∂F/∂s at the four wheels, N/m, shape (4, 4).</param>
    /// <param name="push">The push.</param>
    public static Vector<double> Solve(RideModel model, Matrix<double> suspension, StaticPush push)
    {
        // s = B·q, shape (4, 7).
        var travel = Matrix<double>.Build.Dense(4, 7);
        for (var i = 0; i < 4; i++)
        {
            travel[i, 0] = -1.0;
            travel[i, 1] = model.X[i];
            travel[i, 2] = model.Rolls ? -model.Y[i] : 0.0;
            travel[i, 3 + i] = 1.0;
        }

        // By virtual work the suspension gives −Bᵀ·(F + J) on every coordinate.
        var stiffness = travel.Transpose() * suspension * travel;
        stiffness[1, 1] -= model.PitchGravity;
        stiffness[2, 2] = model.Rolls ? stiffness[2, 2] - model.RollGravity : 1.0;
        for (var i = 0; i < 4; i++)
        {
            stiffness[3 + i, 3 + i] += model.Numbers.TyreRate[i];
        }

        var force = -travel.Transpose() * Vector<double>.Build.DenseOfEnumerable(push.Link);
        force[1] += push.PitchMoment;
        force[2] += model.Rolls ? push.RollMoment : 0.0;
        return stiffness.Solve(force);
    }
}
