using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Heaveline.Cars;
using Heaveline.Models;

namespace Heaveline.Modes;

/// <summary>Tangent rates ∂F_i/∂s_j at the four wheels, seen by axle, through the tyres, and with a fluid line at rest or swinging.</summary>
internal static class SuspensionRates
{
    /// <summary>
    /// With each fluid line in equilibrium, p_f = p_r: what a slow change meets. Null without a fluid line that flows.
    /// <see cref="FluidSide"/> with q̈ = q̇ = 0: the flow is q = (g·s)/κ.
    /// </summary>
    public static Matrix<double>? LineOpen(RideModel model)
    {
        return FluidSide.Of(model).Length == 0 ? null : FluidLineFlow.Rates(model, 0.0).Map(rate => rate.Real);
    }

    /// <summary>
    /// Rate of one axle while the body swings on it and the other is held, N/m, a fluid line giving way as it does at that frequency; and what the
    /// line's resistance adds to its damping then, N s/m.
    /// </summary>
    public static (double Rate, double LineDamping) AtRide(RideModel model, AxleEnd end, double sprungMass)
    {
        var at = (int)end;
        var (shut, tyres) = (ByAxle(model.Tangent.SuspensionRate)[at, at], TyresOf(model, end));
        return Yielding(model, end, shut, sprungMass, rate => rate * tyres / (rate + tyres));
    }

    /// <summary>Rate of one axle while its wheels hop between springs and tyres under a body held, N/m.</summary>
    public static double AtHop(RideModel model, AxleEnd end)
    {
        var at = (int)end;
        var (shut, tyres) = (ByAxle(model.Tangent.SuspensionRate)[at, at], TyresOf(model, end));
        return Yielding(model, end, shut, model.Car.Axles[at].UnsprungMass.Si, rate => rate + tyres).Rate;
    }

    private static (double Rate, double LineDamping) Yielding(
        RideModel model, AxleEnd end, double shut, double mass, Func<double, double> withTyres)
    {
        var lines = FluidSide.Of(model);
        if (lines.Length == 0)
        {
            return (shut, 0.0);
        }

        var travel = end == AxleEnd.Front ? (1.0, 0.0) : (0.0, 1.0);
        Complex Yields(double omega) => lines.Aggregate(Complex.Zero, (sum, line) => sum + line.Yields(travel, travel, omega));
        double Fluid(double omega) =>
            lines.Sum(line => line.Inertance * Math.Pow(line.Flow(travel.Item1, travel.Item2, omega).Magnitude, 2)) / mass;
        var squared = OwnFrequency.Squared(omega => withTyres(shut - Yields(omega).Real) / mass, Fluid, lines);
        var found = Math.Sqrt(Math.Max(squared, 0.0));
        var yields = Yields(found);
        return (shut - yields.Real, found > 0.0 ? -yields.Imaginary / found : 0.0);
    }

    /// <summary>Rates of whole axles against whole axles while the body bounces, a fluid line giving way as it does then, N/m.</summary>
    public static Matrix<double> InHeave(RideModel model) => ByAxle(
        FluidSide.Of(model).Length == 0
            ? model.Tangent.SuspensionRate
            : FluidLineFlow.Rates(model, BodyModes.Of(model).Bounce.Omega).Map(rate => rate.Real));

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
