using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Search;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

/// <summary>Limits that say how much must be left, whatever the car as it is has: travel, the beam's swing, never metal to metal.</summary>
public class ChooseTravelTests
{
    private static readonly Amount<Length> Free = new(0.320);

    // Rear springs of one free length: the softer they are the lower the car stands on them.
    private static readonly PartsList Springs = new()
    {
        Name = "springs",
        Currency = "EUR",
        Parts =
        [
            .. new[] { 0.94, 0.96, 0.98, 1.02, 1.04, 1.06 }.Select((factor, k) => VillageParts.Spring(
                $"R {k}", factor * VillageParts.Saloon.Rear.Spring.Law.MeanRate!.Value, AxleEnd.Rear, 80m) with { FreeLength = Free }),
            .. VillageParts.List.Parts.OfType<DamperPart>(),
        ],
    };

    private static readonly ChooseAsked Plain = VillageParts.Asked with
    {
        Car = VillageParts.Saloon with
        {
            Rear = VillageParts.Saloon.Rear with { Spring = VillageParts.Saloon.Rear.Spring with { FreeLength = Free } },
        },
        Lists = [Springs],
        Open = [PartPlace.RearSpring, PartPlace.RearDamper],
        RideSpeeds = [],
        Draws = 12,
    };

    // Half a millimetre more than the car as it is has left: only firmer springs keep it.
    private static readonly double Between = Math.Round(Left(Plain.Car, "rear-bump-left") + 0.0005, 4);

    private static readonly ChooseAnswer Answer = Run(new ChooseLimits
    {
        BumpLeft = new ChooseTravelLimit(null, Between) { Share = 0.75 },
        NeverMetal = 0.9,
    });

    private static ChooseFindings Findings => Answer.Findings;

    private static IEnumerable<LoadState> Loads => Plain.Car.LoadStates.Append(LoadState.Reference);

    [Fact]
    public void Whoever_may_be_chosen_keeps_the_travel_standing_under_every_load_and_whoever_does_not_is_counted()
    {
        var (kept, broken) = (0, 0);
        var at = Findings.Found.Task.Limits.Index().Single(limit => limit.Item.Says.StartsWith("bump travel", StringComparison.Ordinal)).Index;
        foreach (var one in Findings.Found.Driven.Where(one => one.Row.IsDriven && one.Setup != 0L))
        {
            var left = Left(((Fitted)Findings.Parts.Fit(one.Setup)).Car, "rear-bump-left");
            Assert.Equal(left, one.Row.Numbers[Findings.Use.FirstTravel + 1], 1e-9);
            // Of those that nothing on the road speaks against it decides.
            Assert.True(left >= Between || !one.IsAllowed);
            if (one.Refusal == DrivenSetup.FirstLimit + at)
            {
                Assert.True(left < Between);
                broken++;
            }
            else
            {
                kept += left >= Between ? 1 : 0;
            }
        }

        Assert.True(kept > 0 && broken > 0, $"{kept} kept, {broken} broken: "
            + string.Join(", ", Findings.Found.Driven.Select(one => $"{one.Setup} {one.Refusal}")));
        Assert.True(Findings.Trial.Draws > 0);
        var facts = Answer.Facts["limits"]!.AsArray()[at]!;
        Assert.Equal(broken, (int)facts["refused"]!);
        Assert.Equal(0.75, (double)facts["share"]!);
        Assert.Contains(
            Answer.Sentences, s => s.Id == "refused" && s.Text.Contains("breaks 'bump travel left at least", StringComparison.Ordinal)
                && s.Text.Contains("mm at the rear under '", StringComparison.Ordinal));
    }

    [Fact]
    public void The_share_of_drawn_cars_is_that_in_which_it_was_counted() => Assert.All(Findings.Trial.Tried.Skip(1), one =>
    {
        foreach (var (k, limit) in Findings.Found.Task.Limits.Index().Where(limit => limit.Item.Says.StartsWith("bump", StringComparison.Ordinal)))
        {
            Assert.Equal(one.Rows.Count(row => row.IsDriven && row.Numbers[Findings.Use.FirstTravel + 1] >= Between), one.Held[k]);
        }
    });

    [Fact]
    public void What_was_driven_is_not_said_to_keep_the_travel_by_which_it_is_refused()
    {
        var driven = Answer.Sentences.Single(s => s.Id == "search").Text;
        Assert.Contains("that fit and keep the limits of roll, braking and lamp swing was driven", driven, StringComparison.Ordinal);
        Assert.All(
            Findings.Found.Task.Limits, limit => Assert.Equal(limit.Says.StartsWith("bump", StringComparison.Ordinal)
                || limit.Says == ChooseLimitWords.NeverMetal, limit.IsAlone));
    }

    [Fact]
    public void Never_metal_to_metal_is_held_in_the_cars_that_get_across()
    {
        var at = Findings.Found.Task.Limits.Index().Single(limit => limit.Item.Says == ChooseLimitWords.NeverMetal).Index;
        Assert.All(Findings.Trial.Tried, one => Assert.Equal(one.Rows.Count(row => row.IsDriven), one.Held[at]));
        Assert.Contains(Answer.Sentences, s => s.Id == "limits" && s.Text.Contains("never metal to metal", StringComparison.Ordinal));
    }

    [Fact]
    public void What_the_car_as_it_is_does_not_keep_itself_is_said_with_the_finding()
    {
        var own = Left(Plain.Car, "front-bump-left");
        var broken = Run(new ChooseLimits { BumpLeft = new ChooseTravelLimit(own + 0.010, null) });
        Assert.Contains("The car as it is does not keep 'bump travel left at least", broken.Finding.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("eave it as it is", broken.Finding.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("does not keep 'bump", Run(new ChooseLimits { BumpLeft = new ChooseTravelLimit(own - 0.001, null) }).Finding.Text,
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_beam_swings_no_farther_in_all_than_was_said()
    {
        double Swing(Car car) => ChooseStanding.Swing([.. Plain.Loads.Select(load => new CarAtRest(RideModel.Of(car, load)))]);
        var own = Swing(Plain.Car);
        var answer = Run(new ChooseLimits { LampSwingInAll = own });
        Assert.All(
            answer.Findings.Found.Driven.Where(one => one.IsAllowed),
            one => Assert.True(Swing(((Fitted)answer.Findings.Parts.Fit(one.Setup)).Car) <= own * (1.0 + 1e-9)));
        Assert.Contains(answer.Sentences, s => s.Id == "limits" && s.Text.Contains("% of the distance in all", StringComparison.Ordinal));
        Assert.Contains(
            "does not keep 'beam's swing", Run(new ChooseLimits { LampSwingInAll = 0.5 * own }).Finding.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-0.001, 0.9)]
    [InlineData(double.NaN, 0.9)]
    [InlineData(0.6, 0.9)]
    [InlineData(0.03, double.NaN)]
    [InlineData(0.03, -0.1)]
    [InlineData(0.03, 1.1)]
    public void A_travel_that_no_wheel_keeps_or_a_share_that_is_none_is_refused(double left, double share)
    {
        Assert.Throws<RefusedValueException>(() => new ChooseTravelLimit(left, null) { Share = share });
        Assert.Throws<RefusedValueException>(() => new ChooseTravelLimit(null, left) { Share = share });
        Assert.Throws<RefusedValueException>(() => new ChooseTravelLimit(0.03, 0.03) with { Front = left, Share = share });
    }

    [Theory]
    [InlineData("bump travel left at least 40 mm front, 30 mm rear, with any load", 0.040, 0.030, 0.9)]
    [InlineData("bump travel left at least 30 mm rear, in 19 of 20 cars", null, 0.030, 0.95)]
    [InlineData("bump travel left at least 4 cm", 0.040, 0.040, 0.9)]
    public void Travel_is_read_axle_by_axle(string words, double? front, double? rear, double share)
    {
        var reading = ChooseStudy.Question.Read(
            KnownThings.Words(
                "car", VillageParts.Saloon.Name, "use", "hump at 25 km/h", "open", "rear damper: 80 to 120 % in steps of 10 %", "with", words,
                "draws", "20"),
            new KnownThings(VillageParts.Saloon));
        Assert.True(reading.Asked is not null, string.Join('\n', reading.Objections.Select(o => o.Sentence)));
        Assert.Equal(new ChooseTravelLimit(front, rear) { Share = share }, reading.Asked.Limits.BumpLeft);
    }

    private static ChooseAnswer Run(ChooseLimits limits) => ChooseStudy.Run(Plain with { Limits = limits }, new StudyRun { Degree = 2 });

    private static double Left(Car car, string key)
    {
        var measure = RestCatalogue.All.Single(one => one.Key == key);
        return Loads.Min(load => Math.Round(measure.Of(new CarAtRest(RideModel.Of(car, load))), 4));
    }
}
