using Heaveline.Studies;

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
        Assert.Equal(["method", "tests"], ids[^2..]);
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

    private sealed class Told(Action<double> tell) : IProgress<double>
    {
        public void Report(double value) => tell(value);
    }
}
