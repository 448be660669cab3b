using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.Doubts;
using Heaveline.Tests.Figures;

namespace Heaveline.Tests.Studies;

public class CostStudyTests
{
    private static readonly Car Barred = PlainCar.Saloon with { Name = "barred", Front = PlainCar.FrontAxle with { AntiRollBar = new(20000.0) } };

    [Fact]
    public void All_that_is_wrong_is_said_at_once()
    {
        var words = KnownThings.Words("car", "nobody", "car", "barred", "load", "five up", "samples", "many");
        var reading = CostStudy.Question.Read(words, new KnownThings(Barred));
        Assert.Null(reading.Asked);
        Assert.Equal(["samples", "car", "load"], reading.Objections.Select(o => o.Choice));
    }

    [Fact]
    public void One_car_has_its_side_effects_and_nothing_to_check()
    {
        var answer = CostStudy.Run(new CostAsked { Cars = [LoadedCar.Of(PlainCar.Saloon)] });
        var table = Assert.Single(answer.Tables);
        Assert.Contains("roll-stiffness", table.Rows.Select(r => r.Key));
        Assert.Empty(answer.Reminders);
        Assert.Contains("no-brakes", answer.Sentences.Select(s => s.Id));
    }

    [Fact]
    public void Pitch_per_g_is_told_as_the_slope_at_rest_with_the_stop_that_ends_it_and_the_row_says_the_same()
    {
        var near = PlainCar.Saloon with
        {
            Front = PlainCar.FrontAxle with { BumpStop = new Stop { Clearance = new(0.02), Rate = new(50000.0) } },
            Rear = PlainCar.RearAxle with { BumpStop = new Stop { Clearance = new(0.03), Rate = new(50000.0) } },
        };
        var answer = CostStudy.Run(new CostAsked { Cars = [LoadedCar.Of(PlainCar.Saloon), LoadedCar.Of(near with { Name = "near" })] });
        var told = answer.Notes.Where(n => n.Id == "pitch-slope").Select(n => n.Text).ToList();
        Assert.Equal(2, told.Count);
        Assert.Equal("plain saloon: pitch per g is the slope at rest; by it no stop is met below 1 g.", told[0]);
        foreach (var (key, stop, doing) in new[]
        {
            ("braking-first-stop", "front bump stop", "braking"), ("driving-first-stop", "rear bump stop", "accelerating"),
        })
        {
            var row = answer.Tables[0].Rows.Single(r => r.Key == key);
            Assert.Null(row.Values[0]);
            Assert.Contains(FormattableString.Invariant($"the {stop} is met at {row.Values[1]!.Value:F2} g of {doing}"), told[1]);
        }
    }

    [Fact]
    public void A_change_says_what_to_check_and_the_report_and_the_command_say_the_same()
    {
        var answer = CostStudy.Run(new CostAsked { Cars = [LoadedCar.Of(PlainCar.Saloon), LoadedCar.Of(Barred)] });
        var (after, reminders) = Assert.Single(answer.Reminders);
        Assert.Equal("barred", after.Name);
        Assert.Equal(["anti-roll-bar", "roll-balance"], reminders.Select(r => r.Id).Order(StringComparer.Ordinal));
        Assert.All(reminders, r => Assert.Contains(r.Text, answer.Lines));
        Assert.All(answer.Notes, n => Assert.Contains(n.Text, answer.Lines));
        // A bar that holds more roll leaves more of it to the front.
        double Front(int car) => answer.Tables[0].Rows.Single(r => r.Key == "roll-stiffness-front-share").Values[car]!.Value;
        Assert.True(Front(1) > Front(0));
    }

    [Fact]
    public void Stated_doubts_give_each_number_and_each_change_its_interval()
    {
        var measured = MeasuredCar.With(MeasuredCar.Saloon, 0.05, 0.03, 0.02);
        var stiffer = measured with { Name = "stiffer", Front = measured.Front with { AntiRollBar = new(9000.0) } };
        var answer = CostStudy.Run(new CostAsked { Cars = [LoadedCar.Of(measured), LoadedCar.Of(stiffer)], Draws = 30, Seed = 2 });
        Assert.Equal(3, answer.Tables.Count);
        Assert.Equal("doubts", answer.Sentences[0].Id);
        Assert.Equal(30, answer.Facts["samples"]!.GetValue<int>());
    }

    [Fact]
    public void Motorcycles_are_called_so()
    {
        var measured = DrawnCars.TwoWheeler with { Wheelbase = DrawnCars.TwoWheeler.Wheelbase.WithDoubt(0.01) };
        var answer = CostStudy.Run(
            new CostAsked { Cars = [LoadedCar.Of(measured), LoadedCar.Of(measured with { Name = "other" })], Draws = 10, Seed = 2 });
        var words = answer.Sentences.Single(s => s.Id == "doubts").Text;
        Assert.Contains("What the motorcycles have in common", words, StringComparison.Ordinal);
        Assert.DoesNotContain("cars", words, StringComparison.Ordinal);
    }

    // One rule, the one that the file chooses; a motorcycle is told where its own stands. Never a list, never a superlative that links can break.
    [Fact]
    public void The_beam_is_held_against_one_range_or_told_how_to_choose_it()
    {
        var lamp = new Headlamp { Height = new(0.65), Drop = new(0.012) };
        var car = PlainCar.Saloon with { Headlamp = lamp with { Rule = HeadlampRule.UnRegulation48Series09 } };
        Assert.StartsWith(
            "The dipped beam's drop of 1.20 % lies inside 0.5 to 1.85 %: UN Regulation No. 48, 09 series", Beam(car), StringComparison.Ordinal);
        Assert.Contains("choose the rule", Beam(PlainCar.Saloon with { Headlamp = lamp }), StringComparison.Ordinal);
        var high = car with { Headlamp = car.Headlamp! with { Height = new(1.3) } };
        Assert.Contains("no range for a lamp at 1.30 m", Beam(high), StringComparison.Ordinal);
        var motorcycle = DrawnCars.TwoWheeler with { Headlamp = lamp };
        Assert.Contains("UN Regulation 53, 6.2.5", Beam(motorcycle), StringComparison.Ordinal);
        var own = motorcycle with { Headlamp = lamp with { LeastDrop = new Amount<Plain>(0.015), GreatestDrop = new Amount<Plain>(0.025) } };
        Assert.StartsWith("The dipped beam's drop of 1.20 % lies outside 1.5 to 2.5 %: the car file", Beam(own), StringComparison.Ordinal);
    }

    [Fact]
    public void A_two_wheeler_is_told_of_its_fork_and_its_chain()
    {
        var without = Notes(DrawnCars.TwoWheeler);
        Assert.Contains("no anti-dive and no pro-dive are assumed", without["no-brakes"], StringComparison.Ordinal);
        Assert.Contains("fork-rake", without["fork"], StringComparison.Ordinal);
        Assert.Contains("left out", without["chain-pull"], StringComparison.Ordinal);
        var with = Notes(DrawnCars.TwoWheeler with { Brakes = new BrakeGeometry { ForkRake = Angle.FromDegrees(25.0), AntiSquatRear = new(0.4) } });
        Assert.StartsWith("The fork's rake of 25° makes the dive deeper: in braking, the front brake alone", with["fork"], StringComparison.Ordinal);
        Assert.Contains("0.47 times", with["fork"], StringComparison.Ordinal);
        Assert.DoesNotContain("left out", with["chain-pull"], StringComparison.Ordinal);
        Assert.DoesNotContain("chain-pull", Notes(PlainCar.Saloon).Keys);
    }

    private static string Beam(Car car) => Assert.Single(CostStudy.Run(new CostAsked { Cars = [LoadedCar.Of(car)] }).Headlamp).Text;

    private static Dictionary<string, string> Notes(Car car) =>
        CostStudy.Run(new CostAsked { Cars = [LoadedCar.Of(car)] }).Notes.ToDictionary(n => n.Id, n => n.Text);
}
