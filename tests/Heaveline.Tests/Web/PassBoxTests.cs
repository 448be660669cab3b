using System.Text.Json.Nodes;
using Bunit;
using Heaveline.Tests.House;
using Heaveline.Web.Frame;
using Heaveline.Web.Host;
using Heaveline.Web.Pages;
using Heaveline.Web.Pages.Cars;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Heaveline.Tests.Web;

/// <summary>Numbers typed into the boxes of the pass, and words of pages that a reader acts on.</summary>
public sealed class PassBoxTests : BunitContext
{
    public PassBoxTests()
    {
        PageHost.AddPages(Services, new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    // 1 mile = 1.609344 km and 1 lbf/in = 0.45359237 × 9.80665 / 0.0254 N/m (international yard and pound, 1959; CGPM 1901).
    [Theory]
    [InlineData("speed", "40,5", "speed=40.5")]
    [InlineData("speed", "20 mph", "speed=32.18688")]
    [InlineData("speed", " 63 km/h ", "speed=63")]
    [InlineData("front-spring", "100 lbf/in", "front-spring=17.51268")]
    [InlineData("wheelbase", "2,65 m", "wheelbase=2650")]
    [InlineData("front-damping", "1,25", "front-damping=1.25")]
    [InlineData("height", "2 3/4 in", "height=69.85")]
    [InlineData("front-stop", "2¾ in", "front-stop=69.85")]
    public async Task A_box_of_the_pass_takes_a_decimal_comma_and_a_unit_of_its_own(string key, string typed, string said)
    {
        var page = Pass();
        var frame = await page.InvokeAsync(() => page.Instance.Commit(key, typed));
        Assert.Null(Refusal(frame));
        Assert.Contains(said, Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("speed", "20 kg", "must be a number alone, or with a unit that fits. Units that fit: km/h")]
    [InlineData("speed", "fast", "must be a number. ")]
    [InlineData("speed", "1,320", "write 1320 or 1.320")]
    [InlineData("speed", "40 km/h ± 5", "must be a number alone, or with a unit that fits. Write the value alone")]
    [InlineData("front-damping", "1.2 kg", "Write a number alone")]
    public async Task What_no_box_can_turn_into_its_unit_is_refused_with_a_way_out(string key, string typed, string words)
    {
        var page = Pass();
        var frame = await page.InvokeAsync(() => page.Instance.Commit(key, typed));
        Assert.Contains(words, Refusal(frame), StringComparison.Ordinal);
        Assert.DoesNotContain(key + "=", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal);
    }

    // 5 in = 127 mm; 20 mph and 20.7 N/mm by the same definitions as above.
    [Theory]
    [InlineData("speed", "20", "speed=32.18688")]
    [InlineData("speed", "63 km/h", "speed=63")]
    [InlineData("height", "5", "height=127")]
    [InlineData("front-spring", "100", "front-spring=17.51268")]
    [InlineData("front-spring", "118.2", null)]
    [InlineData("front-spring", "22 N/mm", "front-spring=22")]
    [InlineData("front-damping", "1.25", "front-damping=1.25")]
    public async Task Sliders_stand_in_the_units_of_a_reader_of_imperial_ones(string key, string typed, string? said)
    {
        var own = Directory.CreateTempSubdirectory("heaveline-imperial-").FullName;
        try
        {
            File.Copy(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"), Path.Combine(own, "fern-saloon.yaml"));
            await File.WriteAllTextAsync(Path.Combine(own, "garage.yaml"), "units: imperial\n", Xunit.TestContext.Current.CancellationToken);
            await using var others = new BunitContext();
            PageHost.AddPages(others.Services, new ServeOptions { Garage = own });
            others.SetRendererInfo(new RendererInfo("Server", isInteractive: true));
            others.JSInterop.Mode = JSRuntimeMode.Loose;
            var addresses = others.Services.GetRequiredService<NavigationManager>();
            addresses.NavigateTo("/pass?car=fern-saloon");
            var page = others.Render<PassPage>();
            Assert.Equal("lbf/in", page.Find("#slide-front-spring").GetAttribute("data-unit"));
            Assert.Equal("118.2", page.Find("#exact-front-spring").GetAttribute("value"));
            Assert.Equal("24.855", page.Find("#exact-speed").GetAttribute("value"));
            var frame = await page.InvokeAsync(() => page.Instance.Commit(key, typed));
            Assert.Null(Refusal(frame));
            Assert.Contains(said ?? "car=fern-saloon", addresses.Uri, StringComparison.Ordinal);
            Assert.Equal(said is not null, addresses.Uri.Contains(key + "=", StringComparison.Ordinal));
            Assert.Contains("in", Refusal(await page.InvokeAsync(() => page.Instance.Commit("wheelbase", "5"))), StringComparison.Ordinal);
            var foreign = Refusal(await page.InvokeAsync(() => page.Instance.Commit("front-spring", "50 mm")));
            Assert.Contains("“50 mm”", foreign, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(own, recursive: true);
        }
    }

    [Fact]
    public void Without_numbers_the_car_page_says_when_they_come() => Assert.Equal(
        "Numbers appear when every refusal is mended.",
        Render<CarNumbersView>(view => view.Add(v => v.Numbers, null).Add(v => v.IsRefused, true)).Find(".doubtful").TextContent);

    [Fact]
    public void A_program_that_has_stopped_is_started_as_it_was_started()
    {
        var words = Render<LostTouch>().Find(".stopped").TextContent;
        Assert.Contains("./run serve", words, StringComparison.Ordinal);
        Assert.Contains("heaveline serve", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Dampers_driven_past_their_tables_are_told_on_the_page()
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo("/pass?car=fern-saloon&road=pothole-left&speed=50");
        Assert.Contains(
            Render<PassPage>().FindAll("p.doubtful"),
            told => told.TextContent.Contains("past the end of its table at 1 m/s", StringComparison.Ordinal));
    }

    private static string? Refusal(PassFrame frame) => (string?)JsonNode.Parse(frame.Structure)!["refused"];

    private IRenderedComponent<PassPage> Pass()
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo("/pass?car=fern-saloon");
        return Render<PassPage>();
    }
}
