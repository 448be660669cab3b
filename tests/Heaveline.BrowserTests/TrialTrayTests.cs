using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Heaveline.BrowserTests;

/// <summary>The tray of pinned trials in a browser.</summary>
[Collection(OneProgram.Name)]
public class TrialTrayTests(Served served)
{
    private const string Fern = "/pass?car=fern-saloon&load=four%20up%20with%20luggage";

    [Fact]
    public async Task Trials_are_pinned_by_keyboard_and_go_along_to_the_other_pages_and_back()
    {
        var page = await Open(Fern + "&rear-spring=50");
        await Keys.TabTo(page, "#pin");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".pins dl")).ToHaveCountAsync(1);
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("pins=rear-spring_50"));
        await page.Locator("#all-described").ClickAsync();
        await page.Locator("#pin").ClickAsync();
        await Assertions.Expect(page.Locator(".pins dl")).ToHaveCountAsync(2);
        await page.GetByRole(AriaRole.Link, new() { Name = "The rule", Exact = true }).ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/rule[?].*pins=rear-spring_50~~described"));
        await page.GetByRole(AriaRole.Link, new() { Name = "The pass", Exact = true }).ClickAsync();
        // Their numbers come after whatever the page of the rule had begun.
        await Assertions.Expect(page.Locator(".pins li")).ToHaveCountAsync(2);
        await Assertions.Expect(page.Locator(".pins dl")).ToHaveCountAsync(2, new() { Timeout = 90_000 });
        await Keys.TabTo(page, ".pins [aria-label='take it into the sliders: A']");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".pins li").First).ToHaveAttributeAsync("aria-current", "true");
        await Assertions.Expect(page.Locator(".finding")).ToContainTextAsync("nodding");
    }

    [Fact]
    public async Task A_load_of_the_row_is_taken_and_trials_are_compared_over_speeds()
    {
        var page = await Open(Fern + "&pins=described~~rear-spring_50");
        await Assertions.Expect(page.Locator(".tray-loads button[aria-pressed=true] .load-name")).ToHaveTextAsync("four up with luggage");
        await page.Locator(".tray-loads button").First.ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("load=driver(&|$)"));
        await Assertions.Expect(page.Locator("#tray")).ToHaveAttributeAsync("aria-busy", "false");
        await page.Locator("#over-speeds").ClickAsync();
        await Assertions.Expect(page.Locator(".trial-speeds figcaption")).ToContainTextAsync(
            "Most RMS pitch of the speeds drawn: A, as described", new() { Timeout = 90_000 });
    }

    [Fact]
    public async Task On_a_phone_nothing_hangs_over_the_edge_and_the_engine_finds_nothing()
    {
        var page = await Open(Fern + "&pins=described~~rear-damping_1.5~rear-spring_50~~rear-damping_1.5");
        await Assertions.Expect(page.Locator(".pins dl")).ToHaveCountAsync(3);
        await Accessible.Check(page);
        await page.SetViewportSizeAsync(390, 844);
        await page.Locator("#tray").ScrollIntoViewIfNeededAsync();
        Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"));
        await Accessible.Check(page);
    }

    private async Task<IPage> Open(string address)
    {
        var page = await served.Open(address);
        await Assertions.Expect(page.Locator(".tray-loads button").First).ToBeVisibleAsync();
        return page;
    }
}
