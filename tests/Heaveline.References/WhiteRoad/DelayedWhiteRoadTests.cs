using MathNet.Numerics.LinearAlgebra;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;
using Complex = System.Numerics.Complex;

namespace Heaveline.References.WhiteRoad;

/// <summary>
/// A half car whose rear meets the same white road later: covariances by eigenvalues, in equations written
/// down here, against the sum over frequencies.
/// </summary>
public class DelayedWhiteRoadTests
{
    private const double Mass = 700.0;
    private const double Inertia = 950.0;
    private const double Unsprung = 40.0;
    private const double Tyre = 190e3;

    private static readonly double[] X = [1.2, -1.4];
    private static readonly double[] Rate = [21e3, 24e3];
    private static readonly double[] Damping = [1500.0, 1700.0];

    [Theory]
    [InlineData(8.0)]
    [InlineData(20.0)]
    [InlineData(33.0)]
    public void Heave_and_pitch_have_the_covariances_of_the_delayed_noise(double speed)
    {
        var road = RoadSpectrum.Of(RoadClass.C) with { Band = new SpatialBand(2e-4, 100.0) };
        var model = new HalfCar
        {
            Mass = Mass,
            PitchInertia = Inertia,
            FrontArm = X[0],
            RearArm = -X[1],
            FrontRate = Rate[0],
            RearRate = Rate[1],
            FrontDamping = Damping[0],
            RearDamping = Damping[1],
            UnsprungPerAxle = Unsprung,
            TyreRate = Tyre,
        }.Model();
        var response = RandomResponse.Of(model, road, speed, RandomOptions.Default with { Tolerance = 1e-8 });
        var intensity = 0.5 * road.VelocitiesAt(1.0, speed);
        var (a, heave, pitch) = Equations();
        var root = Covariance(a, (X[0] - X[1]) / speed);
        Assert.Equal(1.0, response.Rms(RideSignal.HeaveAcceleration) / Math.Sqrt(intensity * root(heave)), 1e-5);
        Assert.Equal(1.0, response.Rms(RideSignal.PitchAcceleration) / Math.Sqrt(intensity * root(pitch)), 1e-5);
        for (var axle = 0; axle < 2; axle++)
        {
            var travel = Vector<double>.Build.Dense(8);
            travel[2 + axle] = 1.0;
            Assert.Equal(1.0, response.Rms(RideSignal.Travel(model, 2 * axle)) / Math.Sqrt(intensity * root(travel)), 1e-5);
        }
    }

    // States: tyre deflections, travels, heave rate, pitch rate, wheel rates.
    private static (Matrix<double> A, Vector<double> Heave, Vector<double> Pitch) Equations()
    {
        var a = Matrix<double>.Build.Dense(8, 8);
        for (var axle = 0; axle < 2; axle++)
        {
            a[axle, 6 + axle] = -1.0;
            a[2 + axle, 6 + axle] = 1.0;
            a[2 + axle, 4] = -1.0;
            a[2 + axle, 5] = X[axle];
            var force = Vector<double>.Build.Dense(8);
            force[2 + axle] = Rate[axle];
            force[6 + axle] = Damping[axle];
            force[4] = -Damping[axle];
            force[5] = Damping[axle] * X[axle];
            for (var j = 0; j < 8; j++)
            {
                a[4, j] += force[j] / Mass;
                a[5, j] -= X[axle] * force[j] / Inertia;
                a[6 + axle, j] -= force[j] / Unsprung;
            }

            a[6 + axle, axle] += Tyre / Unsprung;
        }

        return (a, a.Row(4), a.Row(5));
    }

    // Variance of c·x per intensity: white velocity into the front tyre now and into the rear tyre a delay later.
    private static Func<Vector<double>, double> Covariance(Matrix<double> a, double delay)
    {
        var evd = a.ToComplex().Evd();
        var (modes, roots) = (evd.EigenVectors, evd.EigenValues);
        var unit = Matrix<Complex>.Build.Dense(8, 2, (i, j) => i == j ? Complex.One : Complex.Zero);
        var drive = modes.Solve(unit);
        return row =>
        {
            var shape = modes.Transpose() * row.ToComplex();
            var sum = Complex.Zero;
            for (var i = 0; i < 8; i++)
            {
                for (var j = 0; j < 8; j++)
                {
                    var (fi, ri, fj, rj) = (drive[i, 0], drive[i, 1], Complex.Conjugate(drive[j, 0]), Complex.Conjugate(drive[j, 1]));
                    var other = Complex.Conjugate(roots[j]);
                    var both = (fi * fj) + (ri * rj) + (Complex.Exp(roots[i] * delay) * fi * rj) + (Complex.Exp(other * delay) * ri * fj);
                    sum -= shape[i] * Complex.Conjugate(shape[j]) * both / (roots[i] + other);
                }
            }

            return sum.Real;
        };
    }
}
