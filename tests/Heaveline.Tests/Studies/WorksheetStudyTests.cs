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
        // No force at 320 mm.
        Assert.StartsWith("  free-length: 320.00 mm ± ", answer.CarFile[2], StringComparison.Ordinal);
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

    // 9050 N typed for 1305 N: a spring of 20.85 N/mm else.
    [Fact]
    public void A_misread_pair_is_named_and_makes_no_line_for_the_car_file()
    {
        SheetAnswer Pressed(string third) => SpringStudy.Run(SpringStudy.Question.Read(
            KnownThings.Words("pair", "310 mm, 480 N", "pair", "290 mm, 905 N", "pair", "270 mm, " + third, "pair", "250 mm, 1735 N"),
            Nothing).Asked!);
        var misread = Pressed("9050 N");
        Assert.Empty(misread.CarFile);
        Assert.Contains("The pair 270 mm, 9050 N", misread.Sentences.Single(s => s.Id == "misread").Text, StringComparison.Ordinal);
        Assert.DoesNotContain(misread.Sentences, s => s.Text.Contains("One rate describes", StringComparison.Ordinal));
        Assert.NotEmpty(Pressed("1310 N").CarFile);
        Assert.DoesNotContain(Pressed("1310 N").Sentences, s => s.Id is "misread" or "no-line");
    }

    // Three pairs never tell which is wrong: two of them lie on a line.
    [Fact]
    public void A_rate_that_its_doubt_swallows_makes_no_line_for_the_car_file()
    {
        var words = KnownThings.Words("pair", "310 mm, 480 N", "pair", "290 mm, 9050 N", "pair", "270 mm, 1310 N");
        var answer = SpringStudy.Run(SpringStudy.Question.Read(words, Nothing).Asked!);
        Assert.Empty(answer.CarFile);
        Assert.Contains("more than half of itself", answer.Sentences.Single(s => s.Id == "no-line").Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("330 mm")]
    [InlineData("480 mm")]
    public void A_mistyped_gap_is_named_and_makes_no_lines_for_the_car_file(string gap)
    {
        var words = KnownThings.Words(
            "up", "420 mm, 218 kg", "up", "400 mm, 263 kg", "up", gap + ", 310 kg", "up", "360 mm, 354 kg",
            "down", "360 mm, 343 kg", "down", "380 mm, 297 kg", "down", "400 mm, 252 kg", "down", "420 mm, 205 kg");
        var asked = WheelRateStudy.Question.Read(words, Nothing).Asked!;
        SheetAnswer? answer = null;
        var refused = Record.Exception(() => answer = WheelRateStudy.Run(asked));
        var said = refused?.Message ?? answer!.Sentences.Single(s => s.Id == "misread").Text;
        Assert.Contains($"The reading at {gap} going up", said, StringComparison.Ordinal);
        Assert.Empty(answer?.CarFile ?? []);
        Assert.DoesNotContain(answer?.Sentences ?? [], s => s.Text.Contains("met neither stop", StringComparison.Ordinal));
    }

    [Fact]
    public void A_gap_at_rest_that_no_reading_comes_near_is_remarked()
    {
        string[] words =
        [
            "up", "420 mm, 218 kg", "up", "400 mm, 263 kg", "up", "380 mm, 310 kg", "up", "360 mm, 354 kg",
            "down", "360 mm, 343 kg", "down", "380 mm, 297 kg", "down", "400 mm, 252 kg", "down", "420 mm, 205 kg",
        ];
        IEnumerable<string> Ids(string rest) =>
            WheelRateStudy.Run(WheelRateStudy.Question.Read(KnownThings.Words([.. words, "rest", rest]), Nothing).Asked!).Sentences.Select(s => s.Id);
        Assert.Contains("rest-outside", Ids("3850 mm"));
        Assert.DoesNotContain("rest-outside", Ids("385 mm"));
    }

    [Fact]
    public void Work_under_load_is_cautioned()
    {
        var tilt = KnownThings.Words(
            "total", "1200 kg", "level", "600 kg", "lifted", "621.16 kg", "angle", "10°", "wheelbase", "2.5 m", "radius", "0.31 m, 0.31 m");
        var lifted = TiltStudy.Run(TiltStudy.Question.Read(tilt, Nothing).Asked!).Sentences.Single(s => s.Id == "lifted-car").Text;
        Assert.All(["level", "chock", "strap", "nobody under"], word => Assert.Contains(word, lifted, StringComparison.Ordinal));
        var pressed = KnownThings.Words("pair", "300 mm, 400 N", "pair", "280 mm, 800 N", "pair", "260 mm, 1200 N");
        var spring = SpringStudy.Run(SpringStudy.Question.Read(pressed, Nothing).Asked!).Sentences.Single(s => s.Id == "pressed-spring").Text;
        Assert.All(["guard", "stand clear"], word => Assert.Contains(word, spring, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("310 mm, 1e308 N", "pair '1e308 N': 0 N to 100000 N is usual.")]
    [InlineData("1e300 mm, 480 N", "pair '1e300 mm': 20 mm to 1000 mm is usual.")]
    [InlineData("310 mm, 480 N ± 1e20 N", "its doubt is far beyond any reading")]
    [InlineData("310 mm, 1e200 kg", "pair '1e200 kg': 0 N to 100000 N is usual.")]
    public void A_reading_that_nothing_on_wheels_gives_is_objected_to_as_typed(string pair, string sentence)
    {
        var words = KnownThings.Words("pair", pair, "pair", "280 mm, 800 N", "pair", "260 mm, 1200 N");
        var objection = Assert.Single(SpringStudy.Question.Read(words, Nothing).Objections);
        Assert.Contains(sentence, objection.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("381 kg ± 9000 kg", "Round '381 kg ± 9000 kg': its doubt is 2362 % of it.")]
    [InlineData("3810 kg", "Round '3810 kg': 20 kg to 1500 kg is usual; check the number and its unit.")]
    public void An_odd_reading_is_worked_out_and_told(string reading, string sentence)
    {
        SheetAnswer Answer(string first)
        {
            var words = KnownThings.Words("round", first + ", 362 kg, 311 kg, 306 kg", "wheelbase", "2.7 m", "track", "1.5 m, 1.5 m");
            return WeighStudy.Question.Answers(WeighStudy.Question.Read(words, Nothing).Asked!, StudyRun.Plain);
        }

        Assert.Equal(sentence, Assert.Single(Answer(reading).Sentences, s => s.Id == "odd-readings").Text);
        Assert.DoesNotContain(Answer("381 kg ± 1 kg").Sentences, s => s.Id == "odd-readings");
    }

    [Fact]
    public void Readings_beside_one_far_too_large_are_not_said_to_lie_at_one_place()
    {
        var words = KnownThings.Words("stop", "3000 m, 5 mm", "stop", "10 mm, 6 mm", "stop", "20 mm, 12 mm", "stop", "30 mm, 18 mm");
        var asked = RatioStudy.Question.Read(words, Nothing).Asked!;
        Assert.DoesNotContain("one place", Record.Exception(() => RatioStudy.Run(asked))?.Message ?? "", StringComparison.Ordinal);
    }
}
