using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>Every page at every width, in light and in dark: no machine finds fault with it, and nothing stands over its edge.</summary>
[Collection(AnotherProgram.Name)]
public class EveryPageTests(Served served)
{
    private const string Laden = "car=fern-saloon&load=four%20up%20with%20luggage";

    // What an address asks of a page, and what shows that it has answered.
    private static readonly Dictionary<string, (string Query, string Stands)> Shown = new(StringComparer.Ordinal)
    {
        ["/car"] = ($"?{Laden}", ".numbers"),
        ["/pass"] = ($"?{Laden}&road=village-hump&speed=40&rear-spring=120", "[data-beyond]"),
        ["/ride"] = ("?car=fern-saloon", ".pickable"),
        ["/road"] = ("?from=speed-table", "main figure"),
        ["/rule"] = ("?car=fern-saloon&load=driver", ".map .picture"),
        ["/report"] = ("?car=fern-saloon", "h1"),
        ["/story"] = ("", "#story-told"),
    };

    public static TheoryData<string> Paths => [.. PagePaths.All];

    [Theory]
    [MemberData(nameof(Paths))]
    public async Task No_machine_finds_fault_with_a_page_at_any_width_in_light_or_dark(string path)
    {
        var page = await Open(path);
        foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await page.EmulateMediaAsync(new() { ColorScheme = scheme });
            foreach (var width in new[] { 390, 1280, 2560 })
            {
                // Rules on names and structure say the same of both schemes.
                await Check(page, width, scheme == ColorScheme.Dark ? "color-contrast" : null);
            }
        }
    }

    [Theory]
    [InlineData("/pass")]
    [InlineData("/car")]
    [InlineData("/rule")]
    public async Task Nor_at_widths_between_in_forced_colours_or_twice_as_large(string path)
    {
        var page = await Open(path);
        foreach (var width in new[] { 768, 1920 })
        {
            await Check(page, width);
        }

        await page.EmulateMediaAsync(new() { ForcedColors = ForcedColors.Active, ReducedMotion = ReducedMotion.NoPreference });
        await Check(page, 1280);
        // A window of 1280 pixels at 200 % has 640 of the page's own [WCAG 2.2, 1.4.4]; one of 780 has 390.
        await page.EmulateMediaAsync(new() { ForcedColors = ForcedColors.None });
        await Check(page, 640);
    }

    [Fact]
    public async Task A_name_longer_than_a_line_goes_on_in_the_next_one()
    {
        var name = string.Concat(Enumerable.Repeat("Longwoodfordshire", 7));
        var text = await File.ReadAllTextAsync(
            Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"), TestContext.Current.CancellationToken);
        var file = Path.Combine(served.Garage, $"{name}.yaml");
        await File.WriteAllTextAsync(
            file, text.Replace("car: Fern saloon", $"car: {name}", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        try
        {
            foreach (var asked in new[] { "", $"car?car={name}", $"pass?car={name}&rear-spring=48", $"ride?car={name}", $"pass?pins={name}" })
            {
                var page = await served.Open("/" + asked, 390);
                await page.Awake();
                await Expect(page.Locator("main")).ToContainTextAsync(name);
                Assert.Equal(390, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
            }
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static async Task Check(IPage page, int width, string? rule = null)
    {
        await page.SetViewportSizeAsync(width, 900);
        await page.EvaluateAsync("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
        await Accessible.Check(page, frames: false, rule);
        Assert.True(
            await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth") <= 0,
            $"it stands over its edge at {width} pixels: "
            + await page.EvaluateAsync<string>(
                "() => [...document.querySelectorAll('main *')]"
                + ".filter(one => one.getBoundingClientRect().right > document.documentElement.clientWidth + 1)"
                + ".slice(-3).map(one => one.outerHTML.slice(0, 120)).join(' … ')"));
    }

    private async Task<IPage> Open(string path)
    {
        var (query, stands) = Shown.GetValueOrDefault(path, ("", "h1"));
        var page = await served.Open(path + query);
        if (path != "/phone")
        {
            await page.Awake();
        }

        await Expect(page.Locator(stands).First).ToBeAttachedAsync(new() { Timeout = 60_000 });
        return page;
    }
}
