using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rides;
using Heaveline.Roads;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Complex = System.Numerics.Complex;

namespace Heaveline.References.OneSidedLoad;

/// <summary>A linear car with its driver alone on a random road, against seven equations written down here in coordinates of their own.</summary>
public class OneSidedLoadTests
{
    private const double Wheelbase = 2.6;
    private const double Driver = 85.0;
    private const int Points = 4001;

    // Behind the front axle, left of the middle, high.
    private static readonly (double X, double Y, double Z) Seat = (1.25, 0.36, 0.62);
    private static readonly double[] Track = [1.52, 1.46];
    private static readonly double[] Weighed = [670.0, 580.0];
    private static readonly double[] Unsprung = [70.0, 64.0];
    private static readonly double[] Rate = [21e3, 24e3];
    private static readonly double[] Damping = [1500.0, 1700.0];
    private static readonly double[] Bar = [9000.0, 0.0];
    private static readonly double[] Tyre = [190e3, 200e3];

    [Theory]
    [InlineData(30.0)]
    [InlineData(100.0)]
    public void Every_wheel_and_the_seat_have_the_root_mean_squares_of_the_equations(double kilometresPerHour)
    {
        var (speed, road) = (kilometresPerHour / 3.6, RoadSpectrum.Of(RoadClass.C));
        var model = Model();
        var response = RandomResponse.Of(model, road, speed, RandomOptions.Default with { Tolerance = 1e-8 });
        Assert.Equal(RandomOutcome.Linear, response.Outcome);
        var (low, high) = (speed * road.Band.Low, speed * road.Band.High);
        void Same(RideSignal signal, Func<double, double[]> row, double[]? offRoad = null) =>
            Assert.Equal(1.0, response.Rms(signal) / Root(row, offRoad, road, speed, low, high), 1e-8);
        Same(RideSignal.VerticalAcceleration(model, Seat.X, Seat.Y), w => [-w * w, -w * w * Seat.X, -w * w * Seat.Y, 0.0, 0.0, 0.0, 0.0]);
        Same(RideSignal.PitchAcceleration, w => [0.0, -w * w, 0.0, 0.0, 0.0, 0.0, 0.0]);
        Same(RideSignal.RollAcceleration, w => [0.0, 0.0, -w * w, 0.0, 0.0, 0.0, 0.0]);
        for (var i = 0; i < 4; i++)
        {
            var (x, y) = At(i);
            var (wheel, load) = (new double[4], new double[4]);
            (wheel[i], load[i]) = (1.0, Tyre[i / 2]);
            Same(RideSignal.Travel(model, i), _ => [-1.0, -x, -y, .. wheel]);
            Same(RideSignal.TyreLoad(model, i), _ => [0.0, 0.0, 0.0, .. load.Select(c => -c)], load);
        }
    }

    [Fact]
    public void The_closed_form_for_designs_has_them_too()
    {
        var (speed, road, model) = (22.0, RoadSpectrum.Of(RoadClass.C), Model());
        var options = SpectrumOptions.Default with { Points = 256 };
        var (low, high) = (Math.Max(options.Low, speed * road.Band.Low), Math.Min(options.High, speed * road.Band.High));
        var ride = OneSidedRide.From(model);
        Assert.True(ride.IsOneSided);
        Assert.Equal(
            1.0,
            RideSpectrum.Vertical(model, road, speed, Seat.X, Seat.Y, null, options).Rms(ride)
                / Root(w => [-w * w, -w * w * Seat.X, -w * w * Seat.Y, 0.0, 0.0, 0.0, 0.0], null, road, speed, low, high),
            1e-8);
        Assert.Equal(
            1.0,
            RideSpectrum.Pitch(model, road, speed, null, options).Rms(ride)
                / Root(w => [0.0, -w * w, 0.0, 0.0, 0.0, 0.0, 0.0], null, road, speed, low, high),
            1e-8);
    }

    private static RideModel Model()
    {
        ForceTable Straight(int i) => new([1.0, 2.0], [Damping[i], 2.0 * Damping[i]]);
        Axle AxleOf(int i) => new()
        {
            Track = new(Track[i]),
            UnsprungMass = new(Unsprung[i]),
            Spring = new Spring { Law = new LinearSpring { Rate = new(Rate[i]) } },
            Damper = new Damper { Law = new TableDamper(Straight(i), Straight(i)) },
            AntiRollBar = new(Bar[i]),
            Tyre = new Tyre { Rate = new(Tyre[i]), ContactLength = new(0.0) },
        };
        return RideModel.Of(
            new Car
            {
                Name = "plain car",
                Wheelbase = new(Wheelbase),
                Weighing = Weighing.PerAxle(new(Weighed[0]), new(Weighed[1])),
                Body = new Body
                {
                    CentreHeight = new(0.55), PitchInertia = new Amount<Inertia>(1750.0), RollInertia = new Amount<Inertia>(420.0),
                },
                Front = AxleOf(0),
                Rear = AxleOf(1),
            },
            new LoadState
            {
                Name = "driver alone",
                Loads = [new Load
                {
                    Name = "driver", Mass = new(Driver), BehindFrontAxle = new(Seat.X), LeftOfMiddle = new(Seat.Y), Height = new(Seat.Z),
                }],
            });
    }

    // Front left, front right, rear left, rear right.
    private static (double X, double Y) At(int i) => (i < 2 ? 0.0 : Wheelbase, (i % 2 == 0 ? 0.5 : -0.5) * Track[i / 2]);

    // Positions: height at the middle of the front axle, pitch nose-down, roll to the right, heights of the wheels.
    private static (Matrix<double> Mass, Matrix<double> Stiffness, Matrix<double> Resistance) Equations()
    {
        var build = Matrix<double>.Build;
        var (mass, stiffness, resistance) = (build.Dense(7, 7), build.Dense(7, 7), build.Dense(7, 7));
        var body = Weighed[0] - Unsprung[0] + Weighed[1] - Unsprung[1];
        var behind = Wheelbase * (Weighed[1] - Unsprung[1]) / body;
        var height = ((body * 0.55) + (Driver * Seat.Z)) / (body + Driver);
        foreach (var (m, x, y, z) in new[] { (body, behind, 0.0, 0.55), (Driver, Seat.X, Seat.Y, Seat.Z) })
        {
            var row = Vector<double>.Build.DenseOfArray([1.0, x, y, 0.0, 0.0, 0.0, 0.0]);
            mass += m * row.OuterProduct(row);
            mass[1, 1] += m * (z - height) * (z - height);
            mass[2, 2] += m * (z - height) * (z - height);
        }

        mass[1, 1] += 1750.0;
        mass[2, 2] += 420.0;
        for (var i = 0; i < 4; i++)
        {
            var (travel, axle) = (Travel(i), i / 2);
            stiffness += Rate[axle] * travel.OuterProduct(travel);
            resistance += Damping[axle] * travel.OuterProduct(travel);
            mass[3 + i, 3 + i] += 0.5 * Unsprung[axle];
            stiffness[3 + i, 3 + i] += Tyre[axle];
            if (i % 2 == 0)
            {
                var across = travel - Travel(i + 1);
                stiffness += Bar[axle] * across.OuterProduct(across);
            }
        }

        return (mass, stiffness, resistance);

        Vector<double> Travel(int i)
        {
            var row = Vector<double>.Build.DenseOfArray([-1.0, -At(i).X, -At(i).Y, 0.0, 0.0, 0.0, 0.0]);
            row[3 + i] = 1.0;
            return row;
        }
    }

    private static double Root(
        Func<double, double[]> row, double[]? offRoad, RoadSpectrum road, double speed, double low, double high)
    {
        var (mass, stiffness, resistance) = Equations();
        var (sum, step) = (0.0, Math.Log(high / low) / (Points - 1));
        for (var k = 0; k < Points; k++)
        {
            var f = low * Math.Exp(step * k);
            var w = 2.0 * Math.PI * f;
            var dynamic = Matrix<Complex>.Build.Dense(7, 7, (i, j) => new Complex(stiffness[i, j] - (w * w * mass[i, j]), w * resistance[i, j]));
            var push = Matrix<Complex>.Build.Dense(7, 4, (i, j) => i == 3 + j ? Tyre[j / 2] : 0.0);
            var asked = Vector<Complex>.Build.DenseOfEnumerable(row(w).Select(c => new Complex(c, 0.0)));
            var gains = asked * dynamic.Solve(push);
            var square = Complex.Zero;
            for (var i = 0; i < 4; i++)
            {
                gains[i] += offRoad?[i] ?? 0.0;
            }

            for (var i = 0; i < 4; i++)
            {
                for (var j = 0; j < 4; j++)
                {
                    var a = w / speed * Math.Abs(At(i).Y - At(j).Y);
                    var together = a == 0.0 ? 1.0 : a * SpecialFunctions.BesselK1(a);
                    square += gains[i] * together * Complex.Exp(new Complex(0.0, -w / speed * (At(i).X - At(j).X))) * Complex.Conjugate(gains[j]);
                }
            }

            var weight = k is 0 or Points - 1 ? 1.0 : k % 2 == 1 ? 4.0 : 2.0;
            // G_d(n0)·n0²·V/f², n0 = 0.1 cycles/m.
            sum += weight * step / 3.0 * f * road.Density.Si * 0.01 * speed / (f * f) * square.Real;
        }

        return Math.Sqrt(sum);
    }
}
