namespace Heaveline.Tests.Cli;

public class ShortPrintTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";

    [Theory]
    [InlineData($"pass {Saloon}", 10)]
    [InlineData($"pass {Saloon} --road sine-heave", 10)]
    [InlineData("pass examples/garage/plover-motorcycle.yaml", 10)]
    [InlineData($"compare {Saloon} examples/garage/fern-saloon-cured.yaml", 10)]
    [InlineData($"cost {Saloon}", 10)]
    [InlineData($"ride {Saloon}", 10)]
    public void A_printout_has_at_most_ten_rows_a_table_and_says_how_to_have_them_all(string line, int most)
    {
        var (few, all) = (Spoken.Typed(line), Spoken.Typed(line + " --all"));
        var told = few.Results.Split('\n').Single(l => l.EndsWith("rows, those that matter most; all with --all.", StringComparison.Ordinal));
        string[] counts = told.Split(' ');
        Assert.InRange(int.Parse(counts[0], null), 5, most);
        Assert.DoesNotContain("--all", all.Results);
        // Each row of the short one, its widths aside, stands in the whole one where rows of worst seat and axle have their own names there.
        Assert.True(all.Results.Split('\n').Length > few.Results.Split('\n').Length);
        // What machines read is never shortened.
        Assert.Equal(Spoken.Typed(line + " --json").Results, Spoken.Typed(line + " --all --json").Results);
    }

    [Fact]
    public void The_worst_seat_and_the_worse_wheel_are_the_worst_of_the_whole_table()
    {
        var (few, all) = (Rows($"pass {Saloon}"), Rows($"pass {Saloon} --all"));
        double Worst(string what, bool most) =>
            all.Where(r => r.Key.EndsWith(what, StringComparison.Ordinal)).Select(r => r.Value) is var values && most ? values.Max() : values.Min();
        Assert.Equal(Worst(": greatest vertical", most: true), few["worst seat (rear right): greatest vertical"]);
        Assert.Equal(
            Worst(": left to the bump stop", most: false),
            Math.Min(few["front wheels: left to the bump stop"], few["rear wheels: left to the bump stop"]));
        Assert.Equal(
            Worst(": least tyre load", most: false), Math.Min(few["front wheels: least tyre load"], few["rear wheels: least tyre load"]));
    }

    private static Dictionary<string, double> Rows(string line) => Spoken.Typed(line).Results.Split('\n')
        .Select(l => l.Split("  ", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        .Where(cells => cells.Length == 3 && double.TryParse(cells[2].Replace('−', '-'), System.Globalization.CultureInfo.InvariantCulture, out _))
        .ToDictionary(cells => cells[0], cells => double.Parse(cells[2].Replace('−', '-'), System.Globalization.CultureInfo.InvariantCulture));
}
