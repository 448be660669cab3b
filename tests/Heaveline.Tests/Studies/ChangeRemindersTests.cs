using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class ChangeRemindersTests
{
    [Fact]
    public void The_same_car_twice_needs_no_reminder() => Assert.Empty(Reminders(PlainCar.Saloon));

    [Fact]
    public void A_stiffer_front_bar_reminds_of_balance_and_its_links_but_not_of_alignment()
    {
        var reminders = Reminders(PlainCar.Saloon with { Front = PlainCar.FrontAxle with { AntiRollBar = new(20000.0) } });
        Assert.Contains(reminders, r => r.Id == "roll-balance" && r.Text.Contains("more understeer", StringComparison.Ordinal));
        Assert.Contains(reminders, r => r.Id == "anti-roll-bar");
        Assert.DoesNotContain(reminders, r => r.Id == "alignment");
    }

    [Fact]
    public void Softer_rear_springs_under_a_load_remind_of_heights_springs_and_lamp()
    {
        var lit = PlainCar.Saloon with { Headlamp = new Headlamp { Height = new(0.66), Drop = new(0.012) } };
        var soft = lit with { Rear = lit.Rear with { Spring = new Spring { Law = new LinearSpring { Rate = new(16000.0) } } } };
        var reminders = Reminders(soft, lit);
        Assert.Contains(reminders, r => r.Id == "alignment");
        Assert.Contains(reminders, r => r.Id == "levelling");
        Assert.Contains(reminders, r => r.Id == "beam");
        Assert.Contains(reminders, r => r.Id == "springs");
    }

    private static IReadOnlyList<Sentence> Reminders(Car after, Car? before = null)
    {
        before ??= PlainCar.Saloon;
        var load = PlainCar.With(150.0, 2.6);
        var change = SideEffectsChange.Between(SideEffects.Of(RideModel.Of(before, load)), SideEffects.Of(RideModel.Of(after, load)));
        return ChangeReminders.Of(before, after, change);
    }
}
