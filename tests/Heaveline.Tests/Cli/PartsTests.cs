using System.Text.Json.Nodes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

public class PartsTests
{
    private static readonly string List = Path.Combine(Checkout.Root, "examples", "parts", "village-autumn.yaml");
    private static readonly string Saloon = Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon-measured.yaml");

    [Fact]
    public void Each_place_is_told_what_fits_and_why_the_rest_does_not()
    {
        var said = Spoken.Of("parts", "check", List, "--car", Saloon);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Contains(
            "8 springs, 3 dampers (11 settings), 2 bars (4 settings), 2 stops (3 settings), 1 tyre, 1 link", said.Results, StringComparison.Ordinal);
        Assert.Contains("Wren W3 at clicks 2 to 10 at 2 × 148 EUR = 296 EUR", said.Results, StringComparison.Ordinal);
        Assert.Contains("Larch R-520 does not fit as rear spring: its coils touch at", said.Results, StringComparison.Ordinal);
        Assert.Contains("Larch R-600 does not fit as rear spring: it reaches", said.Results, StringComparison.Ordinal);
        Assert.Contains("Finch F1 does not fit as front damper: its stroke is 180 mm", said.Results, StringComparison.Ordinal);
        Assert.Contains("no proof of safety", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_holds_every_option_with_its_cost_and_every_misfit_with_its_numbers()
    {
        var answer = JsonNode.Parse(Spoken.Of("parts", "check", List, "--car", Saloon, "--json").Results)!;
        Assert.Equal("parts", (string)answer["command"]!);
        Assert.Equal(17, answer["parts"]!.AsArray().Count);
        var rear = answer["places"]!.AsArray().Single(place => (string)place!["place"]! == "rear spring")!["options"]!.AsArray();
        var good = rear.Single(option => (string)option!["part"]! == "Larch R-480")!;
        Assert.True((bool)good["fits"]!);
        Assert.Equal(168m, (decimal)good["cost"]!);
        var bad = Assert.Single(rear.Single(option => (string)option!["part"]! == "Larch R-520")!["misfits"]!.AsArray())!;
        Assert.Equal("CoilsTouch", (string)bad["kind"]!);
        Assert.True((double)bad["value-si"]! < (double)bad["limit-si"]!);
        var dampers = answer["places"]!.AsArray().Single(place => (string)place!["place"]! == "rear damper")!["options"]!.AsArray();
        Assert.Equal(9, dampers.Count(option => ((string)option!["part"]!).StartsWith("Wren W3", StringComparison.Ordinal)));
    }

    [Fact]
    public void Without_a_car_the_list_alone_is_told_and_slips_go_beside_it()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["list.csv"], "part, rate [N/mm], price [EUR]\none, 20, 80\ntwo, 210, 80\nthree, 22, 80\n");
        var said = Spoken.Of("parts", "check", scratch["list.csv"]);
        Assert.Equal(0, said.Code);
        Assert.Contains("two has 210 N/mm, ten times those beside it", said.Remarks, StringComparison.Ordinal);
        Assert.StartsWith("list: 3 springs; prices in EUR.", said.Results, StringComparison.Ordinal);
        Assert.DoesNotContain("does not fit", said.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void A_refused_list_and_a_refused_car_are_exit_code_1()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["list.yaml"], "parts: none\n");
        Assert.Equal(1, Spoken.Of("parts", "check", scratch["list.yaml"]).Code);
        Assert.Equal(1, Spoken.Of("parts", "check", scratch["missing.yaml"]).Code);
        Assert.Equal(1, Spoken.Of("parts", "check", List, "--car", scratch["list.yaml"]).Code);
        Assert.Equal(0, Spoken.Of("check", List).Code);
    }
}
