using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Rides;

namespace Heaveline.Tests.Passes;

public class TurnedCarTests
{
    [Fact]
    public void A_car_turned_end_for_end_has_the_same_modes_about_mirrored_centres()
    {
        var car = ExactCars.Saloon;
        var turned = Turned(car);
        var (own, other) = (BodyModes.Of(RideModel.Of(car)), BodyModes.Of(RideModel.Of(turned)));
        Assert.Equal(own.Bounce.Frequency, other.Bounce.Frequency, 1e-12);
        Assert.Equal(own.Pitch.Frequency, other.Pitch.Frequency, 1e-12);
        Assert.Equal(own.Bounce.NodeAhead, -other.Bounce.NodeAhead, 1e-9 * Math.Abs(own.Bounce.NodeAhead));
        Assert.Equal(own.Pitch.NodeAhead, -other.Pitch.NodeAhead, 1e-9);
        var (modes, again) = (DampedModes.Of(RideModel.Of(car)).Swings, DampedModes.Of(RideModel.Of(turned)).Swings);
        Assert.Equal(modes.Select(m => Math.Round(m.Frequency, 9)).Order(), again.Select(m => Math.Round(m.Frequency, 9)).Order());
        Assert.Equal(modes.Select(m => Math.Round(m.DampingRatio, 9)).Order(), again.Select(m => Math.Round(m.DampingRatio, 9)).Order());
    }

    /// <summary>
    /// The turned car meets the road with its former rear first: it answers as the car would with the delay reversed, the pitch turned round.
    /// </summary>
    [Fact]
    public void A_car_turned_end_for_end_answers_as_with_the_delay_reversed_and_the_pitch_turned_round()
    {
        var car = ExactCars.Linear;
        // Phases count from the middle of the wheelbase, where both cars meet the road at one time.
        double[] frequencies = [0.4, 1.1, 2.3];
        const double speed = 30.0;
        var own = FrequencyResponse.Of(RideModel.Of(car), speed, frequencies);
        var other = FrequencyResponse.Of(RideModel.Of(Turned(car)), speed, frequencies);
        for (var k = 0; k < frequencies.Length; k++)
        {
            var delay = car.Wheelbase.Si / speed;
            var half = System.Numerics.Complex.Exp(new System.Numerics.Complex(0.0, Math.PI * frequencies[k] * delay));
            var (heave, pitch) = (own.Of(RideSignal.Heave).Both[k] * half, own.Of(RideSignal.Pitch).Both[k] * half);
            var (heave2, pitch2) = (other.Of(RideSignal.Heave).Both[k] * half, other.Of(RideSignal.Pitch).Both[k] * half);
            var reversed = ReversedDelay(car, frequencies[k], delay);
            Assert.Equal(0.0, (heave2 - reversed.Heave).Magnitude / heave.Magnitude, 1e-9);
            Assert.Equal(0.0, (pitch2 + reversed.Pitch).Magnitude / pitch.Magnitude, 1e-9);
        }
    }

    // The car's own answer when the rear meets the road first, by superposition of one axle at a time, phase from the middle of the wheelbase.
    private static (System.Numerics.Complex Heave, System.Numerics.Complex Pitch) ReversedDelay(Car car, double frequency, double delay)
    {
        var tangent = RideModel.Of(car).Tangent;
        var n = 2 * tangent.Positions;
        var iw = new System.Numerics.Complex(0.0, 2.0 * Math.PI * frequency);
        var system = MathNet.Numerics.LinearAlgebra.Matrix<System.Numerics.Complex>.Build.Dense(
            n, n, (i, j) => (i == j ? iw : 0.0) - tangent.State[i, j]);
        var late = System.Numerics.Complex.Exp(-iw * delay / 2.0);
        var early = System.Numerics.Complex.Exp(iw * delay / 2.0);
        var road = MathNet.Numerics.LinearAlgebra.Vector<System.Numerics.Complex>.Build.Dense(8, i =>
        {
            var height = i % 4 < 2 ? late : early;
            return i < 4 ? height : iw * height;
        });
        var input = MathNet.Numerics.LinearAlgebra.Matrix<System.Numerics.Complex>.Build.Dense(n, 8, (i, j) => tangent.Road[i, j]) * road;
        var answer = system.Solve(input);
        return (answer[0], answer[1]);
    }

    private static Car Turned(Car car) => car with
    {
        Front = car.Rear,
        Rear = car.Front,
        Weighing = new Weighing
        {
            FrontLeft = car.Weighing.RearLeft,
            FrontRight = car.Weighing.RearRight,
            RearLeft = car.Weighing.FrontLeft,
            RearRight = car.Weighing.FrontRight,
        },
    };
}
