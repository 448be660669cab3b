using Heaveline.Cars;
using Heaveline.Parts;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

/// <summary>Free ranges: what nobody sells is looked for too.</summary>
public class ChooseFreeTests
{
    private static readonly ChooseFilter Damper = Read(PartPlace.RearDamper, "80 to 200 % in steps of 10 %");

    private static readonly ChooseAsked Asked = VillageParts.Asked with
    {
        Lists = [],
        Open = [PartPlace.RearDamper],
        Filters = [Damper],
        Draws = 16,
        RideSpeeds = [],
    };

    private static readonly ChooseAnswer Answer = ChooseStudy.Run(Asked, new StudyRun { Degree = 2 });

    [Fact]
    public void Values_go_in_equal_steps_from_end_to_end()
    {
        var values = Damper.Range!.Values;
        Assert.Equal((0.8, 2.0), (values[0], values[^1]));
        Assert.All(values.Zip(values.Skip(1)).SkipLast(1), pair => Assert.Equal(1.1, pair.Second / pair.First, 1e-9));
        Assert.InRange(values[^1] / values[^2], 1.0, 1.1 + 1e-9);
        var springs = Read(PartPlace.FrontSpring, "16 to 24 N/mm in steps of 2 %").Range!;
        Assert.Equal((16e3, 24e3, 0.02), (springs.From, springs.To, springs.Step));
    }

    [Fact]
    public void What_is_found_is_looked_at_in_the_middle_of_the_gaps_to_either_side()
    {
        Assert.NotEmpty(Answer.Findings.List);
        var range = Answer.Findings.Asked.Filters[0].Range!;
        Assert.NotEmpty(range.Between);
        var best = Answer.Findings.List[0].Fitted.Parts.Single(part => part.Place == PartPlace.RearDamper);
        var value = ChooseFree.ValueOf(Asked.Car, PartPlace.RearDamper, best.Option)!.Value;
        var beside = range.Values.Where(other => other != value).MinBy(other => Math.Abs(Math.Log(other / value)));
        Assert.InRange(Math.Abs(Math.Log(beside / value)), 0.0, (0.5 * Math.Log(1.1)) + 0.01);
    }

    [Theory]
    [InlineData("80 to 200 % in steps of 10 %")]
    [InlineData("80 to 130.5 % in steps of 8 %")]
    [InlineData("100 to 103 % in steps of 5 %")]
    [InlineData("60 to 140 % in steps of 50 %")]
    public void No_two_values_of_a_range_are_nearer_than_half_a_step_however_it_is_made_finer(string words)
    {
        var range = Read(PartPlace.RearDamper, words).Range!;
        var finest = range.Finer(range.Values).Values;
        Assert.Equal((range.From, range.To), (finest[0], finest[^1]));
        Assert.All(finest.Zip(finest.Skip(1)), gap => Assert.True(
            gap.Second / gap.First >= Math.Sqrt(1.0 + range.Step) * (1.0 - 1e-8), $"{gap}"));
    }

    [Fact]
    public void No_two_setups_of_the_shortlist_are_nearer_than_half_a_step()
    {
        double[] values =
        [
            .. Answer.Findings.List.SelectMany(one => one.Fitted.Parts)
                .Select(part => ChooseFree.ValueOf(Asked.Car, part.Place, part.Option)!.Value).Order(),
        ];
        Assert.Equal(Answer.Findings.List.Length, values.Length);
        Assert.All(values.Zip(values.Skip(1)), pair => Assert.True(pair.Second / pair.First >= Math.Sqrt(1.1) * (1.0 - 1e-8), $"{pair}"));
    }

    [Fact]
    public void A_damper_of_a_range_is_the_present_curve_times_its_factor()
    {
        var part = ChooseFree.Options(Asked.Car, PartPlace.RearDamper, Damper.Range!).Last();
        var car = Assert.IsType<Fitted>(Fitting.Of(Asked.Car, [new(PartPlace.RearDamper, part)])).Car;
        var (now, was) = ((TableDamper)car.Rear.Damper.Law, (TableDamper)Asked.Car.Rear.Damper.Law);
        foreach (var speed in new[] { -1.0, -0.3, -0.05, 0.05, 0.4, 1.2 })
        {
            Assert.Equal(2.0 * was.Whole.ForceAt(speed), now.Whole.ForceAt(speed), 1e-9 * Math.Abs(was.Whole.ForceAt(speed)));
        }

        Assert.Equal(Asked.Car.Rear.Damper.GasForce, car.Rear.Damper.GasForce);
    }

    [Fact]
    public void Nothing_of_a_range_has_a_price_and_the_answer_says_so()
    {
        Assert.False(Answer.Findings.Parts.HasPrices);
        Assert.DoesNotContain("EUR", string.Join('\n', Answer.Lines), StringComparison.Ordinal);
        Assert.Contains(Answer.Sentences, s => s.Id == "ranges" && s.Text.Contains("no setup has one", StringComparison.Ordinal));
    }

    [Fact]
    public void The_end_of_a_range_is_told_when_the_best_stands_there_and_only_then()
    {
        var value = ChooseFree.ValueOf(Asked.Car, PartPlace.RearDamper, Answer.Findings.List[0].Fitted.Parts[0].Option)!.Value;
        Assert.Equal(value is 0.8 or 2.0, Answer.Sentences.Any(s => s.Id == "end-rear-damper"));
        var low = ChooseStudy.Run(
            Asked with { Filters = [Read(PartPlace.RearDamper, "80 to 130 % in steps of 10 %")] }, new StudyRun { Degree = 2 });
        // Firmer is better as far as this range goes: its end is the best.
        Assert.Equal(1.3, ChooseFree.ValueOf(Asked.Car, PartPlace.RearDamper, low.Findings.List[0].Fitted.Parts[0].Option));
        Assert.Contains(
            low.Sentences, s => s.Id == "end-rear-damper" && s.Text.Contains("firmest rear damper of its range", StringComparison.Ordinal));
    }

    [Fact]
    public void What_never_stands_near_the_best_is_told_in_runs_of_the_range()
    {
        var parts = Answer.Findings.Parts;
        var near = Answer.Findings.Found.Near
            .Select(one => ChooseFree.ValueOf(Asked.Car, PartPlace.RearDamper, parts.OptionOf(0, parts.Space.OptionAt(one.Setup, 0))))
            .OfType<double>().ToHashSet();
        var told = Answer.Sentences.Single(s => s.Id == "never").Text;
        var first = Answer.Findings.Asked.Filters[0].Range!.Values.First(value => !near.Contains(value));
        Assert.Contains(ChooseRange.Words(PartPlace.RearDamper, first), told, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(PartPlace.FrontBar, "5 to 9 N/mm in steps of 5 %", "springs and dampers alone")]
    [InlineData(PartPlace.FrontSpring, "24 to 16 N/mm in steps of 2 %", "ends below its beginning")]
    [InlineData(PartPlace.FrontSpring, "20 to 20 N/mm in steps of 2 %", "ends where it begins")]
    [InlineData(PartPlace.FrontSpring, "-5 to 24 N/mm in steps of 2 %", "two numbers above 0 with one unit and a step")]
    [InlineData(PartPlace.FrontSpring, "16 N/mm to 2400 N/m in steps of 2 %", "two numbers above 0 with one unit and a step")]
    [InlineData(PartPlace.FrontSpring, "16 to 24 N/mm", "two numbers above 0 with one unit and a step")]
    [InlineData(PartPlace.FrontSpring, "16 to 24 N/mm in steps of 0.1 %", "not between 0.5 % and 50 %")]
    [InlineData(PartPlace.FrontSpring, "16 to 24 kg in steps of 2 %", "is no range of the front spring")]
    [InlineData(PartPlace.RearDamper, "16 to 24 N/mm in steps of 2 %", "is no range of the rear damper")]
    [InlineData(PartPlace.RearDamper, "100 to 101 % in steps of 5 %", "ends nearer to each other than half a step")]
    [InlineData(PartPlace.RearDamper, "10 to 140 % in steps of 5 %", "leads beyond 30 to 300 %")]
    public void A_range_that_cannot_be_is_refused(PartPlace place, string words, string why)
    {
        var (_, refusal) = ChooseFilter.Read(place, words);
        Assert.Contains(why, refusal!.Message, StringComparison.Ordinal);
    }

    private static ChooseFilter Read(PartPlace place, string words)
    {
        var (filter, refusal) = ChooseFilter.Read(place, words);
        Assert.Null(refusal);
        return filter;
    }
}
