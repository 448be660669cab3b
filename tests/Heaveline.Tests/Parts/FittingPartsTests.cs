using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Tests.Parts;

public class FittingPartsTests
{
    private static readonly BarPart Bar =
        new() { Name = "Ash 19", Price = new Money(140.5m, "EUR"), Holes = [new("inner", new(11e3)), new("outer", new(7e3))] };

    private static readonly TyrePart Tyre = new()
    {
        Name = "Heron 195/60",
        Price = new Money(95m, "EUR"),
        Tyre = new Tyre { Rate = new(210e3), Damping = new(60.0), ContactLength = new(0.12) },
        Unsprung = new(1.2),
        RadiusChange = new Amount<Length>(0.004),
    };

    private static readonly LinkPart Link =
        new() { Name = "Rook bellcrank", Price = new Money(520m, "EUR"), Link = new ElasticLink { Rate = new(12e3) } };

    [Fact]
    public void A_bar_has_the_rate_of_its_hole()
    {
        Assert.Equal(7e3, Shelf.Fits(PartPlace.FrontBar, Bar.At("outer")).Car.Front.AntiRollBar.Si);
        Assert.Equal("Ash 19 at the inner hole", Bar.Options[0].Name);
        Assert.Throws<RefusedValueException>(() => Bar.At("middle"));
        var without = Shelf.Fits(PartPlace.FrontBar, BarPart.Without.Only());
        Assert.Equal((0.0, Money.None), (without.Car.Front.AntiRollBar.Si, without.Cost));
        Assert.Equal(MisfitKind.NoBar, Shelf.Misfits(Shelf.Car with { Kind = VehicleKind.TwoWheeler }, PartPlace.FrontBar, Bar.At("outer")).Kind);
    }

    [Fact]
    public void Nothing_is_paid_out_for_buying_or_fitting_and_a_list_is_added_up_in_one_currency()
    {
        var (debt, dollars) = (new Money(-1m, "EUR"), new Money(30m, "USD"));
        Assert.Equal("price", Assert.Throws<RefusedValueException>(() => Bar with { Price = debt }).What);
        Assert.Equal("price of fitting", Assert.Throws<RefusedValueException>(() => Bar with { FittingPrice = debt }).What);
        Assert.Equal(
            "price of an hour", Assert.Throws<RefusedValueException>(() => new PartsList { Name = "shed", Parts = [Bar], HourlyPrice = debt }).What);
        Assert.Equal("currency", Assert.Throws<RefusedValueException>(
            () => new PartsList { Name = "shed", Parts = [Bar, Tyre with { Price = dollars }] }).What);
        Assert.Equal("currency", Assert.Throws<RefusedValueException>(
            () => new PartsList { Name = "shed", Parts = [Bar with { FittingPrice = dollars }] }).What);
        Assert.Equal(2, new PartsList { Name = "shed", Parts = [Bar, Tyre with { Price = Money.None }] }.Parts.Count);
    }

    // At 0.9 of the wheel's travel 9 mm off the stop are 10 mm at the wheel; the 36 mm that are left of 45 mm give way 0.8 as far.
    [Fact]
    public void What_is_cut_off_a_stop_moves_its_clearance_through_its_ratio()
    {
        var stop = Shelf.Stop with { PerWheel = new Amount<Plain>(0.9) };
        var whole = Shelf.Fits(PartPlace.FrontStop, stop.Options[0]).Car.Front.BumpStop!;
        var cut = Shelf.Fits(PartPlace.FrontStop, stop.Options[1]).Car.Front.BumpStop!;
        Assert.Equal("Moss 45 cut by 9 mm", stop.Options[1].Name);
        Assert.Equal("Moss 45", stop.Options[0].Name);
        Assert.Equal((0.070, 0.080), (whole.Clearance.Si, Math.Round(cut.Clearance.Si, 12)));
        Assert.Equal([0.0, 0.010 / 0.9, 0.030 / 0.9], whole.Table!.At.Select(x => x));
        Assert.Equal([0.0, 200.0 * 0.9, 2000.0 * 0.9], whole.Table.Force);
        Assert.Equal(0.036 / 0.9, whole.SolidAfter!.Value.Si, 1e-12);
        Assert.Equal(0.8 * 0.030 / 0.9, cut.Table!.At[2], 1e-12);
        Assert.Equal(0.8 * 0.036 / 0.9, cut.SolidAfter!.Value.Si, 1e-12);
        Assert.Equal(0.036, cut.Length!.Value.Si, 1e-12);
        Assert.Throws<RefusedValueException>(() => stop.CutBy(new(0.045)));
    }

    [Fact]
    public void A_longer_stop_touches_sooner_by_what_it_is_longer_and_one_that_touches_already_is_no_fit()
    {
        Car With(double length) =>
            Shelf.Car with { Front = Shelf.Car.Front with { BumpStop = Shelf.Car.Front.BumpStop! with { Length = new(length) } } };
        var fitted = Assert.IsType<Fitted>(Shelf.Fit(With(0.035), PartPlace.FrontStop, Shelf.Stop.Options[0]));
        Assert.Equal(0.060, fitted.Car.Front.BumpStop!.Clearance.Si, 1e-12);
        Assert.DoesNotContain(fitted.Remarks, remark => remark.Id == "length");
        Assert.Contains(Shelf.Fits(PartPlace.FrontStop, Shelf.Stop.Options[0]).Remarks, remark => remark.Id == "length");
        var long90 = Shelf.Stop with { Length = new(0.110) };
        var misfit = Shelf.Misfits(With(0.035), PartPlace.FrontStop, long90.Options[0]);
        Assert.Equal(MisfitKind.StopTouches, misfit.Kind);
        Assert.Equal(-0.005, misfit.Value, 1e-12);
        Assert.Equal(
            MisfitKind.NoStop,
            Shelf.Misfits(PlainCar.Saloon, PartPlace.RearStop, Shelf.Stop.Options[0]).Kind);
    }

    [Fact]
    public void A_shorter_stop_that_lets_the_coils_of_the_spring_there_touch_is_no_fit()
    {
        var spring = Shelf.Car.Front.Spring with { BlockLength = new Amount<Length>(0.390 - (Shelf.Carried / 21e3) - 0.112) };
        var car = Shelf.Car with { Front = Shelf.Car.Front with { Spring = spring } };
        Assert.IsType<Fitted>(Shelf.Fit(car, PartPlace.FrontStop, Shelf.Stop.Options[0]));
        var misfit = Shelf.Misfits(car, PartPlace.FrontStop, (Shelf.Stop with { SolidAfter = new Amount<Length>(0.044) }).Options[0]);
        Assert.Equal(MisfitKind.CoilsTouch, misfit.Kind);
        Assert.Equal((0.112, 0.114), (Math.Round(misfit.Value, 9), Math.Round(misfit.Limit, 9)));
    }

    [Fact]
    public void A_heavier_tyre_stands_on_the_scales_and_not_on_the_springs()
    {
        var car = Shelf.Fits(PartPlace.FrontTyre, Tyre.Only()).Car;
        Assert.Equal(72.4, car.Front.UnsprungMass.Si, 1e-12);
        Assert.Equal(672.4, car.Weighing.Front, 1e-9);
        Assert.Equal((210e3, 60.0, 0.12), (car.Front.Tyre.Rate.Si, car.Front.Tyre.Damping.Si, car.Front.Tyre.ContactLength.Si));
        Assert.Equal(SprungBody.Of(Shelf.Car), SprungBody.Of(car));
        Assert.Equal(RideModel.Of(Shelf.Car).Trim.Travel[0], RideModel.Of(car).Trim.Travel[0], 1e-12);
        Assert.Equal(
            MisfitKind.UnsprungMass, Shelf.Misfits(Shelf.Car, PartPlace.FrontTyre, (Tyre with { Unsprung = new(-35.0) }).Only()).Kind);
    }

    // 335 kg a wheel press 190 N/mm by 17.29 mm and 210 N/mm by 15.64 mm: 4 mm of radius and 1.65 mm of rate.
    [Fact]
    public void A_tyre_of_another_radius_tells_how_the_car_stands_and_that_the_gearing_follows()
    {
        var remark = Assert.Single(Shelf.Fits(PartPlace.FrontTyre, Tyre.Only()).Remarks, r => r.Id == "radius").Text;
        Assert.Contains(
            "4 mm larger in radius and pressed 2 mm less far by what it carries, it stands 6 mm higher than", remark, StringComparison.Ordinal);
        Assert.Contains("speedometer", remark, StringComparison.Ordinal);
        var silent = Shelf.Fits(PartPlace.FrontTyre, (Tyre with { RadiusChange = null }).Only());
        Assert.Contains("is not known", Assert.Single(silent.Remarks, r => r.Id == "radius").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_wheels_of_a_solid_axle_turn_with_it()
    {
        var beam = Shelf.Car.Front with { Suspension = SuspensionKind.SolidAxle, RollInertia = new Amount<Inertia>(40.0) };
        var fitted = Assert.IsType<Fitted>(Shelf.Fit(Shelf.Car with { Front = beam }, PartPlace.FrontTyre, Tyre.Only()));
        Assert.Equal(40.0 + (2.4 * 0.75 * 0.75), fitted.Car.Front.RollInertia!.Value.Si, 1e-12);
    }

    [Fact]
    public void A_link_that_is_free_leaves_the_car_as_high_as_it_stood()
    {
        var fitted = Shelf.Fits(PartPlace.Link, Link.Only());
        Assert.Equal(12e3, Assert.IsType<ElasticLink>(fitted.Car.Interconnection).Rate.Si);
        Assert.Equal(RideModel.Of(Shelf.Car).Trim.Travel[0], RideModel.Of(fitted.Car).Trim.Travel[0], 1e-9);
        var carrying = Shelf.Car with { Interconnection = new ElasticLink { Rate = new(10e3), Carried = new(500.0) } };
        Assert.Equal(MisfitKind.LinkCarries, Shelf.Misfits(carrying, PartPlace.Link, Link.Only()).Kind);
    }

    [Fact]
    public void A_setup_costs_pieces_times_price_and_what_is_there_costs_nothing()
    {
        FittedPart[] parts =
        [
            new(PartPlace.FrontSpring, Shelf.Coil.Only()), new(PartPlace.FrontDamper, Shelf.Damper.At(6)), new(PartPlace.FrontBar, Bar.At("outer")),
            new(PartPlace.FrontTyre, Tyre.Only()) { IsThere = true }, new(PartPlace.Link, Link.Only()),
        ];
        var fitted = Assert.IsType<Fitted>(Fitting.Of(Shelf.Car, parts));
        Assert.Equal(new Money((2 * 84m) + (2 * 310m) + 140.5m + 520m, "EUR"), fitted.Cost);
        Assert.Equal([2, 2, 1, 0, 1], fitted.Costs.Select(line => line.Pieces));
        Assert.Equal(fitted.Cost, fitted.Costs.Aggregate(Money.None, (sum, line) => sum + line.Total!.Value));
        Assert.Equal("1448.50 EUR", fitted.Cost.ToString());
        var unpriced = Assert.IsType<Fitted>(Shelf.Fit(PartPlace.FrontSpring, (Shelf.Coil with { Price = null }).Only()));
        Assert.Null(unpriced.Cost);
        Assert.Throws<RefusedValueException>(() => new Money(1m, "EUR") + new Money(1m, "GBP"));
    }

    [Fact]
    public void Fitting_is_counted_once_a_place_with_the_pieces_and_not_for_what_is_there()
    {
        var coil = Shelf.Coil with { FittingPrice = new Money(90m, "EUR") };
        var fitted = Assert.IsType<Fitted>(Fitting.Of(
            Shelf.Car,
            [
                new(PartPlace.FrontSpring, coil.Only()),
                new(PartPlace.FrontTyre, (Tyre with { FittingPrice = new Money(30m, "EUR") }).Only()) { IsThere = true },
            ]));
        Assert.Equal(new Money((2 * 84m) + 90m, "EUR"), fitted.Cost);
        Assert.Equal(fitted.Cost, fitted.Costs.Aggregate(Money.None, (sum, line) => sum + line.Total!.Value));
    }

    [Fact]
    public void A_two_wheeler_has_one_of_each() => Assert.Equal(1, Shelf.Coil.PiecesOn(VehicleKind.TwoWheeler));

    [Fact]
    public void A_part_goes_where_it_is_sold_for()
    {
        var rear = Shelf.Coil with { Only = AxleEnd.Rear };
        Assert.Equal(MisfitKind.OtherPlace, Shelf.Misfits(Shelf.Car, PartPlace.FrontSpring, rear.Only()).Kind);
        Assert.Equal(MisfitKind.OtherPlace, Shelf.Misfits(Shelf.Car, PartPlace.RearDamper, rear.Only()).Kind);
        Assert.IsType<Fitted>(Shelf.Fit(PartPlace.RearSpring, rear.Only()));
        Assert.Throws<RefusedValueException>(() => Fitting.Of(
            Shelf.Car, [new(PartPlace.FrontSpring, Shelf.Coil.Only()), new(PartPlace.FrontSpring, rear.Only())]));
    }

    [Fact]
    public void Every_place_is_that_of_its_sort_and_end()
    {
        Assert.Equal(11, PartPlaces.All.Count);
        Assert.All(PartPlaces.All, place => Assert.Equal(place, PartPlaces.At(place.Sort(), place.End() ?? AxleEnd.Front)));
        Assert.Equal("rear damper", PartPlace.RearDamper.Name());
    }

    [Fact]
    public void Every_misfit_has_words_and_advice() => Assert.All(Enum.GetValues<MisfitKind>(), kind =>
    {
        var misfit = new Misfit(PartPlace.RearStop, "Moss 45", kind, 0.1, 0.2);
        Assert.StartsWith("Moss 45 does not fit as rear stop: ", misfit.Words, StringComparison.Ordinal);
        Assert.EndsWith(".", misfit.Words, StringComparison.Ordinal);
        Assert.EndsWith(".", misfit.Advice, StringComparison.Ordinal);
    });

    [Fact]
    public void Every_reason_is_told_where_all_are_asked_for()
    {
        var coil = Shelf.Coil with { BlockLength = new Amount<Length>(0.300), FreeLength = new Amount<Length>(0.310) };
        var misfits = Fitting.Misfits(
            Shelf.Car,
            [new(PartPlace.FrontSpring, coil.Only()), new(PartPlace.FrontDamper, (Shelf.Damper with { Stroke = new Amount<Length>(0.1) }).At(2))]);
        Assert.Equal([MisfitKind.CoilsTouch, MisfitKind.LooseSpring, MisfitKind.ShortStroke], misfits.Select(m => m.Kind));
    }
}
