using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Rules;

namespace Heaveline.Tests.Measures;

/// <summary>The greatest vertical jerk of a seat: a mean rate over 10 ms, against closed forms.</summary>
public class SeatJerkTests
{
    private const double Half = 5e-3;

    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });

    private static Seat At(string name, double behind, double left) =>
        new() { Name = name, BehindFrontAxle = new(behind), LeftOfMiddle = new(left), Height = new(0.5), HeadAboveSeat = new(0.7) };

    private static Car Seated => PlainCar.Saloon with { Seats = [At("driver", 1.3, 0.4), At("rear left", 2.2, 0.4)] };

    private static double Jerk(SeatPlace place, double rate, params (int Channel, Func<double, double> At)[] traces) =>
        SeatCatalogue.Of(place).Single(m => m.Word == "jerk").Of(GivenPass.Of(RideModel.Of(Seated), Hump, 10.0, 2.0, rate, traces));

    // ½h·(a·sin ω(t + h) − a·sin ω(t − h)) = a·ω·cos ωt · sin(ωh)/(ωh): of its peak the samples miss at most (ω/2r)²/2.
    [Theory]
    [InlineData(1.5, 400.0)]
    [InlineData(10.0, 400.0)]
    [InlineData(10.0, 200.0)]
    [InlineData(10.0, 1000.0)]
    public void A_swing_has_the_jerk_of_its_amplitude_times_its_circular_frequency_less_what_the_mean_takes_off(double frequency, double rate)
    {
        var omega = 2.0 * Math.PI * frequency;
        var mean = 3.0 * omega * Math.Sin(omega * Half) / (omega * Half);
        var jerk = Jerk(SeatPlace.Of("driver"), rate, (Channel.Accelerations + Channel.Heave, t => 3.0 * Math.Sin(omega * t)));
        Assert.InRange(jerk, mean * (1.0 - (0.5 * Math.Pow(0.5 * omega / rate, 2)) - 1e-9), mean * (1.0 + 1e-9));
        // What the comment says of the error: low by (ωh)²/6 of the true 3·ω, to the next term of the series.
        Assert.Equal(Math.Pow(omega * Half, 2) / 6.0, 1.0 - (mean / (3.0 * omega)), Math.Pow(omega * Half, 4) / 120.0);
    }

    [Theory]
    [InlineData(200.0)]
    [InlineData(400.0)]
    public void A_steady_rise_has_its_own_rate_and_a_jump_is_spread_over_ten_milliseconds(double rate)
    {
        Assert.Equal(7.0, Jerk(SeatPlace.Of("driver"), rate, (Channel.Accelerations + Channel.Heave, t => 7.0 * t)), 1e-9);
        Assert.Equal(2.0 / 0.010, Jerk(SeatPlace.Of("driver"), rate, (Channel.Accelerations + Channel.Heave, t => t < 0.5 ? 0.0 : -2.0)), 1e-9);
    }

    // Pitch of 4·t rad/s² about a centre of gravity that lies as far ahead of the rear seat as half the wheelbase says.
    [Fact]
    public void The_worst_seat_is_the_one_with_the_longer_lever()
    {
        var model = RideModel.Of(Seated);
        (int, Func<double, double>)[] traces = [(Channel.Accelerations + Channel.Pitch, t => 4.0 * t)];
        var levers = Seated.Seats.ToDictionary(s => s.Name, s => Math.Abs(model.Body.BehindFrontAxle - s.BehindFrontAxle.Si));
        Assert.Equal(4.0 * levers["rear left"], Jerk(SeatPlace.Of("rear left"), 400.0, traces), 1e-9);
        Assert.Equal(4.0 * levers.Values.Max(), Jerk(SeatPlace.Worst, 400.0, traces), 1e-9);
    }

    [Fact]
    public void A_car_without_seats_has_no_jerk_and_no_rule_is_judged_by_it()
    {
        var jerk = SeatCatalogue.Of(SeatPlace.Worst).Single(m => m.Word == "jerk");
        Assert.True(double.IsNaN(jerk.Of(GivenPass.Of(RideModel.Of(PlainCar.Saloon), Hump, 10.0, 1.0, 400.0))));
        Assert.Contains("seat", Assert.Throws<RefusedValueException>(
            () => RuleMap.Of(RideModel.Of(PlainCar.Saloon), Hump, RuleAxis.Damping([0.2, 0.3]), [10.0], [jerk])).Message, StringComparison.Ordinal);
    }
}
