using System.Numerics;
using CsCheck;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;
using Heaveline.Tests.Passes;
using Waves = MathNet.Numerics.LinearAlgebra.Vector<System.Numerics.Complex>;

namespace Heaveline.Tests.Rides;

public class RideEliminationTests
{
    private static readonly RoadSpectrum ClassC = RoadSpectrum.Of(RoadClass.C);

    [Fact]
    public void Frequencies_side_by_side_have_the_dense_solution()
    {
        Gen.Select(AnyCar.Any, Gen.Double[2.0, 40.0]).Sample((car, speed) => Same(RideModel.Of(car), speed, 1e-12), iter: 60);
        Same(RideModel.Of(ExactCars.OnResistingLine), 20.0, 1e-12);
    }

    [Fact]
    public void A_car_without_any_damping_is_solved_densely_where_elimination_would_lose_digits()
    {
        var none = new Damper { Law = new RatioDamper { Ratio = new(0.0) } };
        Axle Bare(Axle axle) => axle with { Damper = none, Tyre = axle.Tyre with { Damping = new(0.0) } };
        var model = RideModel.Of(PlainCar.Saloon with { Front = Bare(PlainCar.FrontAxle), Rear = Bare(PlainCar.RearAxle) });
        var ride = LinearRide.Of(model);
        // Just where the last wheel's own pivot is nought.
        Span<double> omegas = [Math.Sqrt(-ride.ByPlace[(6 * 7) + 6]) * (1.0 + 1e-9)];
        Span<double> heights = stackalloc double[8];
        heights[6] = 1.0;
        var solution = Solved<ScalarLane>(ride, omegas, heights, 1, 1);
        var expected = ride.Answer(omegas[0]).Column(3);
        for (var i = 0; i < 7; i++)
        {
            Assert.Equal(0.0, (solution[i] - expected[i]).Magnitude, 1e-9 * expected.L2Norm());
        }
    }

    [Fact]
    public void Every_width_has_the_same_bits()
    {
        var model = RideModel.Of(ExactCars.OnResistingLine);
        var ride = LinearRide.Of(model);
        var grid = new RideRoad(ClassC, 20.0, null).In(16);
        var lines = RandomLines.Of(model, grid).Under(ride);
        var rows = EverySignal.Of(model).Where(s => s.Place.Any(share => share != 0.0)).SelectMany(s => s.Place[..ride.Count]).ToArray();
        var count = rows.Length / ride.Count;
        double[] Of(int width)
        {
            var squares = new double[2 * count];
            lines.Squares(RandomLines.Numbers(width), ride, rows, squares.AsSpan(0, count), squares.AsSpan(count));
            return squares;
        }

        var scalar = Of(1);
        Assert.All(LaneWidth.All, width => Assert.Equal(scalar, Of(width)));
    }

    [Fact]
    public void Squares_of_rows_are_those_of_signals()
    {
        var model = RideModel.Of(PlainCar.Saloon);
        var ride = LinearRide.Of(model);
        var road = RandomLines.Of(model, new RideRoad(ClassC, 20.0, null).In(16));
        var lines = road.Under(ride);
        var (place, speed) = (new double[1], new double[1]);
        for (var i = 0; i < 4; i++)
        {
            road.Squares(ride, RideSignal.Travel(model, i).Place.AsSpan(0, 7), place, speed);
            Assert.Equal(1.0, lines.MeanSquare(RideSignal.Travel(model, i)) / place[0], 1e-13);
            Assert.Equal(1.0, lines.MeanSquare(RideSignal.TravelRate(model, i)) / speed[0], 1e-13);
        }
    }

    // Every signal at every frequency, from the dense solution and by each width.
    private static void Same(RideModel model, double speed, double within)
    {
        var ride = LinearRide.Of(model);
        var grid = new RideRoad(ClassC, speed, null).In(16);
        var drive = new RoadDrive(model, ClassC, null);
        var lines = RandomLines.Of(model, grid).Under(ride);
        foreach (var signal in EverySignal.Of(model))
        {
            var squares = lines.Squares(signal);
            double[] expected = [.. grid.Frequencies.Select(f =>
            {
                var answer = ride.Answer(2.0 * Math.PI * f);
                return drive.Waves(f / speed).Sum(wave =>
                {
                    var positions = (answer * Waves.Build.DenseOfArray(wave)).ToArray();
                    var value = LinearRide.Read(signal, 2.0 * Math.PI * f, positions, wave).Magnitude;
                    return value * value;
                });
            })];
            var largest = expected.Max();
            for (var k = 0; k < squares.Length; k++)
            {
                Assert.True(Math.Abs(squares[k] - expected[k]) <= within * largest, $"{signal.Name} at {grid.Frequencies[k]:G4} Hz");
            }
        }
    }

    private static unsafe Complex[] Solved<T>(LinearRide ride, ReadOnlySpan<double> omegas, ReadOnlySpan<double> heights, int stride, int waves)
        where T : unmanaged, ILane<T>
    {
        var (n, wide) = (ride.Count, ride.Count + waves);
        var scratch = new T[RideElimination.Scratch(n, waves)];
        fixed (double* omega = omegas, height = heights)
        fixed (T* re = scratch)
        {
            new RideElimination(ride).Solve(omega, height, stride, waves, re);
        }

        var place = new double[T.Count];
        double First(T lanes)
        {
            lanes.To(place);
            return place[0];
        }

        return [.. Enumerable.Range(0, n).Select(i => new Complex(First(scratch[(i * wide) + n]), First(scratch[(n * wide) + (i * wide) + n])))];
    }
}
