using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.Doubts;

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
        Assert.Equal(["not-stated"], answer.Sentences.Select(s => s.Id));
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
