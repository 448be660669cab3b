namespace Heaveline.Tests.Cli;

public class CostAndLinkTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";
    private const string Cured = "examples/garage/fern-saloon-cured.yaml";

    [Fact]
    public void Cost_sets_before_and_after_side_by_side_and_reminds()
    {
        var said = Spoken.Of("cost", Saloon, Cured, "--load", "four up with luggage");
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Contains("roll in a bend, per g", said.Results);
        Assert.Contains("not law", said.Results);
        Assert.Contains("brake balance", said.Results);
        Assert.Contains("compressed spring", said.Results);
        // The cure stiffens the rear: its tail sinks less under the same load.
        var numbers = new SaidJson(Spoken.Of("cost", Saloon, Cured, "--load", "four up with luggage", "--json"));
        Assert.True(numbers.Value("rear-left-sag", column: 1) < numbers.Value("rear-left-sag", column: 0));
    }

    [Fact]
    public void Cost_of_one_car_has_no_reminders_of_a_change()
    {
        var said = Spoken.Of("cost", Saloon);
        Assert.Equal(0, said.Code);
        Assert.DoesNotContain("Changed springs: see", said.Results);
    }

    [Fact]
    public void Link_shows_the_bench_or_says_that_there_is_none()
    {
        var said = Spoken.Of("link", "examples/garage/pebble-fluid-car.yaml");
        Assert.Equal(0, said.Code);
        Assert.Contains("line shut (fast changes)", said.Results);
        Assert.Contains("mass of the fluid felt at the wheel", said.Results);
        var none = Spoken.Of("link", Saloon);
        Assert.Equal(1, none.Code);
        Assert.Contains("no interconnection", none.Remarks);
    }
}
