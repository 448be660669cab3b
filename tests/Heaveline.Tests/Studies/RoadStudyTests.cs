using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class RoadStudyTests
{
    [Fact]
    public void A_named_road_has_its_heights_and_a_road_without_a_class_says_why()
    {
        var answer = RoadStudy.Run(Read(("road", "village-hump")).Asked!);
        // The hump that its name stands for: 75 mm high.
        Assert.Equal(75.0, answer.Tables[0].Rows.Single(r => r.Key == "highest").Values[0]!.Value, 0.01);
        Assert.NotEmpty(answer.Cautions);
        Assert.StartsWith("distance [m],", System.Text.Encoding.UTF8.GetString(answer.Csv()), StringComparison.Ordinal);
    }

    [Fact]
    public void A_made_road_is_its_class_in_two_tracks()
    {
        var answer = RoadStudy.Run(Read(("random", "C"), ("length", "300 m"), ("seed", "5")).Asked!);
        Assert.Equal(["left", "right"], answer.Tables[0].Columns);
        // Class C spans 128 to 512e-6 m³ (ISO 8608:2016, table C.2).
        Assert.InRange(answer.Tables[0].Rows.Single(r => r.Key == "density").Values[0]!.Value, 128.0, 512.0);
    }

    [Fact]
    public void Without_a_road_it_says_which_there_are()
    {
        var answer = RoadStudy.Run(Read().Asked!);
        Assert.Contains(answer.Lines, line => line.StartsWith("village-hump ", StringComparison.Ordinal));
        Assert.Empty(answer.FigureIds);
    }

    [Fact]
    public void What_is_wrong_is_said_at_once()
    {
        Assert.Equal(["random", "length", "seed"], Read(("random", "Z"), ("length", "500"), ("seed", "-1")).Objections.Select(o => o.Choice));
        Assert.Contains("not both", Assert.Single(Read(("road", "village-hump"), ("random", "C")).Objections).Sentence, StringComparison.Ordinal);
        Assert.False(Assert.Single(Read(("random", "C"), ("length", "1 mm")).Objections).IsUsage);
    }

    private static AskedReading<RoadAsked> Read(params (string Name, string? Words)[] words) =>
        RoadStudy.Question.Read(new Given(words), new DrawnThings());
}
