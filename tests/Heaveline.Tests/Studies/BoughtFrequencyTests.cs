using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Tests.Press;
using Heaveline.Tuning;

namespace Heaveline.Tests.Studies;

/// <summary>A frequency is turned with the car's height kept, whether its springs were weighed or bought.</summary>
public class BoughtFrequencyTests
{
    private const string Load = "four up with luggage";
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.05), Length = new(3.7) });
    private static readonly Car Weighed = Measured(Read("fern-saloon.yaml"));

    // The same springs out of a box: their lengths say that the car stands as it was weighed.
    private static readonly Car Boxed = Weighed with { Front = InBox(Weighed.Front), Rear = InBox(Weighed.Rear) };

    [Fact]
    public void The_same_springs_bought_have_the_same_shares_in_why_a_car_pitches()
    {
        var (weighed, boxed) = (Why(Weighed), Why(Boxed));
        var shares = weighed.Why.Settling.Causes.ToDictionary(c => c.Kind, c => c.Share);
        Assert.Equal(shares.Count, boxed.Why.Settling.Causes.Count);
        var most = shares.Values.Max(Math.Abs);
        Assert.All(boxed.Why.Settling.Causes, c => Assert.Equal(shares[c.Kind], c.Share, 2e-4 * most));
        Assert.Null(weighed.HeightsKept);
        Assert.Contains("packing under the bought springs follows", boxed.HeightsKept!.Text, StringComparison.Ordinal);
        Assert.Contains(boxed.HeightsKept, boxed.Sentences);
        Assert.Contains(boxed.HeightsKept.Text, boxed.Lines);
        // The page of the story tells what is told here.
        Assert.Contains(boxed.HeightsKept, boxed.Told);
        Assert.DoesNotContain(weighed.Told, s => s.Id == "heights-kept");
    }

    [Fact]
    public void A_report_and_the_cures_say_too_that_heights_are_kept()
    {
        foreach (var (car, isSaid) in new[] { (Weighed, false), (Boxed, true) })
        {
            var part = Report.From(ReportSamples.Of(car, PartKind.Why)).Parts[0];
            Assert.Equal(isSaid, part.Blocks.OfType<Paragraph>().Any(block => block.Text.Contains("heights kept", StringComparison.Ordinal)));
            var cures = CureStudy.Run(new CureAsked
            {
                Car = LoadedCar.Of(car, car.LoadStates.Single(load => load.Name == Load)), Road = Hump, Speed = 12.0, Draws = 10,
            });
            Assert.Equal(isSaid, cures.Notes.Any(note => note.Id == "heights-kept"));
        }
    }

    [Fact]
    public void The_same_springs_bought_have_the_same_best_ratios_in_the_rule()
    {
        var (weighed, boxed) = (Rule(Weighed), Rule(Boxed));
        foreach (var (was, now) in weighed.Map.Measured.Zip(boxed.Map.Measured))
        {
            Assert.All(was.Zip(now), pair => Assert.Equal(pair.First, pair.Second, 2e-4 * Math.Abs(pair.First)));
        }

        Assert.Equal(weighed.Map.Best.Select(best => best is null), boxed.Map.Best.Select(best => best is null));
        Assert.DoesNotContain(weighed.Sentences, s => s.Id == "heights-kept");
        Assert.Contains(boxed.Sentences, s => s.Id == "heights-kept");
    }

    [Fact]
    public void A_car_whose_bought_springs_lift_it_keeps_the_height_that_it_has_empty()
    {
        var car = Read("fern-saloon-bought.yaml");
        var loaded = RideModel.Of(car, car.LoadStates.Single(load => load.Name == Load));
        var (now, stood) = (RideTuning.Of(loaded), RideModel.Of(car).Trim);
        Assert.True(stood.RearHeight > 0.004);
        var turned = now.WithRatio(0.8 * now.Ratio).ApplyTo(loaded);
        Assert.Equal(0.8 * now.Ratio, RideTuning.Of(turned).Ratio, 1e-4);
        var stands = RideModel.Of(turned.Car).Trim;
        Assert.Equal(stood.FrontHeight, stands.FrontHeight, 1e-6);
        Assert.Equal(stood.RearHeight, stands.RearHeight, 1e-6);
        // Turned twice it stands there still.
        var again = now.WithRatio(1.1 * now.Ratio).ApplyTo(turned);
        Assert.Equal(stood.RearHeight, RideModel.Of(again.Car).Trim.RearHeight, 1e-6);
    }

    // What the page sets is a spring out of a box: its lengths stay, and a softer rear lets the car down.
    [Fact]
    public void With_the_lengths_kept_the_height_follows()
    {
        var empty = RideModel.Of(Boxed);
        var now = RideTuning.Of(empty);
        var set = now.WithRatio(0.9 * now.Ratio).ApplyTo(empty, lengthsKept: true);
        Assert.True(set.Trim.RearHeight < -0.004);
    }

    private static WhyAnswer Why(Car car) => WhyStudy.Run(new WhyAsked { Car = Laden(car), Road = Hump, Speed = 12.0 });

    private static RuleAnswer Rule(Car car) => RuleStudy.Run(new RuleAsked
    {
        Car = Laden(car),
        Road = Hump,
        Slowest = 10.0,
        Fastest = 20.0,
        MapAlone = true,
        Detail = new RuleDetail { Values = 4, Speeds = 3, First = (4, 2) },
    });

    private static LoadedCar Laden(Car car) => new(car.Name, car, car.LoadStates.Single(load => load.Name == Load));

    private static Car Read(string file) => CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", file)).Value!;

    private static Car Measured(Car car) => car with
    {
        Front = car.Front with { Spring = car.Front.Spring with { FreeLength = new Amount<Length>(0.380) } },
        Rear = car.Rear with { Spring = car.Rear.Spring with { FreeLength = new Amount<Length>(0.310) } },
    };

    private static Axle InBox(Axle axle) =>
        axle with { Spring = axle.Spring with { Swap = new SpringSwap { Before = axle.Spring, StandsBy = axle.Spring.Law } } };
}
