using Heaveline.Studies;

namespace Heaveline.Tests.Cli;

public class WhyAndDoubtTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";

    [Fact]
    public void Why_ranks_causes_with_a_planned_test()
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("why", Saloon, "--load", "four up with luggage", "--speed", "40 km/h", "--figure", scratch["why.svg"]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Contains("No road test: ", said.Results);
        Assert.Contains("off public roads", said.Results);
        Assert.Contains("°; with every cause neutral ", said.Results);
        Assert.Equal(["why.svg"], scratch.Contents);
        var shares = new AnswerJson(Spoken.Of("why", Saloon, "--load", "four up with luggage", "--speed", "40 km/h", "--json")).Rows
            .Select(r => r.Values[0]!.Value).ToList();
        // Ranked: the settling's causes come first, by the size of their share.
        Assert.True(Math.Abs(shares[0]) >= Math.Abs(shares[1]));
    }

    [Fact]
    public void A_two_wheeler_is_not_called_a_car()
    {
        var said = Spoken.Of("why", "examples/garage/plover-motorcycle.yaml");
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.All([said.Results, .. Cautions.All], text => Assert.DoesNotMatch(@"\b[Cc]ars?\b(?! file)", text));
    }

    [Fact]
    public void Doubt_gives_bands_a_chance_and_what_to_measure_next()
    {
        using var scratch = new Scratch();
        string[] line = ["doubt", Saloon, "--samples", "400", "--seed", "3", "--road", "village-hump", "--speed", "40 km/h"];
        var said = Spoken.Of([.. line, "--figure", scratch["doubt.svg"]]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Contains("that the rear is really the softer end.", said.Results);
        Assert.Contains("next: it makes ", said.Results);
        Assert.Equal(["doubt.svg"], scratch.Contents);
        Assert.Equal(Spoken.Of(line).Results, Spoken.Of(line).Results);
        var json = new AnswerJson(Spoken.Of([.. line, "--json"]));
        Assert.InRange(json.Value("front-frequency"), json.Value("front-frequency", column: 1), json.Value("front-frequency", column: 3));
    }

    [Fact]
    public void A_car_without_doubts_is_told_how_to_write_them()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["car.yaml"], StraightCar.Text);
        var said = Spoken.Of("doubt", scratch["car.yaml"], "--samples", "10");
        Assert.Equal(0, said.Code);
        Assert.Contains("states no doubts", said.Results);
    }

    [Theory]
    [InlineData("describe", Saloon, "--load", "driver")]
    [InlineData("compare", Saloon, "examples/garage/fern-saloon-cured.yaml")]
    [InlineData("ride", Saloon, "examples/garage/fern-saloon-cured.yaml", "--speed", "60 km/h")]
    public void Other_commands_give_intervals_when_asked(params string[] line)
    {
        var plain = Spoken.Of(line);
        Assert.Equal((0, ""), (plain.Code, plain.Remarks));
        Assert.DoesNotContain("within the doubts", plain.Results);
        string[] asked = [.. line, "--doubt", "--samples", "12", "--seed", "7"];
        var said = Spoken.Of(asked);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Contains("within the doubts", said.Results);
        Assert.Contains("12 draws within the stated doubts, seed 7", said.Results);
        Assert.Equal(line.Length > 4 || line[0] == "compare", said.Results.Contains("change to Fern saloon, cured", StringComparison.Ordinal));
        Assert.Equal(said.Results, Spoken.Of(asked).Results);
    }
}
