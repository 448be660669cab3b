using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Measures;

/// <summary>What seats and heads get of a body that turns in a given way, by the kinematics of a rigid body.</summary>
public class SeatMeasuresTests
{
    // The sprung weight of the plain saloon, 600 kg in front and 516 kg behind on 2.6 m, balances here behind the front axle.
    private const double Balance = 2.6 * 516.0 / 1116.0;

    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });

    private static Seat At(string name, double behindBalance, double left) =>
        new() { Name = name, BehindFrontAxle = new(Balance + behindBalance), LeftOfMiddle = new(left), Height = new(0.5), HeadAboveSeat = new(0.7) };

    private static SeatMeasures Of(Seat seat, Body body, params (int Channel, Func<double, double> At)[] traces) =>
        Assert.Single(SeatMeasures.Of(GivenPass.Of(
            RideModel.Of(PlainCar.Saloon with { Body = body, Seats = [seat] }), Hump, 10.0, 4.0, 400.0, traces)));

    private static Body WithAxes => PlainCar.Saloon.Body with { PitchAxisHeight = new Amount<Length>(0.3), RollAxisHeight = new Amount<Length>(0.1) };

    // Up 1 m/s²; nose down 2 rad/s² lifts what is 0.8 m behind by 1.6; right side down 3 rad/s² lifts what is 0.4 m to the left by 1.2.
    [Theory]
    [InlineData(0.8, 0.4, 3.8)]
    [InlineData(0.8, -0.4, 1.4)]
    [InlineData(-0.8, 0.4, 0.6)]
    [InlineData(-0.8, -0.4, -1.8)]
    public void A_seat_goes_up_with_heave_pitch_and_roll_by_its_place(double behind, double left, double expected)
    {
        var seat = Of(
            At("seat", behind, left), WithAxes,
            (Channel.Accelerations + Channel.Heave, _ => 1.0),
            (Channel.Accelerations + Channel.Pitch, _ => 2.0),
            (Channel.Accelerations + Channel.Roll, _ => 3.0));
        Assert.Equal("seat", seat.Seat);
        Assert.Equal(Math.Abs(expected), seat.PeakVertical, 1e-9);
        Assert.Equal(Math.Abs(expected), seat.RmsVertical, 1e-9);
    }

    // The head at 1.2 m, 0.9 m above the pitch axis: 0.9·2 − 9.80665·0.03 = 1.5058005; 1.1 m above the roll axis: −1.1·3 + 9.80665·0.02 = −3.1039.
    [Fact]
    public void A_head_is_pushed_by_its_height_above_the_axes_and_by_the_tilt()
    {
        (int, Func<double, double>)[] traces =
        [
            (Channel.Pitch, _ => 0.03), (Channel.Accelerations + Channel.Pitch, _ => 2.0), (Channel.Roll, _ => 0.02),
            (Channel.Accelerations + Channel.Roll, _ => 3.0),
        ];
        var seat = Of(At("seat", 0.3, 0.4), WithAxes, traces);
        Assert.Equal(1.5058005, seat.PeakHeadForeAft, 1e-9);
        Assert.Equal(1.5058005, seat.RmsHeadForeAft, 1e-9);
        Assert.Equal(3.103867, seat.PeakHeadLateral, 1e-9);
        // Without axes from the height of the sprung centre of gravity: the car's 0.55 m less what the low wheels take off it, 0.65 m here.
        var free = Of(At("seat", 0.3, 0.4), PlainCar.Saloon.Body, traces);
        var model = RideModel.Of(PlainCar.Saloon);
        Assert.Equal(((1.2 - model.Body.Height) * 2.0) - (9.80665 * 0.03), free.PeakHeadForeAft, 1e-9);
        Assert.Equal(((1.2 - model.Body.Height) * 3.0) - (9.80665 * 0.02), free.PeakHeadLateral, 1e-9);
    }

    // What happens before the first touch counts for a peak and not for a root mean square, nor does what comes later than 3 s after it.
    [Fact]
    public void Peaks_are_of_the_whole_record_and_root_mean_squares_of_the_three_seconds_from_first_touch()
    {
        var seat = Of(At("seat", 0.8, 0.0), WithAxes, (Channel.Accelerations + Channel.Heave, t => t is < -0.05 or > 3.05 ? -4.0 : 1.5));
        Assert.Equal(4.0, seat.PeakVertical, 1e-9);
        Assert.Equal(1.5, seat.RmsVertical, 1e-9);
        var head = Of(At("seat", 0.8, 0.0), WithAxes, (Channel.Pitch, t => t < -0.05 ? -0.2 : 0.05));
        Assert.Equal(0.2 * 9.80665, head.PeakHeadForeAft, 1e-9);
        Assert.Equal(0.05 * 9.80665, head.RmsHeadForeAft, 1e-3);
    }

    [Fact]
    public void The_whole_bodys_numbers_are_those_of_its_traces()
    {
        var measures = PassMeasures.Of(GivenPass.Of(
            RideModel.Of(PlainCar.Saloon), Hump, 10.0, 4.0, 400.0,
            (Channel.Accelerations + Channel.Heave, t => t is < -0.05 or > 3.05 ? -5.0 : 1.2), (Channel.Roll, t => 0.01 - (0.02 * t))));
        Assert.Equal(5.0, measures.PeakHeaveAcceleration, 1e-9);
        Assert.Equal(1.2, measures.RmsHeaveAcceleration, 1e-9);
        Assert.Equal(0.07, measures.PeakRoll, 1e-12);
        Assert.Empty(measures.Seats);
        Assert.Equal(4, measures.Wheels.Count);
        Assert.Null(measures.Headlamp);
    }

    // 1.2 % as set; 150 kg in the boot lift the nose and the beam; then nose down adds, nose up takes away.
    [Fact]
    public void The_beam_swings_with_the_body()
    {
        var car = PlainCar.Saloon with { Headlamp = new Headlamp { Height = new(0.66), AheadOfFrontAxle = new(0.75), Drop = new(0.012) } };
        var model = RideModel.Of(car, PlainCar.With(150.0, 3.0));
        var lamp = PassMeasures.Of(GivenPass.Of(model, Hump, 10.0, 2.0, 400.0, (Channel.Pitch, t => 0.02 - (0.03 * t / 2.0)))).Headlamp!;
        var trim = model.Trim.Pitch;
        Assert.InRange(trim, -0.02, -0.005);
        Assert.Equal(0.012 + trim, lamp.AtTrim, 1e-12);
        Assert.Equal(0.012 + trim - 0.01, lamp.Highest, 1e-12);
        Assert.Equal(0.012 + trim + 0.0215, lamp.Lowest, 1e-12);
    }

    // The same motion from first touch on has the same root mean square however fast the car went and however long it was recorded; a hit that lasts
    // longer than the three seconds has none.
    [Fact]
    public void A_root_mean_square_over_an_obstacle_does_not_hang_on_the_records_length()
    {
        var model = RideModel.Of(PlainCar.Saloon);
        double Of(double speed, double last)
        {
            var touch = -0.5 * PlainCar.Saloon.Front.Tyre.ContactLength.Si / speed;
            return PassMeasures.Of(GivenPass.Of(
                model, Hump, speed, last, 400.0, (Channel.Accelerations + Channel.Heave, t => Math.Exp(touch - t)))).RmsHeaveAcceleration;
        }

        // √(∫e^(−2t) dt/3) over 0 … 3 s.
        var expected = Math.Sqrt((1.0 - Math.Exp(-6.0)) / 6.0);
        Assert.All(new[] { 4.0, 10.0, 30.0 }, speed => Assert.All(new[] { 3.2, 5.0, 9.0 }, last => Assert.Equal(expected, Of(speed, last), 1e-5)));
        Assert.Equal(double.NaN, Of(2.0, 9.0));
        Assert.Equal(double.NaN, Of(10.0, 2.0));
    }
}
