using System.Text;
using Heaveline.Files.Roads;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Figures;
using Heaveline.Tests.Files;

namespace Heaveline.Tests.Studies;

public class PassStudyTests
{
    private static readonly PassAsked Asked =
        new() { Car = LoadedCar.Of(DrawnCars.Saloon, DrawnCars.Driver), Road = NamedRoads.All["village-hump"], Speed = 12.0 };

    [Fact]
    public void A_pass_has_its_story_its_numbers_its_traces_and_its_figure()
    {
        var answer = PassStudy.Run(Asked);
        Assert.True(answer.IsWhole);
        Assert.Null(answer.Failure);
        Assert.Equal(answer.Sentences.Select(s => s.Text), answer.Lines.Take(answer.Sentences.Count));
        Assert.Equal(
            answer.Measures.Pitch.Settling!.RmsAngle * 180.0 / Math.PI,
            answer.Tables[0].Rows.Single(r => r.Key == "settling-rms-pitch").Values[0]!.Value,
            1e-12);
        Assert.StartsWith("time [s],", Encoding.UTF8.GetString(answer.Csv()), StringComparison.Ordinal);
        Assert.Equal([PassAnswer.Traces], answer.FigureIds);
    }

    [Fact]
    public void Dampers_and_linkages_driven_past_what_was_measured_are_told()
    {
        var text = TextCar.With(
            "    rate: 22 N/mm\n    spring-per-wheel: 0.90",
            "    rate: 22 N/mm\n    sweep: [[-20 mm, -18 mm], [-5 mm, -4.5 mm], [10 mm, 9 mm], [20 mm, 18 mm]]");
        var answer = PassStudy.Run(Asked with { Car = LoadedCar.Of(TextCar.Read(text).Value!) });
        Assert.Collection(
            answer.Cautions,
            front => Assert.Matches("^The front wheels move [−0-9]+ mm, past the end of the spring's sweep at −?20 mm: its curve is taken on", front),
            rear => Assert.Matches("^The rear damper (opens|closes) at [0-9.]+ m/s, past the end of its table at 0.3 m/s: its last slope", rear));
        Assert.All(answer.Cautions, caution => Assert.Contains(caution, answer.Lines));
        Assert.Equal(answer.Cautions, answer.Facts["cautions"]!.AsArray().Select(c => c!.GetValue<string>()));
        Assert.Empty(PassStudy.Run(Asked with { Road = NamedRoads.All["long-wave"], Speed = 2.0 }).Cautions);
    }

    [Fact]
    public void A_seat_adds_what_the_comfort_standard_makes_of_it_and_is_drawn_first()
    {
        var answer = PassStudy.Run(Asked with { Comfort = DrawnCars.Saloon.Seats[0] });
        Assert.Equal([PassAnswer.Comfort, PassAnswer.Traces], answer.FigureIds);
        Assert.Contains(answer.Sentences, s => s.Id == "comfort-evaluation");
        Assert.Equal(2, answer.Tables.Count);
    }

    [Fact]
    public void A_pass_that_breaks_off_has_no_table_and_says_why()
    {
        var answer = PassStudy.Run(Asked with { Road = Road.From(new RoundTopHump { Height = new(0.50), Length = new(2.5) }), Speed = 25.0 });
        Assert.Empty(answer.Tables);
        Assert.Equal(["opening", "outcome"], answer.Sentences.Select(s => s.Id));
        Assert.Contains(answer.Pass.OutcomeSentence, answer.Failure, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_become_what_is_asked_and_what_is_wrong_with_them_is_said_at_once()
    {
        var known = new DrawnThings();
        var asked = PassStudy.Question.Read(
            new Given([("car", "hazel"), ("speed", "36 km/h"), ("comfort", "driver"), ("certified", Choice.Yes)]), known).Asked!;
        Assert.Equal(
            ("driver alone", "village-hump", 10.0, "driver", true),
            (asked.Car.Load.Name, "village-hump", asked.Speed, asked.Comfort!.Name, asked.Options.Method is ExactPieces));
        Assert.Same(NamedRoads.All["village-hump"], asked.Road);
        var wrong = PassStudy.Question.Read(new Given([("car", "hazel"), ("speed", "400 mph"), ("road", "nowhere"), ("comfort", "dickey")]), known);
        Assert.Equal(["speed", "road", "comfort"], wrong.Objections.Select(o => o.Choice));
    }

    [Fact]
    public void Traces_are_taken_away_as_finely_and_as_endlessas_is_asked_and_the_numbers_stay()
    {
        var asked = PassStudy.Question.Read(
            new Given([("car", "hazel"), ("csv-rate", "1000"), ("csv-length", "2 s")]), new DrawnThings()).Asked!;
        var answer = PassStudy.Run(asked);
        var plain = PassStudy.Run(asked with { Record = null });
        Assert.Equal(plain.Lines, answer.Lines);
        double[] times = [.. Encoding.UTF8.GetString(answer.Csv()).Split('\n')[1..^1].Select(row => double.Parse(
            row.Split(',')[0], System.Globalization.CultureInfo.InvariantCulture))];
        Assert.Equal(2.0, times[^1], 1e-9);
        Assert.Equal(0.001, times[1] - times[0], 1e-9);
        foreach (var (name, words) in new[] { ("csv-rate", "20"), ("csv-rate", "many"), ("csv-length", "20 min"), ("csv-length", "5 m") })
        {
            Assert.Equal(
                [name], PassStudy.Question.Read(new Given([("car", "hazel"), (name, words)]), new DrawnThings()).Objections.Select(o => o.Choice));
        }

        var endless = new Given([("car", "hazel"), ("csv-rate", "4000"), ("csv-length", "500 s")]);
        Assert.Contains(
            "too many", Assert.Single(PassStudy.Question.Read(endless, new DrawnThings()).Objections).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Equal_questions_have_equal_keys_and_others_have_others()
    {
        string Key(string speed) => PassStudy.Question.Read(new Given([("car", "hazel"), ("speed", speed)]), new DrawnThings()).Key;
        Assert.Equal(Key("40 km/h"), Key("40 km/h"));
        Assert.NotEqual(Key("40 km/h"), Key("41 km/h"));
    }

    [Fact]
    public void A_pass_that_is_stopped_says_so() => Assert.ThrowsAny<OperationCanceledException>(() => PassStudy.Run(
        Asked, new StudyRun { Cancellation = new CancellationToken(canceled: true) }));
}
