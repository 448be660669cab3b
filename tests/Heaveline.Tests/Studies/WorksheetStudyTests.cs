using Heaveline.Worksheets;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class WorksheetStudyTests
{
    private static readonly KnownThings Nothing = new();

    [Fact]
    public void All_that_is_wrong_with_a_weighing_is_said_at_once()
    {
        var words = KnownThings.Words(
            "round", "381 kg, 362 kg", "round", "381 kg, 362 kg, 311 kg, 306", "turned", "1 m, 2 kg, 3 kg, 4 kg", "wheelbase", "2.7");
        var reading = WeighStudy.Question.Read(words, Nothing);
        Assert.Null(reading.Asked);
        Assert.Equal(["round", "round", "turned", "wheelbase", "track"], reading.Objections.Select(o => o.Choice));
        Assert.All(reading.Objections, o => Assert.True(o.IsUsage));
        Assert.Contains("it must have 4", reading.Objections[0].Sentence, StringComparison.Ordinal);
        Assert.Contains("must be given", reading.Objections[^1].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_weighing_read_from_words_is_the_one_asked_for_in_code()
    {
        var words = KnownThings.Words("round", "381 kg, 362 kg, 311 kg, 306 kg", "wheelbase", "2.7 m", "track", "1.52 m, 1.51 m");
        var asked = new WeighAsked
        {
            Rounds = [new WheelReadings(Mass.FromKilograms(381.0), Mass.FromKilograms(362.0), Mass.FromKilograms(311.0), Mass.FromKilograms(306.0))],
            Wheelbase = Length.FromMetres(2.7),
            FrontTrack = Length.FromMetres(1.52),
            RearTrack = Length.FromMetres(1.51),
        };
        string Json(WeighAsked weighed) => WeighStudy.Run(weighed).Json("0", "worksheet");
        Assert.Equal(Json(asked), Json(WeighStudy.Question.Read(words, Nothing).Asked!));
        Assert.Equal(["one-round", "not-turned", "no-scale-doubt"], WeighStudy.Run(asked).Sentences.Select(s => s.Id));
    }

    [Fact]
    public void A_tilt_without_the_unsprung_mass_says_what_is_missing()
    {
        var words = KnownThings.Words(
            "total", "1200 kg", "level", "600 kg", "lifted", "621.16 kg", "angle", "10°", "wheelbase", "2.5 m", "radius", "0.31 m, 0.31 m");
        var answer = TiltStudy.Run(TiltStudy.Question.Read(words, Nothing).Asked!);
        Assert.Equal("unsprung-missing", answer.Sentences[^1].Id);
        Assert.Empty(answer.CarFile);
        var tooFlat = TiltStudy.Question.Read(words.With(TiltStudy.Question.Choices.Single(c => c.Name == "angle"), "0.1°"), Nothing);
        Assert.Contains("refused: ", Assert.Single(tooFlat.Objections).Sentence, StringComparison.Ordinal);
    }

    // 20 N/mm by hand: 400 N on every 20 mm.
    [Fact]
    public void A_spring_gives_its_rate_and_a_line_for_the_car_file()
    {
        var words = KnownThings.Words("pair", "300 mm, 400 N", "pair", "280 mm, 800 N", "pair", "260 mm, 1200 N", "at", "270 mm");
        var answer = SpringStudy.Run(SpringStudy.Question.Read(words, Nothing).Asked!);
        Assert.Equal(20.0, answer.Table.Rows.Single(r => r.Key == "rate").Values[0]!.Value, 1e-9);
        Assert.Equal(1000.0, answer.Table.Rows.Single(r => r.Key == "force-at").Values[0]!.Value, 1e-9);
        Assert.Equal("spring:", answer.CarFile[0]);
        Assert.StartsWith("  rate: 20.00 N/mm ± 0.", answer.CarFile[1], StringComparison.Ordinal);
    }

    // Both travels on one curve: what is left is half the last digit of each instrument, 0.5 mm and 0.05 mm. Of x = r·S at ±20 mm: U(r) = √(r²·0.5²+
    // 0.05²)·√2·20/(2·20²).
    [Fact]
    public void A_reading_is_no_surer_than_its_last_digit()
    {
        var words = KnownThings.Words("stop", "-20 mm, -12.0 mm", "stop", "0 mm, 0 mm", "stop", "20 mm, 12.0 mm");
        var ratio = RatioStudy.Run(RatioStudy.Question.Read(words, Nothing).Asked!).Table.Rows.Single(r => r.Key == "ratio");
        Assert.Equal(Math.Sqrt((0.6 * 0.6 * 0.25) + 0.0025) * Math.Sqrt(2.0) * 20.0 / 800.0, ratio.Values[1]!.Value, 1e-4);
    }

    [Fact]
    public void A_decimal_comma_is_understood_where_nothing_else_can_be_meant()
    {
        string Json(params string[] words) =>
            RatioStudy.Run(RatioStudy.Question.Read(KnownThings.Words(words), Nothing).Asked!).Json("0", "worksheet");
        Assert.Equal(
            Json("stop", "-20,5 mm, -12.25 mm", "stop", "0 mm,0 mm", "stop", "0,0205 m,12,25 mm"),
            Json("stop", "-20.5 mm, -12.25 mm", "stop", "0 mm, 0 mm", "stop", "0.0205 m, 12.25 mm"));
        var reading = RatioStudy.Question.Read(KnownThings.Words("stop", "20,12", "stop", "1,320 mm, 1 mm"), Nothing);
        Assert.Contains("A comma between two digits is a decimal comma.", reading.Objections[0].Sentence, StringComparison.Ordinal);
        Assert.Contains("1320 or 1.320", reading.Objections[1].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_count_of_swings_and_a_sweep_are_read_from_words()
    {
        var bounce = BounceStudy.Run(BounceStudy.Question.Read(KnownThings.Words("swings", "10", "time", "8 s"), Nothing).Asked!);
        Assert.Equal(1.25, bounce.Table.Rows[0].Values[0]!.Value, 1e-12);
        Assert.Equal("hand-doubts", bounce.Sentences[^1].Id);
        var sweep = KnownThings.Words("stop", "20 mm, 12 mm", "stop", "-20 mm, -12 mm", "stop", "0 mm, 0 mm");
        var ratio = RatioStudy.Question.Read(sweep, Nothing).Asked!;
        Assert.Equal([-0.02, 0.0, 0.02], ratio.Stops.Select(s => s.Wheel.Si));
        Assert.Equal(0.6, RatioStudy.Run(ratio).Table.Rows[0].Values[0]!.Value, 1e-9);
    }
}
