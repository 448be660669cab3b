using Heaveline.Cars;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Planning;
using Heaveline.Measures;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.Doubts;
using MathNet.Numerics.Distributions;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Tests.Studies;

public class DoubtStudyTests
{
    private static readonly Car Measured = MeasuredCar.With(MeasuredCar.Saloon, 0.05, 0.03, 0.02) with { Name = "measured" };

    private static readonly DoubtAnswer Answer = DoubtStudy.Run(
        new DoubtAsked { Car = LoadedCar.Of(Measured), Road = KnownThings.Hump, Speed = 12.0, Draws = 60, Seed = 3 });

    [Fact]
    public void All_that_is_wrong_is_said_at_once()
    {
        var words = KnownThings.Words("car", "nobody", "road", "lump", "speed", "40", "samples", "3", "seed", "-1");
        var reading = DoubtStudy.Question.Read(words, new KnownThings(Measured));
        Assert.Null(reading.Asked);
        Assert.Equal(["car", "road", "samples", "seed", "speed"], reading.Objections.Select(o => o.Choice).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Without_words_it_is_of_the_standing_car_alone()
    {
        var asked = DoubtStudy.Question.Read(KnownThings.Words("car", "measured"), new KnownThings(Measured)).Asked!;
        Assert.Equal((null, 2000, 1ul, true), (asked.Road, asked.Draws, asked.Seed, asked.AreStated));
    }

    [Fact]
    public void Sentences_and_rows_are_known_by_their_ids()
    {
        Assert.Equal(
            ["softer-end", "measure-next-ratio"],
            Answer.Sentences.Select(s => s.Id).Take(2));
        // Three measures of the pass, each with what to measure better next.
        Assert.Equal(4, Answer.Sentences.Count(s => s.Id.StartsWith("measure-next-", StringComparison.Ordinal)));
        string[] keys = [.. Answer.Tables[0].Rows.Select(r => r.Key)];
        Assert.Equal(keys.Distinct(), keys);
        Assert.Equal(Answer.FigureIds, [DoubtAnswer.Bands]);
        Assert.StartsWith("measured", Answer.Figure(DoubtAnswer.Bands).Title, StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_without_a_stated_doubt_is_told_with_what_other_commands_take_and_no_share_stands_alone()
    {
        Assert.DoesNotContain(Answer.Sentences, s => s.Id == "silent" && s.Text.Contains("springs", StringComparison.Ordinal));
        Axle Bare(Axle axle) => axle with
        {
            Spring = axle.Spring with { Law = new LinearSpring { Rate = new(((LinearSpring)axle.Spring.Law).Rate.Si) } },
        };
        var car = LoadedCar.Of(Measured with { Front = Bare(Measured.Front), Rear = Bare(Measured.Rear) });
        var answer = DoubtStudy.Run(Answer.Asked with { Car = car, Road = null, Draws = 2000 });
        var ratio = answer.FromFile[CarNumber.FrequencyRatio];
        // By hand: both springs' halves of 5 %, one standard deviation each, beside what the file states of weights and motion ratios.
        var taken = 1.6449 * Math.Sqrt(2.0) * 0.025;
        Assert.Equal(Math.Sqrt((ratio.Stated * ratio.Stated) + (taken * taken)), ratio.HalfWidth, 1e-4);
        var band = answer.AtRest.Cars[0].Single(r => r.Measure.Key == AxleCatalogue.FrequencyRatio.Key).Central90;
        Assert.Equal(0.5 * Math.Log(band.High / band.Low), ratio.Stated, 0.2 * ratio.Stated);
        var said = answer.Sentences.Single(s => s.Id == "silent").Text;
        Assert.Contains("no doubt of its front springs, rear springs", said, StringComparison.Ordinal);
        Assert.Contains(
            Text($"the frequency ratio ± {In.Percent.Of(ratio.HalfWidth):F1} % in place of ± {In.Percent.Of(ratio.Stated):F1} %"), said,
            StringComparison.Ordinal);
        // Φ(−|ln r|/σ) of the ratio with what is taken, and the silent springs are what to measure, not what makes the small rest.
        var stated = AxleCatalogue.FrequencyRatio.Of(new CarAtRest(car.Model));
        var chance = Normal.CDF(0.0, 1.0, -Math.Abs(Math.Log(stated)) / (ratio.HalfWidth / 1.6449));
        Assert.Equal(chance, ratio.ChanceBeyond(stated), 1e-4);
        Assert.Equal("softer-end-silent", answer.Sentences[1].Id);
        Assert.Contains(
            chance < 0.01 ? "a chance of less than 1 %" : Text($"a chance of {In.Percent.Of(chance):F0} %"), answer.Sentences[1].Text,
            StringComparison.Ordinal);
        var next = answer.Sentences.Single(s => s.Id == "measure-next-ratio").Text;
        Assert.Equal(ratio.IsMostlySilent, next.StartsWith("Measure the front springs and rear springs next", StringComparison.Ordinal));
        // The plan of the same car says the same two.
        var plan = PlanStudy.Run(new PlanAsked { Car = car, Humps = [new TestHump { Name = "hump", Road = KnownThings.Hump }] });
        Assert.Contains(Text($"± {In.Percent.Of(ratio.HalfWidth):F1} % (90 %; by the doubts that the car file states"), plan.Head[0].Text);
        Assert.Contains(Text($"states ± {In.Percent.Of(ratio.Stated):F1} %)"), plan.Head[0].Text);
    }

    [Fact]
    public void Too_few_cars_to_tell_whose_doubt_it_is_are_said_and_the_figure_shows_the_bands_alone()
    {
        var fewest = Answer.AtRest.FewestForShares;
        Assert.Equal(3 * (Answer.AtRest.Doubts.Sources.Count + 1), fewest);
        foreach (var (draws, isFew) in new[] { (fewest - 1, true), (fewest, false) })
        {
            var answer = DoubtStudy.Run(Answer.Asked with { Road = null, Draws = draws });
            Assert.Equal(isFew, answer.Sentences.Any(s => s.Id == "too-few" && s.Text.EndsWith($"draw {fewest} or more.", StringComparison.Ordinal)));
            Assert.Equal(!isFew, answer.Sentences.Any(s => s.Id == "measure-next-ratio"));
            var figure = answer.Figure(DoubtAnswer.Bands);
            Assert.Equal(isFew ? 1 : 2, figure.Panels.Length);
            Assert.Equal(isFew, figure.Caption.Contains(" Too few cars are drawn ", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_numbers_depend_on_the_seed_and_not_on_the_degree()
    {
        var asked = Answer.Asked with { Road = null };
        string Json(DoubtAsked a, int degree) => DoubtStudy.Run(a, new StudyRun { Degree = degree }).Json("0", "doubt");
        Assert.Equal(Json(asked, 1), Json(asked, 3));
        Assert.NotEqual(Json(asked, 1), Json(asked with { Seed = 4 }, 1));
    }

    [Fact]
    public void A_car_without_doubts_is_told_how_to_write_them()
    {
        var answer = DoubtStudy.Run(new DoubtAsked { Car = LoadedCar.Of(PlainCar.Saloon), Draws = 10 });
        Assert.False(answer.Asked.AreStated);
        Assert.Equal(["not-stated", "silent"], answer.Sentences.Select(s => s.Id));
    }

    [Fact]
    public void Progress_rises_to_the_end()
    {
        var told = new List<double>();
        var run = new StudyRun { Progress = new Listener(told) };
        DoubtStudy.Run(Answer.Asked with { Draws = 20 }, run);
        Assert.Equal(told.Order(), told);
        Assert.Equal(1.0, told[^1], 1e-12);
    }

    [Fact]
    public void Too_few_draws_are_refused() => Assert.Throws<RefusedValueException>(() => Answer.Asked with { Draws = 9 });

    private sealed class Listener(List<double> shares) : IProgress<double>
    {
        public void Report(double value) => shares.Add(value);
    }
}
