using System.Collections.Immutable;
using Heaveline.Files.Roads;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class CompareStudyTests
{
    private static readonly DrawnThings Known = new();

    private static readonly CompareAsked Asked = new()
    {
        Cars = [LoadedCar.Of(Known.Car("hazel").Value!), LoadedCar.Of(Known.Car("softer").Value!)],
        Road = NamedRoads.All["village-hump"],
        Speeds = [8.0, 12.0],
    };

    [Fact]
    public void Every_car_has_its_column_at_every_speed_and_the_numbers_that_it_has_alone()
    {
        var shares = new List<double>();
        var answer = CompareStudy.Run(Asked, new StudyRun { Progress = new Shares(shares) });
        Assert.Equal(["At 28.8 km/h", "At 43.2 km/h"], answer.Tables.Select(t => t.Title));
        Assert.All(answer.Tables, t => Assert.Equal(["Hazel saloon", "Hazel saloon, trimmed"], t.Columns));
        var alone = PassStudy.Run(new PassAsked { Car = Asked.Cars[1], Road = Asked.Road, Speed = 12.0 });
        Assert.Equal(alone.Measures.Pitch.RmsAngle, answer.Passes[1][1].Measures.Pitch.RmsAngle, 1e-9);
        Assert.Equal([0.5, 1.0], shares);
        Assert.Equal([CompareAnswer.OverSpeeds, CompareAnswer.Traces], answer.FigureIds);
    }

    [Fact]
    public void A_speed_at_which_a_car_breaks_off_has_no_table_and_the_others_have()
    {
        var answer = CompareStudy.Run(
            Asked with { Road = Road.From(new RoundTopHump { Height = new(0.50), Length = new(2.5) }), Speeds = [0.6, 25.0] });
        Assert.Equal("At 2.2 km/h", Assert.Single(answer.Tables).Title);
        Assert.Contains("at 90 km/h: The pitch angle passed 20°", answer.Failure, StringComparison.Ordinal);
    }

    [Fact]
    public void Draws_give_intervals_of_each_car_and_of_the_change()
    {
        var answer = CompareStudy.Run(Asked with { Speeds = [12.0], Draws = 10 });
        Assert.Equal("doubts", Assert.Single(answer.Sentences).Id);
        Assert.Contains("10 draws", answer.Sentences[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void One_car_alone_is_refused_in_records_and_in_words()
    {
        Assert.Throws<RefusedValueException>(() => Asked with { Cars = [Asked.Cars[0]] });
        var reading = CompareStudy.Question.Read(new Given([("car", "hazel")]), Known);
        Assert.Equal(("car", true), (Assert.Single(reading.Objections).Choice, reading.Objections[0].IsUsage));
    }

    [Fact]
    public void Traces_go_into_one_table_for_one_speed_only()
    {
        Assert.NotNull(CompareStudy.Question.CsvRefusal(Asked));
        Assert.Null(CompareStudy.Question.CsvRefusal(Asked with { Speeds = [8.0] }));
    }

    private sealed class Shares(List<double> told) : IProgress<double>
    {
        public void Report(double value) => told.Add(value);
    }

    [Fact]
    public void More_passes_than_a_machine_keeps_are_refused_before_any_is_driven()
    {
        ImmutableArray<double> speeds = [.. Enumerable.Range(0, 201).Select(i => 5.0 + (0.1 * i))];
        var refused = Assert.Throws<RefusedValueException>(() => CompareStudy.Run(Asked with { Speeds = speeds }));
        Assert.Contains("2 cars at 201 speeds; it must be at most 400 passes", refused.Message, StringComparison.Ordinal);
        var typed = string.Join(", ", Enumerable.Range(0, 401).Select(i => FormattableString.Invariant($"{20.0 + (0.1 * i):0.0} km/h")));
        var reading = CompareStudy.Question.Read(new Given([("car", "hazel"), ("car", "softer"), ("speed", typed)]), Known);
        Assert.Contains("401 speeds are too many; give at most 400.", Assert.Single(reading.Objections).Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("samples", "99999999999", "samples 99999999999: give 10 to 1000000.")]
    [InlineData("samples", "-99999999999", "samples -99999999999: give 10 to 1000000.")]
    [InlineData("samples", "many", "samples 'many' must be a whole number, in digits.")]
    [InlineData("seed", "99999999999999999999", "seed 99999999999999999999: give 0 to 18446744073709551615.")]
    [InlineData("seed", "-1", "seed -1: give 0 to 18446744073709551615.")]
    [InlineData("seed", "1.5", "seed '1.5' must be a whole number, in digits.")]
    public void A_whole_number_out_of_range_is_told_the_range_however_long_it_is(string choice, string words, string sentence)
    {
        var reading = CompareStudy.Question.Read(new Given([("car", "hazel"), ("car", "softer"), (choice, words)]), Known);
        Assert.Equal(sentence, Assert.Single(reading.Objections).Sentence);
    }
}
