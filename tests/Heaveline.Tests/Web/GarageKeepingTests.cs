using Bunit;
using Heaveline.Cli.Commands;
using Heaveline.Tests.Files;
using Heaveline.Web.Host;
using Heaveline.Web.Pages;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Heaveline.Tests.Web;

/// <summary>The garage as a place to work: finding, renaming, copying and taking out its files.</summary>
public sealed class GarageKeepingTests : BunitContext
{
    private readonly TemporaryFolder folder = new();

    public GarageKeepingTests()
    {
        folder.Write("fern.yaml", TextCar.Sound.Replace("Test car", "Fern saloon", StringComparison.Ordinal));
        folder.Write(
            "fern-soft.yaml", "variant: soft\nnote: from the parts list\nof: fern.yaml\nchange: {body: {centre-of-gravity-height: 0.60 m}}\n");
        folder.Write("plover.yaml", TextCar.Sound.Replace("Test car", "Plover van", StringComparison.Ordinal));
        folder.Write("hump.yaml", "road: our hump\nround-top-hump: {height: 75 mm, length: 3.7 m}\n");
        PageHost.AddPages(Services, new ServeOptions { Garage = folder.Root, Numbers = new GarageNumbers() });
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    private string Address => Services.GetRequiredService<NavigationManager>().Uri;

    [Theory]
    [InlineData("plover", "Plover van", "1 of 14 found: 1 car.")]
    [InlineData("PLOVER van", "Plover van", "1 of 14 found: 1 car.")]
    [InlineData("parts list", "Fern saloon|soft", "1 of 14 found: 1 variant.")]
    [InlineData("fern", "Fern saloon|soft", "2 of 14 found: 1 car, 1 variant.")]
    [InlineData("fern variant", "Fern saloon|soft", "1 of 14 found: 1 variant.")]
    [InlineData("our road", "", "1 of 14 found: 1 road.")]
    [InlineData("nothing like it", "", "Nothing is found.")]
    public void What_is_looked_for_is_found_by_name_kind_and_note(string words, string titles, string count)
    {
        var page = Render<GaragePage>();
        var all = 4 + Heaveline.Files.Roads.NamedRoads.All.Count;
        page.Find("#find").Input(words);
        Assert.Contains("find=" + Uri.EscapeDataString(words), Address, StringComparison.Ordinal);
        Assert.Equal(titles, string.Join('|', page.FindAll(".cars .title").Select(one => one.TextContent)));
        Assert.StartsWith(count.Replace("14", $"{all}", StringComparison.Ordinal), page.Find("#found").TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("mass at least 1 kg", "Fern saloon|soft|Plover van", "3 of 14 found: 2 cars, 1 variant.")]
    [InlineData("fern, mass at least 1 kg", "Fern saloon|soft", "2 of 14 found: 1 car, 1 variant.")]
    [InlineData("mass at least 99000 kg", "", "Nothing is found.")]
    [InlineData("mass at least 1", "Fern saloon|soft|Plover van", "'1' is not how the")]
    [InlineData("fern ratoi at most 1", "Fern saloon|soft", "'ratoi' is no number that can be asked for here. Did you mean ratio?")]
    public void Cars_are_found_by_their_numbers_as_the_command_find_does_and_refused_in_its_words(string words, string titles, string said)
    {
        var page = Render<GaragePage>();
        var all = 4 + Heaveline.Files.Roads.NamedRoads.All.Count;
        page.Find("#find").Input(words);
        page.WaitForAssertion(() =>
        {
            Assert.StartsWith(said.Replace("14", $"{all}", StringComparison.Ordinal), page.Find("#found").TextContent, StringComparison.Ordinal);
            Assert.Equal(titles, string.Join('|', page.FindAll(".cars .title").Select(one => one.TextContent)));
        }, TimeSpan.FromSeconds(120));
        Assert.Equal(
            titles.Length > 0 && said.Contains("found:", StringComparison.Ordinal),
            page.FindAll(".cars .note").Any(note => note.TextContent.Contains("kg empty", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_car_is_renamed_and_its_variant_follows_and_what_is_in_hand_is_named_anew()
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo("/?car=fern");
        var page = Render<GaragePage>(parameters => parameters.AddCascadingValue(new Heaveline.Web.Tuning.CurrentCar { Car = "fern" }));
        Open(page, "Fern saloon", "Rename");
        Assert.Contains("soft names its file, and will name the new one.", page.Find(".file-acts .help").TextContent, StringComparison.Ordinal);
        page.FindAll(".file-acts input")[0].Input("Oak saloon");
        page.FindAll(".file-acts input")[1].Change("oak");
        page.Find(".file-acts form").Submit();
        Assert.Equal("Fern saloon is called Oak saloon (oak) now. What named its file names the new one: soft.", Said(page));
        Assert.Equal(["Oak saloon", "soft", "Plover van"], page.FindAll(".cars .title").Select(one => one.TextContent));
        Assert.Contains("of: oak.yaml", File.ReadAllText(Path.Combine(folder.Root, "fern-soft.yaml")), StringComparison.Ordinal);
        Assert.EndsWith("?car=oak", Address, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_that_is_taken_is_refused_beside_its_field()
    {
        var page = Render<GaragePage>();
        Open(page, "Fern saloon", "Rename");
        page.FindAll(".file-acts input")[1].Change("plover");
        page.Find(".file-acts form").Submit();
        Assert.StartsWith("There is a file plover.yaml already", page.Find(".file-acts .refused").TextContent, StringComparison.Ordinal);
        Assert.Equal("true", page.FindAll(".file-acts input")[1].GetAttribute("aria-invalid"));
        page.FindAll(".file-acts input")[1].Change("garage");
        page.Find(".file-acts form").Submit();
        Assert.StartsWith("In garage.yaml the garage remembers", page.Find(".file-acts .refused").TextContent, StringComparison.Ordinal);
        page.FindAll(".file-acts input")[1].Change("aux");
        page.Find(".file-acts form").Submit();
        Assert.Contains("the name of a device", page.Find(".file-acts .refused").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_leaves_with_its_variants_named_and_comes_back_as_it_was()
    {
        var before = File.ReadAllBytes(Path.Combine(folder.Root, "fern.yaml"));
        var page = Render<GaragePage>();
        Open(page, "Fern saloon", "Take out");
        Assert.Contains(
            "Fern saloon leaves the garage with its variant, which cannot stand without it: soft.",
            page.Find(".file-acts").TextContent,
            StringComparison.Ordinal);
        page.FindAll(".file-acts button").First(one => one.TextContent == "Take out all 2").Click();
        Assert.StartsWith("Fern saloon and its variant are out of the garage. Put", Said(page), StringComparison.Ordinal);
        Assert.Equal(["Plover van"], page.FindAll(".cars .title").Select(one => one.TextContent));
        Assert.Contains("Fern saloon, soft", page.Find(".taken-out li").TextContent, StringComparison.Ordinal);
        page.Find("#put-back").Click();
        Assert.StartsWith("All 2 are back as they were.", Said(page), StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(Path.Combine(folder.Root, "fern.yaml")));
        Assert.Empty(page.FindAll(".taken-out"));
    }

    [Fact]
    public void What_the_page_did_itself_is_no_news_of_the_disk_and_what_others_do_is()
    {
        var acts = new Heaveline.Web.Pages.Garages.OwnActs(folder.Root);
        File.Delete(Path.Combine(folder.Root, "plover.yaml"));
        acts.Remember(["plover.yaml", "fern.yaml"]);
        Assert.Equal((false, false, true), (acts.IsNews("plover.yaml"), acts.IsNews("fern.yaml"), acts.IsNews("hump.yaml")));
        folder.Write("plover.yaml", TextCar.Sound);
        Assert.True(acts.IsNews("plover.yaml"));
        File.Delete(Path.Combine(folder.Root, "plover.yaml"));
        Assert.True(acts.IsNews("plover.yaml"));
    }

    [Fact]
    public async Task A_rename_is_told_once_and_a_file_that_goes_is_told_as_gone()
    {
        var page = Render<GaragePage>();
        Open(page, "Plover van", "Rename");
        page.FindAll(".file-acts input")[1].Change("wader");
        page.Find(".file-acts form").Submit();
        await Task.Delay(TimeSpan.FromSeconds(1.5), Xunit.TestContext.Current.CancellationToken);
        Assert.Equal("", page.Find("#on-disk").TextContent);
        File.Delete(Path.Combine(folder.Root, "wader.yaml"));
        page.WaitForAssertion(
            () => Assert.StartsWith("wader.yaml: gone from the disk at ", page.Find("#on-disk").TextContent, StringComparison.Ordinal),
            TimeSpan.FromSeconds(120));
        Assert.DoesNotContain("as it is now", page.Find("#on-disk").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_taken_out_before_the_page_was_opened_is_put_back_from_the_list()
    {
        var first = Render<GaragePage>();
        Open(first, "our hump", "Take out");
        first.FindAll(".file-acts button").First(one => one.TextContent == "Take it out").Click();
        var page = Render<GaragePage>();
        page.Find(".taken-out button").Click();
        Assert.Equal("our hump is back as it was.", Said(page));
        Assert.True(File.Exists(Path.Combine(folder.Root, "hump.yaml")));
    }

    [Fact]
    public void Of_two_tabs_the_second_is_told_that_the_first_has_changed_what_it_shows()
    {
        const string Changed = "Plover.yaml was changed by somebody else meanwhile.";
        var one = Render<GaragePage>();
        var other = Render<GaragePage>();
        Open(one, "Plover van", "Take out");
        Open(other, "Plover van", "Rename");
        folder.Write("plover.yaml", TextCar.Sound + "# changed\n");
        one.FindAll(".file-acts button").First(button => button.TextContent == "Take it out").Click();
        Assert.StartsWith(Changed, one.Find(".file-acts .refused").TextContent, StringComparison.Ordinal);
        other.Find(".file-acts form").Submit();
        other.FindAll(".file-acts input")[1].Change("wader");
        other.Find(".file-acts form").Submit();
        Assert.StartsWith(Changed, other.Find(".file-acts .refused").TextContent, StringComparison.Ordinal);
        Assert.EndsWith("# changed\n", File.ReadAllText(Path.Combine(folder.Root, "plover.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_copy_and_a_new_car_are_made_from_one_that_stands_there()
    {
        var page = Render<GaragePage>();
        Open(page, "Plover van", "Copy");
        Assert.Equal("plover-van-copy.yaml", page.FindAll(".file-acts input")[1].GetAttribute("value"));
        page.Find(".file-acts form").Submit();
        Assert.Equal("Plover van, copy (plover-van-copy) stands in the garage now, a copy of Plover van.", Said(page));
        Open(page, "Plover van", "New car from this one");
        page.FindAll(".file-acts input")[0].Input("Wader");
        page.Find(".file-acts form").Submit();
        Assert.Contains("none of its values is measured yet", Said(page), StringComparison.Ordinal);
        Assert.Contains("# from Plover van, not measured", File.ReadAllText(Path.Combine(folder.Root, "wader.yaml")), StringComparison.Ordinal);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        folder.Dispose();
    }

    private static string Said(IRenderedComponent<GaragePage> page) => page.Find("#garage-said p").TextContent.Trim();

    private static void Open(IRenderedComponent<GaragePage> page, string title, string act)
    {
        page.FindAll("button").First(one => one.GetAttribute("aria-label") == $"its file: rename, copy or take out {title}").Click();
        page.FindAll(".file-acts button").First(one => one.TextContent == act).Click();
    }
}
