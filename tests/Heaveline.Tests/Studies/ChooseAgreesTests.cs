using System.Text.RegularExpressions;
using Heaveline.Cars;
using Heaveline.Files.Roads;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Parts;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Search;
using Heaveline.Studies;
using Heaveline.Tests.Parts;

namespace Heaveline.Tests.Studies;

/// <summary>What a choice tells of its setups is what the other questions tell of the same cars.</summary>
public partial class ChooseAgreesTests
{
    private static readonly ChooseAnswer Answer =
        ChooseStudy.Run(VillageParts.Asked with { Draws = 16, DrivenWhole = 1600 }, new StudyRun { Degree = 2 });

    private static ChooseFindings Findings => Answer.Findings;

    [Fact]
    public void The_ride_of_a_setup_is_that_of_the_question_of_the_ride()
    {
        var asked = Findings.Asked;
        var vertical = RideCatalogue.Vertical(SeatPlace.Of(asked.Car.Seats[0].Name)).Key;
        var rows = Answer.ShortTables.SelectMany(t => t.Rows).Single(row => row.Key == "ride").Values;
        Assert.All(Findings.List.Zip(rows), one =>
        {
            double[] ratios =
                [.. asked.Loads.SelectMany(load => Ride(one.First.Fitted.Car, load).Zip(Ride(asked.Car, load), (now, was) => now / was))];
            Assert.Equal(100.0 * ratios.Average(), one.Second!.Value, 0.05);
        });
        Assert.Contains(Answer.Sentences, s => s.Id == "wishes" && s.Text.Contains("as the question of the ride tells it", StringComparison.Ordinal));

        double[] Ride(Car car, LoadState load) =>
        [
            .. RideStudy.Run(new RideAsked
            {
                Cars = [new LoadedCar("one", car, load)],
                Road = NamedSpectrum.Of(asked.Class),
                Speeds = asked.RideSpeeds,
            }).Tables[0].Rows.Single(row => row.Key == vertical).Values.Select(value => value!.Value),
        ];
    }

    [Fact]
    public void Who_is_told_to_have_the_least_ride_has_it_by_what_is_printed()
    {
        var wish = Findings.Found.Wishes.IndexOf(WishKind.Ride);
        var least = Findings.List.Where(one => one.Entry.Reasons.Contains(ShortlistReason.LeastRide)).ToArray();
        Assert.All(least, told => Assert.All(Findings.List, one =>
            Assert.True(Math.Round(told.Entry.Tried.Mean(wish), 3) <= Math.Round(one.Entry.Tried.Mean(wish), 3))));
    }

    [Fact]
    public void Every_check_after_a_change_is_told_once_with_whom_it_is_of()
    {
        string[] said = [.. Answer.Sentences.Select(s => s.Text)];
        Assert.All(Findings.List, one => Assert.All(
            ChangeReminders.Of(
                Findings.Asked.Car, one.Fitted.Car, SideEffectsChange.Between(Findings.Full.SideEffects, one.Full.SideEffects)),
            check =>
            {
                var told = Assert.Single(said, text => text.EndsWith($": {check.Text}", StringComparison.Ordinal));
                Assert.Contains(one.Letter, Lettered().Match(told).Groups[1].Value);
            }));
        Assert.Equal(Answer.Sentences.Select(s => s.Id).Distinct(), Answer.Sentences.Select(s => s.Id));
    }

    [Fact]
    public void When_a_stop_is_first_met_is_told_of_every_setup_that_moves_it() => Assert.All(Findings.List, one =>
    {
        LoadState[] loads = [.. Findings.Asked.Loads, .. Findings.Stood.Others];
        var moves = loads.Any(load => CureStance.Of(RideModel.Of(one.Fitted.Car, load)).FirstStops
            .Zip(CureStance.Of(RideModel.Of(Findings.Asked.Car, load)).FirstStops)
            .Any(pair => CureStance.Print(pair.First.At) != CureStance.Print(pair.Second.At)));
        var told = Answer.Sentences.Where(s => s.Id.StartsWith("first-stops", StringComparison.Ordinal)
            && Lettered().Match(s.Text).Groups[1].Value.Contains(one.Letter, StringComparison.Ordinal)).ToArray();
        Assert.Equal(moves, told.Length == 1);
        Assert.All(told, s => Assert.Matches(@"^[A-G, ]+: a stop is first met, by the slope at rest: .* under '", s.Text));
    });

    [Fact]
    public void Every_reason_of_a_place_is_told_with_an_instance_of_stop_or_axle_road_speed_and_load()
    {
        var refused = Answer.Sentences.Single(s => s.Id == "refused").Text;
        int[] breaches =
        [
            .. Findings.Found.Driven.Select(one => one.Refusal).Where(r => r is >= (int)ChooseRefusal.Breach and < DrivenSetup.FirstLimit)
                .Distinct(),
        ];
        Assert.NotEmpty(breaches);
        Assert.All(breaches, reason =>
        {
            var where = Findings.Instances[reason];
            Assert.Contains($", for instance {where} (", refused, StringComparison.Ordinal);
            Assert.Contains(Findings.Asked.Car.LoadStates.Append(LoadState.Reference), load => where.Contains(load.Name, StringComparison.Ordinal));
        });
    }

    [Fact]
    public void A_setup_that_does_not_get_across_is_told_with_what_gave_out_where()
    {
        // So soft that the wheel runs past the end of its travel.
        var asked = VillageParts.Asked with
        {
            Lists = [VillageParts.List with { Parts = [VillageParts.Spring("Alder R-18", 18_000.0, AxleEnd.Rear, 80m)] }],
            Open = [PartPlace.RearSpring],
            Roads = [new("speed-table", NamedRoads.Find("speed-table").Value!, [70.0 / 3.6])],
            Limits = new() { Roll = 9.0, Braking = 9.0, LampSwing = 0.9 },
            Draws = 10,
        };
        var answer = ChooseStudy.Run(asked);
        var across = answer.Findings.Found.Driven.Where(one => one.Refusal == (int)ChooseRefusal.Breach + (int)CureBreach.NoCrossing).ToArray();
        Assert.NotEmpty(across);
        Assert.Matches(
            @"does not get across, for instance 'speed-table, 70 km/h, [^']+': the .+ at [0-9.]+ s \(1\)",
            answer.Sentences.Single(s => s.Id == "refused").Text);
        Assert.DoesNotContain(answer.Sentences, s => s.Text.Contains("no car that stands", StringComparison.Ordinal));
    }

    [Fact]
    public void A_car_that_does_not_get_across_as_it_is_is_told_with_road_speed_load_and_what_gave_out()
    {
        var refused = Assert.Throws<RefusedValueException>(() => ChooseStudy.Run(VillageParts.Asked with
        {
            Roads =
            [
                new("village-hump", NamedRoads.Find("village-hump").Value!, [25.0 / 3.6]),
                new("speed-table", NamedRoads.Find("speed-table").Value!, [30.0 / 3.6, 80.0 / 3.6]),
            ],
        }));
        Assert.Matches(@"'speed-table, 80 km/h, [^']+': the .+ at [0-9.]+ s;", refused.Message);
        Assert.DoesNotContain("30 km/h", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_costs_too_much_is_refused_for_no_place_and_what_does_not_fit_for_its_own()
    {
        var village = Heaveline.Files.Parts.PartsFile.Load(Path.Combine(House.Checkout.Root, "examples", "parts", "village-autumn.yaml")).Value!;
        var answer = ChooseStudy.Run(VillageParts.Asked with
        {
            Lists = [village],
            Open = [PartPlace.FrontDamper, PartPlace.RearDamper],
            Limits = new() { Cost = new Money(300m, "EUR") },
            Draws = 10,
        });
        Assert.DoesNotContain((int)ChooseRefusal.Cost, answer.Findings.Instances.Keys);
        Assert.Contains("does not fit, for instance Finch F1 as ", answer.Sentences.Single(s => s.Id == "refused").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_least_tyre_load_is_that_of_the_pass_where_it_is_least()
    {
        var table = Answer.ShortTables.Single(t => t.Title.StartsWith("Least tyre load", StringComparison.Ordinal));
        Car[] cars = [Findings.Asked.Car, .. Findings.List.Select(one => one.Fitted.Car)];
        Assert.All(WheelPlace.Axles(hasSides: true), place =>
        {
            var measure = WheelCatalogue.Of(place).Single(one => one.Key == $"{place.Key}-least-load");
            var row = table.Rows.Single(one => one.Key == measure.Key).Values;
            Assert.All(cars.Zip(row), one =>
            {
                var least = Findings.Use.Crossings.Min(c => measure.Of(Pass.Of(RideModel.Of(one.First, c.Load), c.Road!.Road, c.Speed)));
                Assert.Equal(measure.Unit.Of(least), one.Second!.Value, 0.5);
            });
        });
        var said = Answer.Sentences.Single(s => s.Id == "least-load").Text;
        Assert.All(
            Findings.List[0].Grip.Axles.Concat(Findings.Grip.Axles),
            one => Assert.Contains($"in '{one.Case}'", said, StringComparison.Ordinal));
    }

    [Fact]
    public void A_stop_has_no_strength_and_no_end_of_the_list()
    {
        var asked = VillageParts.Asked with { Lists = [VillageParts.List with { Parts = [Shelf.Stop] }], Open = [PartPlace.RearStop] };
        Assert.All(new ChooseParts(asked).Space.Places.SelectMany(place => place.Options), option => Assert.Null(option.Strength));
    }

    [GeneratedRegex("^([A-G](?:, [A-G])*): ")]
    private static partial Regex Lettered();
}
