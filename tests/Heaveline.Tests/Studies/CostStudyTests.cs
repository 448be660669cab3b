using Heaveline.Cars;
using Heaveline.Studies;
using Heaveline.Tests.Doubts;

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
}
