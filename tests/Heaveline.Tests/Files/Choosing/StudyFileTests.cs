using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Heaveline.Files;
using Heaveline.Files.Choosing;
using Heaveline.Studies;

namespace Heaveline.Tests.Files.Choosing;

public class StudyFileTests
{
    private const string Sound =
        """
        study: one
        car: saloon.yaml
        parts: [list.yaml]
        open: {front-spring: at most 90, rear-damper: any}
        use:
          - {road: village-hump, speeds: [25 km/h, 40 km/h], loads: [driver], weight: 2}
          - {road: short-bump, speeds: [50 km/h]}
          - {class: C, speeds: [80 km/h]}
        loads: [driver, family]
        wishes: [settling, money]
        limits: ["hit at most 5 % more, in 19 of 20 cars", roll at most 10 % more]
        budget: 600 EUR
        draws: 64
        seed: 3
        """;

    [Fact]
    public void A_study_is_read_into_the_words_of_the_options()
    {
        var sheet = StudyFile.Read(new SourceText("one.yaml", Sound)).Value!;
        Assert.Equal(
            [
                ("car", "saloon.yaml"), ("parts", "list.yaml"), ("open", "front spring: at most 90"), ("open", "rear damper"),
                ("use", "village-hump at 25 km/h, 40 km/h; loads driver; weight 2"), ("use", "short-bump at 50 km/h"), ("use", "class C at 80 km/h"),
                ("load", "driver"), ("load", "family"), ("wish", "settling"), ("wish", "money"),
                ("with", "hit at most 5 % more, in 19 of 20 cars"), ("with", "roll at most 10 % more"), ("budget", "600 EUR"), ("draws", "64"),
                ("seed", "3"),
            ],
            sheet.Lines.Select(line => (line.Choice, line.Words)));
        Assert.Equal([2, 3, 4, 4, 6, 7, 8, 9, 9, 10, 10, 11, 11, 12, 13, 14], sheet.Lines.Select(line => line.Line));
    }

    // What the reader takes, the schema's pattern must take, and the other way round.
    [Theory]
    [InlineData("roll at most as now", true)]
    [InlineData("hit at most 5 %, in 19 of 20 cars", true)]
    [InlineData("bump travel left at least 40 mm front, 30 mm rear, with any load", true)]
    [InlineData("bump travel left at least 40 mm front, 30 mm rear, with any load, in 19 of 20 cars", true)]
    [InlineData("droop travel left at least 1.5 in", true)]
    [InlineData("never metal to metal, in 95 of 100 cars", true)]
    [InlineData("lamp swing at most 1.2 % in all", true)]
    [InlineData("lamp swing at most as now", true)]
    [InlineData("lamp swing at most 1.2 % more", true)]
    [InlineData("lamp swing at most 1.2 %", false)]
    [InlineData("least tyre load at least 20 %", true)]
    [InlineData("least tyre load at most 20 %", false)]
    [InlineData("roll at least 5 %", false)]
    [InlineData("bump travel left at most 40 mm", false)]
    [InlineData("always metal to metal", false)]
    [InlineData("noise at most 5 %", false)]
    public void One_list_says_what_a_limit_is_to_the_reader_and_to_the_schema(string words, bool isOne)
    {
        var reading = StudyFile.Read(new SourceText(
            "one.yaml", Sound.Replace("roll at most 10 % more", $"\"{words}\"", StringComparison.Ordinal)
                .Replace("\"hit at most 5 % more, in 19 of 20 cars\", ", "", StringComparison.Ordinal)));
        Assert.True(isOne == reading.Value is not null, reading.Format());
        Assert.Equal(isOne, ChooseLimitReader.Refusal(words) is null);
        var pattern = ChooseLimitReader.Pattern;
        Assert.Equal(isOne, Regex.IsMatch(words, pattern, RegexOptions.ECMAScript));
        Assert.Contains(
            Patterns(StudyFile.Schema), one => one == pattern);
    }

    private static IEnumerable<string> Patterns(JsonNode? node) => node switch
    {
        JsonObject group => group.SelectMany(one => one.Key == "pattern" && one.Value is JsonValue value
            ? [value.GetValue<string>()]
            : Patterns(one.Value)),
        JsonArray list => list.SelectMany(Patterns),
        _ => [],
    };

    [Fact]
    public void A_name_a_car_and_a_list_are_a_study() =>
        Assert.Equal(2, StudyFile.Read(new SourceText("s.yaml", "study: s\ncar: c.yaml\nparts: [p.yaml]\n")).Value!.Lines.Length);

    [Theory]
    [InlineData("car: saloon.yaml\n", "", "car")]
    [InlineData("at most 90", "at most ninety", "has no price of one piece")]
    [InlineData("front-spring:", "front-sprign:", "front-sprign")]
    [InlineData("road: village-hump, ", "", "road")]
    [InlineData("road: village-hump,", "road: village-hump, class: B,", "class")]
    [InlineData("[25 km/h, 40 km/h]", "[25, 40 km/h]", "25")]
    [InlineData("weight: 2", "weight: heavy", "is no weight")]
    [InlineData("{class: C, speeds", "{class: C, weight: 2, speeds", "the ride is never added to what obstacles do")]
    [InlineData("[settling, money]", "[settling, beauty]", "beauty")]
    [InlineData("hit at most 5 %", "hit below 5 %", "is no limit")]
    [InlineData("in 19 of 20 cars", "in 20 of 20 cars", "no share of cars that draws can show")]
    [InlineData("roll at most 10 % more", "\"roll at most 10 % more, in 9 of 10 cars\"", "roll is limited in the car as stated")]
    [InlineData("600 EUR", "EUR 600", "is no amount of money")]
    [InlineData("draws: 64", "draws: 5", "draws is 5")]
    [InlineData("seed: 3", "keep: [rear damper]", "names the rear damper, which is open too")]
    [InlineData("seed: 3", "sede: 3", "sede")]
    [InlineData("[driver, family]", "[driver, driver]", "has driver a second time, after line 9")]
    [InlineData("[settling, money]", "[settling, money, settling]", "has settling a second time, after line 10")]
    [InlineData("roll at most 10 % more]", "hit at most 9 %]", "hit at most 9 %: a limit of hit a second time, after line 11")]
    [InlineData("[25 km/h, 40 km/h]", "[25 km/h, 25000 m/h]", "has 25000 m/h a second time")]
    [InlineData("[25 km/h, 40 km/h]", "[25 km/h, 40 km/h ± 3 km/h]", "it has a doubt")]
    [InlineData("loads: [driver], weight", "loads: [driver, driver], weight", "has driver a second time")]
    [InlineData("[driver, family]", "[]", "has 0 items")]
    [InlineData("[settling, money]", "[]", "has 0 items")]
    [InlineData("[25 km/h, 40 km/h]", "[]", "has 0 items")]
    [InlineData("roll at most 10 % more", "bump travel left at least 40 mm middle", "is no limit")]
    [InlineData("roll at most 10 % more", "\"bump travel left at least 40 mm front, 30 mm front\"", "is no limit")]
    [InlineData("roll at most 10 % more", "droop travel left at least 40 kg", "is no limit")]
    public void What_is_wrong_is_refused_at_its_place(string old, string slip, string message)
    {
        Assert.Contains(old, Sound, StringComparison.Ordinal);
        var text = Sound.Replace(old, slip, StringComparison.Ordinal);
        var reading = StudyFile.Read(new SourceText("one.yaml", text));
        Assert.Null(reading.Value);
        var refusal = reading.Refusals.First(one => one.Message.Contains(message, StringComparison.Ordinal));
        Assert.InRange(refusal.Line, 1, text.Split('\n').Length);
        Assert.InRange(refusal.Column, 1, text.Split('\n')[refusal.Line - 1].Length + 1);
    }

    [Fact]
    public void Everything_that_is_wrong_is_refused_at_once()
    {
        var text = Sound.Replace("at most 90", "at most x", StringComparison.Ordinal).Replace("weight: 2", "weight: x", StringComparison.Ordinal)
            .Replace("draws: 64", "draws: x", StringComparison.Ordinal).Replace("600 EUR", "x", StringComparison.Ordinal);
        Assert.Equal([4, 6, 12, 13], StudyFile.Read(new SourceText("one.yaml", text)).Refusals.Select(refusal => refusal.Line));
    }

    [Theory]
    [InlineData("50 km/h]", "50 m/s]", "180 km/h", 7)]
    [InlineData("road: short-bump, speeds", "road: village-hump, loads: [driver], speeds", "stands in line 6 already", 7)]
    [InlineData("draws: 64", "draws: 20", "is not sure yet", 13)]
    public void Likely_slips_are_told_at_their_line(string old, string slip, string message, int line)
    {
        Assert.Empty(StudyFile.Read(new SourceText("one.yaml", Sound)).Warnings);
        var reading = StudyFile.Read(new SourceText("one.yaml", Sound.Replace(old, slip, StringComparison.Ordinal)));
        Assert.True(reading.Value is not null, reading.Format());
        Assert.Equal(line, Assert.Single(reading.Warnings, warning => warning.Message.Contains(message, StringComparison.Ordinal)).Line);
    }
}
