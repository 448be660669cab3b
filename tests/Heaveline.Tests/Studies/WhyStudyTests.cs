using Heaveline.Cars;
using Heaveline.Causes;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Rules;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Tuning;

namespace Heaveline.Tests.Studies;

public class WhyStudyTests
{
    private static readonly KnownThings Known = new(PlainCar.Saloon with { LoadStates = [PlainCar.With(150.0, 2.6)] });

    private static readonly WhyAnswer Answer = WhyStudy.Run(
        new WhyAsked { Car = LoadedCar.Of(PlainCar.Saloon, PlainCar.With(150.0, 2.6)), Road = KnownThings.Hump, Speed = 12.0 });

    [Fact]
    public void All_that_is_wrong_is_said_at_once()
    {
        var reading = WhyStudy.Question.Read(KnownThings.Words("car", "plain saloon", "load", "five up", "road", "lump", "speed", "fast"), Known);
        Assert.Null(reading.Asked);
        Assert.Equal(["speed", "road", "load"], reading.Objections.Select(o => o.Choice));
        Assert.Equal([true, false, false], reading.Objections.Select(o => o.IsUsage));
    }

    [Fact]
    public void Words_become_what_is_asked()
    {
        var words = KnownThings.Words("car", "plain saloon", "load", "load", "road", "hump", "speed", "36 km/h");
        var asked = WhyStudy.Question.Read(words, Known).Asked!;
        Assert.Equal(("plain saloon", "load", KnownThings.Hump, 10.0), (asked.Car.Name, asked.Car.Load.Name, asked.Road, asked.Speed));
    }

    [Fact]
    public void The_share_done_rises_to_one_over_the_ranking_and_the_road_tests()
    {
        var told = new List<double>();
        WhyStudy.Run(
            new WhyAsked { Car = LoadedCar.Of(PlainCar.Saloon, PlainCar.With(150.0, 2.6)), Road = KnownThings.Hump, Speed = 12.0 },
            new StudyRun { Progress = new Told(told.Add) });
        Assert.Equal(told.Order(), told);
        Assert.Equal(1.0, told[^1], 1e-12);
        Assert.Contains(told, share => share is > 0.0 and < 0.5);
        Assert.Contains(told, share => share is > 0.5 and < 1.0);
    }

    [Fact]
    public void Every_sentence_has_an_id_of_its_own()
    {
        string[] ids = [.. Answer.Sentences.Select(s => s.Id)];
        Assert.Equal(ids.Distinct(), ids);
        Assert.Equal("settling", ids[0]);
        Assert.Contains("settling-load", ids);
        Assert.Contains("settling-load-proof", ids);
        Assert.Contains("hit", ids);
        // The road tests are the settling's; the hit's causes repeat none.
        Assert.DoesNotContain(ids, id => id.StartsWith("hit-", StringComparison.Ordinal) && id.EndsWith("-proof", StringComparison.Ordinal));
        Assert.Equal(["method", "alone", "tests"], ids[^3..]);
    }

    [Fact]
    public void Tables_and_sentences_tell_of_the_same_causes()
    {
        Assert.Equal(Answer.Why.Settling.Causes.Select(c => $"{c.Kind}"), Answer.Tables[0].Rows.Select(r => r.Key));
        var told = Answer.Settling.Causes.Count;
        Assert.True(told > 0);
        var value = Answer.Why.Settling.Measure.Unit.Of(Answer.Why.Settling.Value);
        Assert.Equal(Answer.Tables[0].Rows.Count(r => Math.Abs(r.Values[0]!.Value) >= 0.01 * value), told);
        Assert.Equal(Answer.FigureIds, [WhyAnswer.Shares]);
        Assert.StartsWith("plain saloon at 43.2 km/h", Answer.Figure(WhyAnswer.Shares).Title, StringComparison.Ordinal);
    }

    // Beside what describe prints of the loaded car stands what the causes are told of.
    [Fact]
    public void Causes_of_another_load_than_the_one_asked_about_say_so()
    {
        Load At(string name, double mass, double x) => new() { Name = name, Mass = new(mass), BehindFrontAxle = new(x), Height = new(0.6) };
        var driver = At("driver", 75.0, 1.2);
        var alone = new LoadState { Name = "driver", Loads = [driver] };
        var full = new LoadState { Name = "full", Loads = [driver, At("sacks", 200.0, 2.7)] };
        WhyAnswer Asked(LoadState load) =>
            WhyStudy.Run(new WhyAsked { Car = LoadedCar.Of(PlainCar.Saloon, load), Road = KnownThings.Hump, Speed = 12.0 });
        string Ratio(WhyAnswer answer) => answer.Why.Settling.Causes.Single(c => c.Kind == PitchCauseKind.FrequencyRatio).Is;
        var (loaded, own) = (RideTuning.Of(RideModel.Of(PlainCar.Saloon, full)), RideTuning.Of(RideModel.Of(PlainCar.Saloon, alone)));
        var answer = Asked(full);
        Assert.Contains(
            FormattableString.Invariant($"(driver alone); under 'full' the rear/front frequency ratio is {loaded.Ratio:F3},"),
            Assert.Single(answer.Lines, l => l.StartsWith("All causes but the load", StringComparison.Ordinal)));
        Assert.Equal(FormattableString.Invariant($"rear/front frequency ratio {own.Ratio:F2} (driver alone)"), Ratio(answer));
        answer = Asked(alone);
        Assert.Null(answer.Alone);
        Assert.Equal(FormattableString.Invariant($"rear/front frequency ratio {own.Ratio:F2}"), Ratio(answer));
    }

    // The map of the ratio prints the number for this car's own damping, the neutral car has another.
    [Theory]
    [InlineData(40.0)]
    [InlineData(80.0)]
    [InlineData(110.0)]
    public void A_ratio_that_brings_the_ends_into_step_is_the_one_that_the_rule_prints_or_says_with_which_damping(double speed)
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;
        var model = RideModel.Of(car, car.LoadStates.Single(l => l.Name == "driver"));
        var cause = Why.Of(model, KnownThings.Hump, speed / 3.6, WhyOptions.Default with { MostExact = 1, Permutations = 2 })
            .Settling.Causes.Single(c => c.Kind == PitchCauseKind.FrequencyRatio);
        var rule = FormattableString.Invariant($"{RatioForms.Of(model).InStep(speed / 3.6, 0.7):F2}");
        if (cause.Neutral.Contains("into step", StringComparison.Ordinal))
        {
            Assert.Contains("(both with a damping ratio of 0.30", cause.Neutral, StringComparison.Ordinal);
            Assert.True(
                cause.Neutral.StartsWith(rule, StringComparison.Ordinal)
                || cause.Neutral.EndsWith($", damped as they are {rule})", StringComparison.Ordinal),
                $"{cause.Neutral}; the rule: {rule}");
        }

        Assert.Equal(speed >= 80.0, cause.Neutral.Contains("into step", StringComparison.Ordinal));
    }

    private sealed class Told(Action<double> tell) : IProgress<double>
    {
        public void Report(double value) => tell(value);
    }
}
