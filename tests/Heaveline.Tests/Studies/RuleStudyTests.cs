using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Rules;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class RuleStudyTests
{
    private static readonly Car Saloon = PlainCar.Saloon with { LoadStates = [PlainCar.With(150.0, 2.0) with { Name = "two up" }] };

    private static RuleAsked Asked { get; } = new()
    {
        Car = LoadedCar.Of(Saloon),
        Road = KnownThings.Hump,
        Slowest = 10.0,
        Fastest = 20.0,
        Detail = new RuleDetail { Values = 4, Speeds = 3, First = (4, 2) },
    };

    [Fact]
    public void A_program_asks_without_files_and_a_coarse_map_comes_before_the_whole_one()
    {
        var told = new List<RuleAnswer>();
        var shares = new List<double>();
        var answer = RuleStudy.Run(Asked, new StudyRun { Meanwhile = a => told.Add((RuleAnswer)a), Progress = new Shares(shares) });
        Assert.Equal([(true, 1), (true, 2), (false, 2)], told.Append(answer).Select(a => (a.IsCoarse, a.Loads.Count)));
        Assert.Equal([10.0, 20.0], told[0].Map.Speeds);
        Assert.Equal([10.0, 15.0, 20.0], answer.Map.Speeds);
        Assert.Equal(RuleKind.FrequencyRatio, answer.Map.Axis.Kind);
        Assert.Equal(shares.Order(), shares);
        Assert.Equal(1.0, shares[^1], 1e-9);
        Assert.Contains(" of 3 speeds computed", answer.Sentences.Single(s => s.Id == "speeds").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_map_alone_says_nothing_of_other_loads_and_the_same_of_its_own()
    {
        var whole = RuleStudy.Run(Asked);
        var alone = RuleStudy.Run(Asked with { MapAlone = true });
        Assert.Equal("empty", Assert.Single(alone.Loads).Name);
        Assert.Equal(whole.Map.Measured, alone.Map.Measured);
        Assert.Equal(whole.Sentences.Single(s => s.Id == "verdict"), alone.Sentences.Single(s => s.Id == "verdict"));
    }

    [Fact]
    public void A_load_that_the_car_cannot_carry_is_not_marked_and_said()
    {
        var lifted = Saloon with { LoadStates = [PlainCar.With(2000.0, 9.0) with { Name = "far behind" }] };
        var answer = RuleStudy.Run(Asked with { Car = LoadedCar.Of(lifted) });
        Assert.Equal("empty", Assert.Single(answer.Loads).Name);
        Assert.StartsWith("far behind: not marked. ", Assert.Single(answer.Cautions), StringComparison.Ordinal);
        Assert.Contains(answer.Cautions[0], answer.Lines);
    }

    [Fact]
    public void A_map_without_a_single_point_fails_in_one_wording()
    {
        // Half a metre high: every front wheel passes the end of its travel.
        var wall = Road.From(new RoundTopHump { Height = new(0.5), Length = new(2.4) });
        var stopped = Saloon with
        {
            Front = PlainCar.FrontAxle with { BumpStop = new Stop { Clearance = new(0.05), Rate = new(1e5), SolidAfter = new(0.05) } },
        };
        var failure = Assert.Throws<RunFailedException>(() => RuleStudy.Run(Asked with { Car = LoadedCar.Of(stopped), Road = wall }));
        Assert.Equal("No point of this map could be computed.", failure.Reason);
        Assert.Contains("take a lower bump", failure.Advice);
    }

    // The others come from passes of their own length, so that no number hangs on what is measured beside it.
    [Fact]
    public void Judged_by_several_measures_at_once_it_says_by_each_what_it_says_by_that_one_alone()
    {
        var all = RuleStudy.Run(Asked with { Also = PassCatalogue.Judges });
        // This car has no seats, and so no jerk of the worst one.
        Assert.Equal(["hit", "hit-angle", "late", "settling"], all.Others.Append(all).Select(a => a.Asked.Measure.Word).Order());
        Assert.Null(all.By("jerk"));
        foreach (var measure in PassCatalogue.Judges.Where(m => m.Word != "jerk"))
        {
            var (together, alone) = (all.By(measure.Word!)!, RuleStudy.Run(Asked with { Measure = measure }));
            Assert.Equal(alone.Map.Measured, together.Map.Measured);
            Assert.Equal(alone.Hit?.Measured, together.Hit?.Measured);
            Assert.Equal(alone.Lines, together.Lines);
        }
    }

    [Fact]
    public void Where_a_car_stands_under_each_load_is_told_with_its_doubt_where_every_measure_is_asked_for()
    {
        var unsure = Saloon with
        {
            Front = Saloon.Front with { Spring = new Spring { Law = new LinearSpring { Rate = new(21000.0, new Doubt(1000.0)) } } },
        };
        var asked = Asked with { Car = LoadedCar.Of(unsure) };
        var all = RuleStudy.Run(asked with { Also = PassCatalogue.Judges });
        Assert.Equal(2, all.Loads.Count);
        Assert.All(all.Loads, load =>
        {
            var doubt = load.Doubt!.Value;
            Assert.InRange(load.Own, doubt.Low + 1e-6, doubt.High - 1e-6);
            // By the doubt of the ratio among the car's numbers.
            var number = FirstOrder.Of(unsure, LoadOf(load.Name), [AxleCatalogue.FrequencyRatio]).Results[0].Central90;
            Assert.Equal((number.Low, number.High), (doubt.Low, doubt.High));
        });
        Assert.All(RuleStudy.Run(asked).Loads, load => Assert.Null(load.Doubt));
    }

    private static LoadState LoadOf(string name) => Asked.Car.Car.LoadStates.FirstOrDefault(l => l.Name == name) ?? LoadState.Reference;

    [Fact]
    public void What_stops_the_run_stops_it()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => RuleStudy.Run(Asked, new StudyRun { Cancellation = stop.Token }));
    }

    [Fact]
    public void Every_rule_has_its_own_kind_word_and_question()
    {
        Assert.Equal(Enum.GetValues<RuleKind>(), TradeRule.All.Select(r => r.Kind));
        Assert.Equal(TradeRule.All.Length, TradeRule.All.Select(r => r.Question).Distinct().Count());
        Assert.All(TradeRule.All, rule =>
        {
            Assert.Equal(rule, TradeRule.Of(rule.Word));
            Assert.Equal(rule.Kind, rule.Axis(Asked.Car.Model, 4).Kind);
        });
    }

    [Fact]
    public void Words_become_the_same_question_and_all_that_is_wrong_is_told_at_once()
    {
        var finder = new KnownThings(Saloon);
        var read = RuleStudy.Question.Read(
            KnownThings.Words("car", Saloon.Name, "road", "hump", "from", "36 km/h", "to", "72 km/h", "load", "two up", "speeds", "7"), finder);
        Assert.Empty(read.Objections);
        Assert.Equal((10.0, 20.0, "two up", 7), (read.Asked!.Slowest, read.Asked.Fastest, read.Asked.Car.Load.Name, read.Asked.Detail.Speeds));
        var wrong = RuleStudy.Question.Read(
            KnownThings.Words(
                "car", Saloon.Name, "road", "moon", "from", "72 km/h", "to", "36 km/h", "load", "ten up", "speeds", "1", "rule", "luck"),
            finder);
        Assert.Null(wrong.Asked);
        Assert.Equal(["load", "road", "rule", "speeds", "to"], wrong.Objections.Select(o => o.Choice).Order());
        Assert.Equal(["load", "road"], wrong.Objections.Where(o => !o.IsUsage).Select(o => o.Choice).Order());
    }

    private sealed class Shares(List<double> told) : IProgress<double>
    {
        public void Report(double value) => told.Add(value);
    }
}
