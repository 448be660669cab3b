using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Heaveline.Tests.Cli;

public class JsonTests
{
    [Theory]
    [InlineData("describe examples/garage/fern-saloon.yaml --modes")]
    [InlineData("describe examples/garage/pebble-fluid-car.yaml")]
    [InlineData("describe examples/garage/plover-motorcycle.yaml")]
    [InlineData("pass examples/garage/fern-saloon.yaml --load driver --road plank-left --all")]
    [InlineData("road examples/roads/country-lane.yaml")]
    [InlineData("pass examples/garage/tarn-off-roader.yaml --road sine-roll --all")]
    [InlineData("compare examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --speed \"30 km/h, 60 km/h\" --all")]
    public void Json_holds_the_numbers_of_the_text_unrounded(string line)
    {
        var text = Spoken.Typed(line).Results.Split('\n');
        var at = 0;
        var seen = 0;
        foreach (var (label, unit, values) in new AnswerJson(Spoken.Typed(line + " --json")).Rows)
        {
            at = Array.FindIndex(text, at, l => Regex.IsMatch(l, $"^{Regex.Escape(label)}\\s+{Regex.Escape(unit)}\\s"));
            Assert.True(at >= 0, $"The text has no row '{label}' in {unit}.");
            var cells = Regex.Split(text[at++].Trim(), @"\s{2,}")[^values.Length..];
            for (var k = 0; k < values.Length; k++)
            {
                if (values[k] is not { } value)
                {
                    Assert.Equal("–", cells[k]);
                    continue;
                }

                var decimals = cells[k].Contains('.', StringComparison.Ordinal)
                    ? cells[k].Length - cells[k].IndexOf('.', StringComparison.Ordinal) - 1
                    : 0;
                Assert.Equal(value, double.Parse(cells[k].Replace('−', '-'), CultureInfo.InvariantCulture), 0.5000001 * Math.Pow(10.0, -decimals));
                seen++;
            }
        }

        Assert.True(seen > 5);
    }

    [Fact]
    public void Json_of_check_holds_the_place_of_every_remark()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["bad.yaml"], StraightCar.Text.Replace("wheelbase: 2.6 m", "wheelbase: 2.6", StringComparison.Ordinal));
        var said = Spoken.Of("check", scratch["bad.yaml"], "--json");
        Assert.Equal((1, ""), (said.Code, said.Remarks));
        var remark = Assert.Single(JsonNode.Parse(said.Results)!["remarks"]!.AsArray())!;
        Assert.Equal("refused", remark["kind"]!.GetValue<string>());
        Assert.Equal((3, 12), (remark["line"]!.GetValue<int>(), remark["column"]!.GetValue<int>()));
    }

    [Fact]
    public void Json_of_the_named_roads_holds_every_name()
    {
        var roads = JsonNode.Parse(Spoken.Of("road", "--json").Results)!["roads"]!.AsArray();
        Assert.Equal(Heaveline.Files.Roads.NamedRoads.All.Keys, roads.Select(r => r!["name"]!.GetValue<string>()));
    }
}
