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
    public void Chosen_parts_are_counted_told_and_written_as_a_variant_that_can_be_driven()
    {
        using var scratch = new Scratch();
        foreach (var file in new[] { "fern-saloon.yaml", "fern-saloon-measured.yaml" })
        {
            File.Copy(Path.Combine(Checkout.Root, "examples", "garage", file), scratch[file]);
        }

        string[] line =
        [
            "parts", "fit", List, "--car", scratch["fern-saloon-measured.yaml"], "--put", "rear spring: Larch R-480", "--put",
            "rear damper: Wren W3 at click 6",
        ];
        var said = Spoken.Of([.. line, "--to", scratch["village-rear.yaml"]]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Contains("Rear spring: Larch R-480, 168 EUR.", said.Results, StringComparison.Ordinal);
        Assert.Contains("Together: 464 EUR.", said.Results, StringComparison.Ordinal);
        Assert.Contains("Larch R-480 needs its seats 2 mm lower", said.Results, StringComparison.Ordinal);
        Assert.Equal(0, Spoken.Of("check", scratch["village-rear.yaml"]).Code);
        Assert.Equal(0, Spoken.Of("cost", scratch["fern-saloon-measured.yaml"], scratch["village-rear.yaml"], "--samples", "10").Code);
        // What is there stays as it is.
        Assert.Equal(1, Spoken.Of([.. line, "--to", scratch["village-rear.yaml"]]).Code);
        Assert.Equal(2, Spoken.Of([.. line, "--to", Path.Combine(Path.GetTempPath(), "elsewhere.yaml")]).Code);
    }

    [Theory]
    [InlineData("rear spring: Larch R-520", 1, "its coils touch at")]
    [InlineData("rear spring: Larch R-48", 1, "Did you mean Larch R-480?")]
    [InlineData("raer spring: Larch R-480", 2, "Did you mean rear spring?")]
    [InlineData("Larch R-480", 2, "names no place before its colon")]
    [InlineData("rear damper: Wren W3 at click 11", 1, "the lists have no Wren W3 at click 11, but Wren W3 at click 2 to Wren W3 at click 10.")]
    [InlineData("rear damper: Wren W3", 1, "the lists have no Wren W3, but Wren W3 at click 2 to Wren W3 at click 10.")]
    [InlineData("front bar: Ash 19", 1, "the lists have no Ash 19, but Ash 19 at the inner hole")]
    [InlineData("front bar: Ash 19, inner", 1, "the lists have no Ash 19, inner, but Ash 19 at the inner hole")]
    [InlineData("rear spring: Finch F1", 1, "Finch F1 is a damper; there goes a spring.")]
    [InlineData("rear spring:", 2, "names no part behind its colon")]
    public void What_cannot_be_put_in_is_refused_with_the_reason(string put, int code, string words)
    {
        var said = Spoken.Of("parts", "fit", List, "--car", Saloon, "--put", put);
        Assert.Equal(code, said.Code);
        Assert.Contains(words, said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_parts_of_one_name_in_two_lists_are_refused_with_both_lists()
    {
        using var scratch = new Scratch();
        File.Copy(List, scratch["twice.yaml"]);
        var said = Spoken.Of("parts", "fit", List, scratch["twice.yaml"], "--car", Saloon, "--put", "rear spring: Larch R-480");
        Assert.Equal((1, ""), (said.Code, said.Results));
        Assert.Matches("Larch L-187 stands in .*village-autumn.yaml and in .*twice.yaml; a part's name must tell", said.Remarks);
    }

    [Fact]
    public void Parts_of_one_name_in_lists_of_two_names_are_put_in_by_the_name_that_the_choice_gives_them()
    {
        using var scratch = new Scratch();
        var list = File.ReadAllText(List).Replace("Village motor factors, autumn", "Winter list", StringComparison.Ordinal);
        File.WriteAllText(scratch["other.yaml"], list);
        string[] line = ["parts", "fit", List, scratch["other.yaml"], "--car", Saloon, "--put"];
        var said = Spoken.Of([.. line, "rear spring: Larch R-480 of 'Winter list'"]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Assert.Contains("Rear spring: Larch R-480 of 'Winter list', 168 EUR.", said.Results, StringComparison.Ordinal);
        Assert.Equal(1, Spoken.Of([.. line, "rear spring: Larch R-480"]).Code);
    }

    [Fact]
    public void Of_a_very_long_list_the_first_are_shown_with_a_word_and_the_file_of_numbers_has_all()
    {
        using var scratch = new Scratch();
        File.WriteAllText(
            scratch["long.csv"],
            "part, rate [N/mm], price [EUR]\n"
                + string.Concat(Enumerable.Range(1, 300).Select(i => FormattableString.Invariant($"s{i}, 30, 80\n"))));
        var said = Spoken.Of("parts", "check", scratch["long.csv"]);
        Assert.Contains("the first 40 of 300", said.Results, StringComparison.Ordinal);
        Assert.DoesNotContain("s41", said.Results, StringComparison.Ordinal);
        Assert.Equal(300, JsonNode.Parse(Spoken.Of("parts", "check", scratch["long.csv"], "--json").Results)!["parts"]!.AsArray().Count);
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
