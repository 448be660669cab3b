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
        var numbers = new AnswerJson(Spoken.Of("cost", Saloon, Cured, "--load", "four up with luggage", "--json"));
        Assert.True(numbers.Value("rear-left-sag", column: 1) < numbers.Value("rear-left-sag", column: 0));
    }

    // The same weighbridge and springs stand under both cars: the change is surer than either.
    [Fact]
    public void Cost_gives_each_number_and_each_change_its_interval()
    {
        string[] line = ["cost", Saloon, Cured, "--load", "four up with luggage", "--samples", "300", "--seed", "5"];
        var said = Spoken.Of(line);
        Assert.Contains("300 draws within the stated doubts, seed 5", said.Results);
        Assert.Contains("Side effects, change to Fern saloon, cured", said.Results);
        Assert.Equal(said.Results, Spoken.Of(line).Results);
        var json = new AnswerJson(Spoken.Of([.. line, "--json"]));
        Assert.Equal((300, 5), (json.Root["samples"]!.GetValue<int>(), json.Root["seed"]!.GetValue<int>()));
        foreach (var key in new[] { "roll-per-g", "braking-pitch-per-g", "rear-left-height", "lamp-drop" })
        {
            double At(int column, int table = 1) => json.Value(key, table, column);
            Assert.Equal(json.Value(key, 0, 0), At(0));
            Assert.InRange(At(0), At(1), At(2));
            Assert.InRange(At(3), At(4), At(5));
            Assert.Equal(At(3) - At(0), At(0, 2), 1e-9);
            Assert.InRange(At(0, 2), At(1, 2), At(2, 2));
            Assert.True(At(2, 2) - At(1, 2) < 0.7 * (At(2) - At(1)), key);
        }
    }

    [Fact]
    public void Cost_of_a_car_without_stated_doubts_has_no_intervals()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["car.yaml"], StraightCar.Text);
        Assert.DoesNotContain("within the doubts", Spoken.Of("cost", scratch["car.yaml"]).Results);
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
