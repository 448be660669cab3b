using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Measures;

namespace Heaveline.Tests.Studies;

/// <summary>250 kg on every wheel; 20 N/mm of 380 mm were weighed (257.417 mm of seats), 25 N/mm are bought (98.067 mm under the load).</summary>
public class SwapWordsTests
{
    private static readonly Road Step = Road.From(new RoundTopHump { Height = new(0.05), Length = new(3.7) });

    // Wheels that a pass can step over.
    private static Car OnRoad => BodyOnSprings.Of(1000.0, 20000.0, tyre: 2e5, unsprung: 80.0);

    [Theory]
    [InlineData(0.360, 0.0, "Each bought front spring needs its seat 5 mm lower for the front to stand as high as when the car was weighed: only")]
    [InlineData(0.345, 0.0, "Each bought front spring needs 10 mm of packing for the front to stand as high as when the car was weighed.")]
    [InlineData(0.345, 0.004, "Each bought front spring needs 6 mm more packing for the front to stand as high as when the car was weighed.")]
    [InlineData(0.355483, 0.0, "Each bought front spring stands as high as the one that was weighed, within half a millimetre: it needs no more")]
    public void Packing_is_asked_for_or_a_lower_seat(double free, double seat, string words) =>
        Assert.StartsWith(words, Said("front-bought-springs", Car(free, seat)), StringComparison.Ordinal);

    [Fact]
    public void A_lower_front_is_told_with_rake_and_lamp()
    {
        // 10.483 mm lower over 2.7 m of wheelbase are 0.22°, 0.39 % of the beam.
        var lit = Car(0.345, 0.0) with { Headlamp = new Headlamp { Height = new(0.66), AheadOfFrontAxle = new(0.70), Drop = new(0.012) } };
        Assert.Equal(
            "Under 'empty', against the springs that were weighed: front 10.5 mm lower, rear as high, the nose 0.22° further down; the dipped beam "
            + "points 1.59 % below the horizontal in place of 1.20 % below it: set it anew once the springs are in.",
            Said("bought-springs-empty", lit));
    }

    [Fact]
    public void A_missing_length_is_asked_for_by_what_it_would_have_to_be()
    {
        var car = Car(0.345, 0.0);
        var swap = car.Front.Spring.Swap!;
        var unmeasured = swap with { Before = swap.Before with { FreeLength = null } };
        Holds("the seats are 247 mm apart", car.Front.Spring with { Swap = unmeasured });
        Holds("where it is 355 mm long", car.Front.Spring with { FreeLength = null });
        Holds(
            "where it is 25 mm shorter without load than the one that was weighed; of equal length it needs the seat 25 mm lower",
            car.Front.Spring with { FreeLength = null, Swap = unmeasured });

        void Holds(string words, Spring spring) => Assert.Contains(
            words, Said("front-bought-springs", car with { Front = car.Front with { Spring = spring } }), StringComparison.Ordinal);
    }

    // ½·P²/k = 120.2 N m.
    [Fact]
    public void Who_swaps_springs_is_told_what_they_hold()
    {
        var words = Said("bought-springs-safety", Car(0.345, 0.0));
        Assert.Contains("each bought front spring holds 120 N m of work", words, StringComparison.Ordinal);
        Assert.Contains("proper compressor", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pass_and_the_price_of_a_change_say_so_too_and_a_car_on_its_springs_says_nothing()
    {
        var model = RideModel.Of(Car(0.345, 0.0, OnRoad));
        var pass = Pass.Of(model, Step, 8.0);
        Assert.Contains(PassStory.Of(pass, PassMeasures.Of(pass)), s => s.Id == "front-bought-springs");
        var before = LoadedCar.Of(OnRoad);
        var cost = CostStudy.Run(new CostAsked { Cars = [before, new LoadedCar("on bought springs", model.Car, model.Load)] });
        Assert.Contains(cost.Notes, s => s.Id == "front-bought-springs");
        Assert.Contains(cost.Reminders[0].Reminders, s => s.Id == "springs" && s.Text.Contains("settled in", StringComparison.Ordinal));
        var plain = Pass.Of(RideModel.Of(OnRoad), Step, 8.0);
        Assert.DoesNotContain(PassStory.Of(plain, PassMeasures.Of(plain)), s => s.Id.Contains("bought", StringComparison.Ordinal));
        Assert.DoesNotContain(DescribeNotes.Of([new CarAtRest(plain.Model)]), s => s.Id.Contains("bought", StringComparison.Ordinal));
    }

    private static string Said(string id, Car car)
    {
        IEnumerable<Sentence> notes = DescribeNotes.Of([new CarAtRest(RideModel.Of(car))]);
        return Assert.Single(notes, s => s.Id == id).Text;
    }

    private static Car Car(double free, double seat, Car? on = null)
    {
        var car = on ?? BodyOnSprings.Of(1000.0, 20000.0);
        var law = new LinearSpring { Rate = new(25e3) };
        var spring = new Spring
        {
            Law = law,
            FreeLength = new Amount<Length>(free),
            Swap = new SpringSwap
            {
                Before = new Spring { Law = new LinearSpring { Rate = new(20e3) }, FreeLength = new Amount<Length>(0.380) },
                StandsBy = law,
                Seat = new(seat),
            },
        };
        return car with { Front = car.Front with { Spring = spring } };
    }
}
