using CsCheck;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Tests.Parts;

public class FittingSpringTests
{
    private const double Gap = 0.390 - (Shelf.Carried / 21e3);

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.012)]
    public void A_bought_spring_stands_the_car_where_its_length_and_its_packing_say(double packing)
    {
        var fitted = Assert.IsType<Fitted>(Fitting.Of(Shelf.Car, [new(PartPlace.FrontSpring, Shelf.Coil.Only()) { Packing = new(packing) }]));
        var travel = (Shelf.Carried / 24e3) - (0.380 - Gap + packing);
        Assert.Equal(travel, RideModel.Of(fitted.Car).Trim.Travel[0], 1e-9);
    }

    [Fact]
    public void The_packer_is_what_the_new_spring_is_pressed_less_what_it_is_long_against_the_old_one()
    {
        var packer = Assert.Single(Shelf.Fits(PartPlace.FrontSpring, Shelf.Coil.Only()).Packers);
        var needed = (Shelf.Carried / 24e3) - 0.380 - ((Shelf.Carried / 21e3) - 0.390);
        Assert.Equal(needed, packer.Height!.Value, 1e-12);
        Assert.Equal("Larch L-24 needs its seats 8 mm lower for the front to stand as high as when the car was weighed: only with adjustable seats.",
            packer.Words);
        var packed = Assert.IsType<Fitted>(Fitting.Of(Shelf.Car, [new(PartPlace.FrontSpring, Shelf.Coil.Only()) { Packing = new(needed) }]));
        Assert.Equal(0.0, RideModel.Of(packed.Car).Trim.Travel[0], 1e-9);
    }

    [Fact]
    public void Where_a_length_is_not_known_the_height_is_kept_and_what_that_takes_is_told()
    {
        var coil = Shelf.Coil with { FreeLength = null };
        var fitted = Shelf.Fits(PartPlace.FrontSpring, coil.Only());
        Assert.Equal(0.0, RideModel.Of(fitted.Car).Trim.Travel[0], 1e-9);
        var packer = Assert.Single(fitted.Packers);
        Assert.Equal((Shelf.Carried / 24e3) - (Shelf.Carried / 21e3), packer.Longer!.Value, 1e-12);
        Assert.True(packer.KeepsHeight);
        Assert.Contains("18 mm shorter without load than the spring weighed", packer.Words, StringComparison.Ordinal);
        var misfit = Assert.IsType<Misfit>(Fitting.Of(Shelf.Car, [new(PartPlace.FrontSpring, coil.Only()) { Packing = new(0.005) }]));
        Assert.Equal(MisfitKind.NowhereToPack, misfit.Kind);
    }

    // The seats of the spring weighed are Gap apart; at 110 mm of bump the stop is solid.
    [Theory]
    [InlineData(-1e-4, true)]
    [InlineData(1e-4, false)]
    public void Coils_that_touch_before_the_bump_stop_is_solid_are_no_fit(double spare, bool isMisfit)
    {
        var pressed = 24e3 * (0.380 - Gap);
        var length = 0.380 - (pressed / 24e3);
        var coil = Shelf.Coil with { BlockLength = new Amount<Length>(length - 0.110 - spare) };
        var result = Shelf.Fit(PartPlace.FrontSpring, coil.Only());
        Assert.Equal(isMisfit, result is Misfit { Kind: MisfitKind.CoilsTouch });
        if (result is Misfit misfit)
        {
            Assert.Equal(0.110 + spare, misfit.Value, 1e-9);
            Assert.Equal(0.110, misfit.Limit, 1e-12);
            Assert.Contains("before the bump stop ends it at 110 mm", misfit.Words, StringComparison.Ordinal);
            Assert.Contains("shorter block length", misfit.Advice, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_stress_of_the_wire_is_that_of_Wahl_at_full_bump_and_is_held_against_what_its_maker_allows()
    {
        var wire = new CoilDimensions { Wire = new(0.0125), MeanDiameter = new(0.120), ActiveCoils = new(5.8) };
        var coil = Shelf.Coil with { Law = new LinearSpring { Rate = new(wire.Rate), Dimensions = wire }, AllowedStress = new Amount<Pressure>(2e9) };
        var force = wire.Rate * (0.380 - Gap + 0.110);
        var stress = wire.StressUnder(force);
        Assert.IsType<Fitted>(Shelf.Fit(PartPlace.FrontSpring, (coil with { AllowedStress = new Amount<Pressure>(stress + 1e3) }).Only()));
        var misfit = Shelf.Misfits(
            Shelf.Car, PartPlace.FrontSpring, (coil with { AllowedStress = new Amount<Pressure>(stress - 1e3) }).Only());
        Assert.Equal((MisfitKind.WireStress, stress - 1e3), (misfit.Kind, misfit.Limit));
        Assert.Equal(stress, misfit.Value, stress * 1e-9);
        var silent = Shelf.Fits(PartPlace.FrontSpring, (coil with { AllowedStress = null }).Only());
        Assert.Contains(silent.Remarks, r => r.Id == "stress");
    }

    // The wheel hangs where 35 kg stretch the stop: 80 mm and 35·g over 80 N/mm.
    [Theory]
    [InlineData(-1e-4, true)]
    [InlineData(1e-4, false)]
    public void A_spring_too_short_for_the_hanging_wheel_is_no_fit(double spare, bool isMisfit)
    {
        var hangs = 0.080 + (35.0 * 9.80665 / 80e3);
        var coil = Shelf.Coil with { FreeLength = new Amount<Length>(Gap + hangs + spare) };
        var result = Shelf.Fit(PartPlace.FrontSpring, coil.Only());
        Assert.Equal(isMisfit, result is Misfit { Kind: MisfitKind.LooseSpring });
        if (result is Misfit misfit)
        {
            Assert.Equal(-hangs, misfit.Limit, 1e-9);
            Assert.Equal(-hangs - spare, misfit.Value, 1e-9);
            Assert.Contains("falls out of its seat", misfit.Words, StringComparison.Ordinal);
            Assert.Contains("do not drive on it", misfit.Advice, StringComparison.Ordinal);
        }
    }

    // The answer that describe and check give, of cars with bars, links, gas, two wheels and one-sided weights.
    [Fact]
    public void Loose_and_touching_springs_are_those_that_the_cars_own_answer_names()
    {
        var (loose, touching, sound) = (0, 0, 0);
        Gen.Select(AnyCar.Any, Gen.Double[0.6, 1.5], Gen.Double[-0.06, 0.06], Gen.Double[0.3, 0.75], Gen.Enum<AxleEnd>())
            .Sample((car, stiffer, longer, solid, end) =>
            {
                var axle = car.Axles[(int)end];
                if (axle.Spring.Law is not LinearSpring { Rate.Si: var rate })
                {
                    return;
                }

                var free = 0.9;
                axle = axle with { Spring = axle.Spring with { FreeLength = new Amount<Length>(free) } };
                var coil = new CoilPart
                {
                    Name = "drawn",
                    Law = new LinearSpring { Rate = new(rate * stiffer) },
                    FreeLength = new Amount<Length>(free + longer),
                    BlockLength = new Amount<Length>(solid),
                };
                var known = end == AxleEnd.Front ? car with { Front = axle } : car with { Rear = axle };
                var place = PartPlaces.At(PartSort.Spring, end);
                var misfits = Fitting.Misfits(known, [new(place, coil.Options[0])]);
                RideModel model;
                try
                {
                    model = RideModel.Of(Put(known, coil, end));
                }
                catch (RefusedValueException)
                {
                    // A car that cannot stand on the spring has no answer of its own to hold this one against.
                    return;
                }

                var told = CoilStanding.Of(model, end)!;
                Assert.Equal(told.ComesLoose, misfits.Any(m => m.Kind == MisfitKind.LooseSpring));
                Assert.Equal(told.BlockPastFullBump <= 0.0, misfits.Any(m => m.Kind == MisfitKind.CoilsTouch));
                Interlocked.Add(ref loose, told.ComesLoose ? 1 : 0);
                Interlocked.Add(ref touching, told.BlockPastFullBump <= 0.0 ? 1 : 0);
                Interlocked.Add(ref sound, misfits.Count == 0 ? 1 : 0);
            }, iter: 600);
        Assert.True(loose > 0 && touching > 0 && sound > 0, $"{loose} loose, {touching} touching, {sound} sound");
    }

    [Fact]
    public void What_stands_at_the_wheel_or_is_no_coil_has_no_seats_for_one()
    {
        SpringLaw[] laws =
        [
            new LinearSpring { Rate = new(21e3), Origin = LinearSpring.AtWheel },
            new LinearSpring
            {
                Rate = new(21e3),
                Dimensions = new TorsionBarDimensions { Diameter = new(0.022), Length = new(1.0), Arm = new(0.3) },
            },
        ];
        Assert.All(laws, law => Assert.Equal(
            MisfitKind.NoCoilSeats,
            Shelf.Misfits(
                Shelf.Car with { Front = Shelf.Car.Front with { Spring = new Spring { Law = law } } },
                PartPlace.FrontSpring,
                Shelf.Coil.Only()).Kind));
    }

    [Fact]
    public void Ends_that_the_seats_do_not_take_are_no_fit()
    {
        var spring = Shelf.Car.Front.Spring with { SeatDiameter = new Amount<Length>(0.100) };
        var car = Shelf.Car with { Front = Shelf.Car.Front with { Spring = spring } };
        Assert.IsType<Fitted>(Shelf.Fit(car, PartPlace.FrontSpring, (Shelf.Coil with { SeatDiameter = new Amount<Length>(0.102) }).Only()));
        var misfit = Shelf.Misfits(car, PartPlace.FrontSpring, (Shelf.Coil with { SeatDiameter = new Amount<Length>(0.120) }).Only());
        Assert.Equal((MisfitKind.SeatDiameter, 0.120, 0.100), (misfit.Kind, misfit.Value, misfit.Limit));
    }

    [Fact]
    public void A_table_that_ends_flat_below_the_load_cannot_carry_it()
    {
        var coil = Shelf.Coil with { Law = new TableSpring(new ForceTable([0.0, 0.1, 0.2], [0.0, 2000.0, 2000.0])) };
        var misfit = Shelf.Misfits(Shelf.Car, PartPlace.FrontSpring, coil.Only());
        Assert.Equal((MisfitKind.CannotCarry, 2000.0), (misfit.Kind, misfit.Value));
        Assert.Equal(Shelf.Carried, misfit.Limit, 1e-9);
    }

    [Fact]
    public void A_bought_spring_takes_the_place_of_the_one_weighed_not_of_one_bought_before()
    {
        var first = Shelf.Fits(PartPlace.FrontSpring, Shelf.Coil.Only());
        var again = Assert.IsType<Fitted>(Shelf.Fit(first.Car, PartPlace.FrontSpring, Shelf.Coil.Only()));
        Assert.Equal(first.Car, again.Car);
        Assert.Same(Shelf.Car.Front.Spring, again.Car.Front.Spring.Swap!.Before);
    }

    [Fact]
    public void Its_doubts_are_the_parts_own()
    {
        var coil = Shelf.Coil with
        {
            Law = new LinearSpring { Rate = new(24e3, new Doubt(700.0)) },
            FreeLength = new Amount<Length>(0.380, new Doubt(0.002)),
        };
        var spring = Shelf.Fits(PartPlace.FrontSpring, coil.Only()).Car.Front.Spring;
        Assert.Equal(new Doubt(700.0, "Larch L-24 rate"), Assert.IsType<LinearSpring>(spring.Law).Rate.Doubt);
        Assert.Equal(new Doubt(0.002, "Larch L-24 free length"), spring.FreeLength!.Value.Doubt);
    }

    private static Car Put(Car car, CoilPart coil, AxleEnd end)
    {
        var axle = car.Axles[(int)end];
        axle = axle with
        {
            Spring = new Spring
            {
                Law = coil.Law,
                MotionRatio = axle.Spring.MotionRatio,
                FreeLength = coil.FreeLength,
                BlockLength = coil.BlockLength,
                Swap = new SpringSwap { Before = axle.Spring, StandsBy = coil.Law },
            },
        };
        return end == AxleEnd.Front ? car with { Front = axle } : car with { Rear = axle };
    }
}
