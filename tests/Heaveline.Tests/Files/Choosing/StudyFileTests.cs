using Heaveline.Files;
using Heaveline.Files.Choosing;

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
