using Heaveline.Elements;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Tests.Measures;

public class RollTests
{
    /// <summary>
    /// Two springs of 20 kN/m on a track of 1.5 m: ½·k·t² = 22 500 N m/rad (public university notes on vehicle dynamics). A bar of 22 mm, 1 m long,
    /// arms of 0.25 m, 0.7 of the wheel's travel: (G·J/L)·(K·t/R)² = 32 171 N m/rad, from the torsion formula of textbooks.
    /// </summary>
    [Fact]
    public void Springs_and_bar_add_to_the_roll_stiffness_of_the_handbooks()
    {
        var bar = new AntiRollBarDimensions { Diameter = new(0.022), Length = new(1.0), Arm = new(0.25), MotionRatio = new(0.7) };
        var car = BodyOnSprings.Of(1200.0, 20000.0);
        var roll = SideEffects.Of(RideModel.Of(car with { Front = car.Front with { AntiRollBar = new(bar.WheelRate) } })).Roll!;
        Assert.Equal(22500.0 + 22500.0 + 32171.0, roll.Suspension, 1.0);
        Assert.Equal((22500.0 + 32171.0) / 77171.0, roll.FrontShare, 1e-5);
        Assert.Equal(32171.0 / 77171.0, roll.BarShare, 1e-5);
        Assert.Equal(roll.Suspension, roll.WithTyres, 1.0);
    }

    // Tyres of 200 N/mm under an axle of 22 500 N m/rad: series with ½·200 000·1.5² = 225 000 N m/rad.
    [Fact]
    public void Tyres_stand_in_series_axle_by_axle()
    {
        var roll = SideEffects.Of(RideModel.Of(BodyOnSprings.Of(1200.0, 20000.0, tyre: 2e5, unsprung: 80.0))).Roll!;
        Assert.Equal(2.0 * 22500.0 * 225000.0 / 247500.0, roll.WithTyres, 1e-3);
        Assert.Equal(0.5, roll.FrontShareWithTyres, 1e-9);
    }

    // Statics of a body on a roll axis: φ = M·a·(h − h_a)/(K − M·g·(h − h_a)).
    [Fact]
    public void Roll_per_g_has_gravity_in_it()
    {
        var roll = SideEffects.Of(RideModel.Of(BodyOnSprings.Of(1200.0, 20000.0, height: 0.55, rollAxis: 0.10))).Roll!;
        var moment = 1200.0 * Gravity.Standard * 0.45;
        Assert.Equal(moment / (45000.0 - moment), roll.AnglePerG!.Value, 1e-6);
    }

    [Fact]
    public void Without_a_roll_axis_height_roll_per_g_is_not_said_but_explained()
    {
        var model = RideModel.Of(BodyOnSprings.Of(1200.0, 20000.0, rollAxis: null));
        var effects = SideEffects.Of(model);
        Assert.Null(effects.Roll!.AnglePerG);
        Assert.Contains(effects.Notes, n => n.Id == "no-roll-axis");
        Assert.Throws<RefusedValueException>(() => Attitude.Of(model, 0.0, 3.0));
    }

    // Moments about the ground: what the tyres on the outside gain times half the track is m·a·h of the whole
    // car and gravity's part of the leaning body.
    [Fact]
    public void The_tyres_in_a_bend_carry_the_whole_cars_moment()
    {
        var car = PlainCar.Saloon;
        var model = RideModel.Of(car with { Body = car.Body with { RollAxisHeight = new Amount<Length>(0.12) } }, PlainCar.With(80.0, 1.3, 0.35));
        const double Bend = 0.4 * Gravity.Standard;
        var attitude = Attitude.Of(model, 0.0, Bend);
        var gained = Enumerable.Range(0, 4).Sum(i => -model.Y[i] * (attitude.Trim.WheelLoad[i] - model.Trim.WheelLoad[i]));
        var whole = (Bend * ((model.Body.Mass * model.Body.Height) + (134.0 * 0.30))) + (model.RollGravity * attitude.Roll);
        Assert.True(attitude.Roll > 0.0);
        Assert.Equal(whole, gained, 1e-3);
        Assert.Equal(0.4 * SideEffects.Of(model).Roll!.AnglePerG!.Value, attitude.Roll, 1e-8);
    }
}
