using CsCheck;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

/// <summary>Cars of every kind side by side, at every width of this processor: each moves as it does alone.</summary>
public class MixedBatchTests
{
    // Of the peak of each channel, as one car is held to its list of elements: rounding and the last bits of powers, grown while a stop or a
    // tyre lets go.
    private const double Near = 1e-9;

    // A channel that is zero but for rounding counts against so much of its unit.
    private const double Zero = 1e-6;

    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
    private static readonly Road OneSided = Road.From(new RoundTopHump { Height = new(0.05), Length = new(1.2) }, Tracks.Left);
    // Steps that suit nearly every car drawn: cars of one step stand together.
    private static readonly PassOptions Options =
        new() { Method = FixedStep.Once with { LargestStep = 2e-4 }, Record = new() { SettlingTime = 1.0 } };

    [Fact]
    public void Random_cars_side_by_side_move_as_each_alone() =>
        Gen.Select(AnyCar.Any.Array[3, 16], Gen.Double[4.0, 30.0], Gen.Bool).Sample(
            (cars, speed, oneSided) => SameAsAlone(cars, oneSided ? OneSided : Hump, speed), iter: 25);

    [Fact]
    public void A_link_of_constant_rate_keeps_its_rate_and_damping_beside_a_car_whose_open_line_holds_gas()
    {
        var gas = new Accumulator { GasVolume = new Amount<Volume>(4e-4) };
        var straight = PlainCar.Saloon with { Interconnection = new ElasticLink { Rate = new(7000.0), Damping = new(500.0), Carried = new(300.0) } };
        var open = PlainCar.Saloon with
        {
            Interconnection = new FluidLink
            {
                FrontArea = new(3e-4), RearArea = new(3e-4), Front = gas, Rear = gas, BasePressure = new(1e6),
                Line = new FluidLine { State = LineState.Open },
            },
        };
        SameAsAlone([straight, open], Hump, 9.0);
        SameAsAlone([open, straight, straight], OneSided, 14.0);
    }

    /// <summary>One road, speed and clock, so that nothing but the cars differs.</summary>
    [Fact]
    public void A_plain_car_in_front_takes_nothing_from_those_beside_it()
    {
        Axle With(Axle axle) => axle with
        {
            BumpStop = new Stop { Clearance = new(0.01), Rate = new Amount<Stiffness>(2e5), Exponent = new(2.0) },
            Friction = new Friction { HalfWidth = new(80.0) },
        };
        SameAsAlone([PlainCar.Saloon, PlainCar.Saloon with { Front = With(PlainCar.FrontAxle), Rear = With(PlainCar.RearAxle) }], Hump, 9.0);
    }

    [Fact]
    public void Cars_whose_links_cannot_stand_side_by_side_are_refused()
    {
        var linked = RideModel.Of(ExactCars.ElasticLinked).Numbers;
        var piped = RideModel.Of(ExactCars.FluidLinked(LineState.Pipe)).Numbers;
        var resisting = RideModel.Of(ExactCars.OnResistingLine).Numbers;
        Assert.Contains("elastic link", Refused(linked, piped), StringComparison.Ordinal);
        Assert.Contains("elastic link", Refused(resisting, linked), StringComparison.Ordinal);
        Assert.Contains("inertance", Refused(piped, resisting), StringComparison.Ordinal);
        _ = BlockPlan.Of([piped, piped, RideModel.Of(PlainCar.Saloon).Numbers]);

        static string Refused(params RideNumbers[] cars) => Assert.Throws<ArgumentException>(() => BlockPlan.Of(cars)).Message;
    }

    private static void SameAsAlone(Car[] cars, Road road, double speed)
    {
        PassRequest[] asked = [.. cars.Select(car => new PassRequest(RideModel.Of(car), road, speed))];
        var alone = Array.ConvertAll(asked, request => Pass.Of(request.Model, road, speed, Options));
        foreach (var width in LaneWidth.All)
        {
            foreach (var group in PassGroup.Of(asked, Options, width))
            {
                var together = group.Run(Options, width, TestContext.Current.CancellationToken);
                for (var k = 0; k < together.Length; k++)
                {
                    Compare(alone[group.Places[k]], together[k], $"car {group.Places[k]} of {cars.Length}, {width} side by side");
                }
            }
        }
    }

    private static void Compare(Pass alone, Pass together, string which)
    {
        Assert.Equal(alone.Outcome, together.Outcome);
        Assert.Equal(alone.Count, together.Count);
        for (var channel = 0; channel < Channel.Count; channel++)
        {
            var (truth, own) = (alone.Read(SampleReading.Of((channel, 1.0))), together.Read(SampleReading.Of((channel, 1.0))));
            // A car alike on both sides rolls by rounding only: roll counts against pitch too.
            var peak = truth.Max(Math.Abs);
            peak = IsRoll(channel) ? Math.Max(peak, alone.Read(SampleReading.Of((channel - 1, 1.0))).Max(Math.Abs)) : peak;
            var miss = truth.Zip(own, (a, b) => Math.Abs(a - b)).Max();
            Assert.True(miss <= Near * Math.Max(peak, Zero), $"{which}: channel {channel} misses by {miss:E1} of {peak:E1}");
        }
    }

    private static bool IsRoll(int channel) =>
        channel is Channel.Roll or Channel.Accelerations + Channel.Roll or Channel.Rates + Channel.Roll;
}
