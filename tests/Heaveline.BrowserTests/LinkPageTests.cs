using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>What joining front and rear does, as a page.</summary>
[Collection(OneProgram.Name)]
public class LinkPageTests(Served served)
{
    private const string Pebble = "/link?car=pebble-fluid-car&load=driver&speed=30";

    // Passes on a busy machine.
    private const float Long = 120_000;

    [Fact]
    public async Task The_finding_and_the_price_stand_before_the_figures_and_all_can_be_taken_away()
    {
        var page = await Shown(Pebble);
        await Expect(page.Locator("h1")).ToContainTextAsync("Pebble");
        await Expect(page.Locator(".says [data-id=shares]")).ToContainTextAsync("The link carries");
        await Expect(page.Locator(".says [data-id=price]")).ToContainTextAsync("of braking the body pitches by");
        await Expect(page.Locator("#traces h2")).ToContainTextAsync("30 km/h");
        await Expect(page.Locator("#traces .picture").First).ToBeVisibleAsync(new() { Timeout = Long });
        await Expect(page.GetByText("pitch stiffness").First).ToBeVisibleAsync();
        // A pipe has neither spring nor damper to type.
        await Expect(page.Locator("#link")).ToHaveCountAsync(0);
        foreach (var (ending, begins) in new[] { ("svg", "<?xml"), ("json", "{"), ("csv", "car,quantity,unit,") })
        {
            var address = await page.Locator($"#bench .downloads a[href*='link.{ending}']").GetAttributeAsync("href");
            var answer = await page.APIRequest.GetAsync(new Uri(new Uri(page.Url), address).ToString());
            Assert.True(answer.Ok, await answer.TextAsync());
            Assert.StartsWith(begins, (await answer.TextAsync()).TrimStart('\uFEFF'), StringComparison.Ordinal);
        }

        await Accessible.Check(page);
    }

    [Fact]
    public async Task A_link_is_put_on_a_car_without_one_by_keyboard_and_taken_into_the_trial_on_the_pass()
    {
        var page = await served.Open("/link?car=fern-saloon&load=driver&road=speed-table&speed=30");
        await page.Awake();
        await Expect(page.Locator("#none h2")).ToHaveTextAsync("Fern saloon has no interconnection");
        await Accessible.Check(page);
        await page.Locator("#try-link").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".says [data-id=price]")).ToContainTextAsync("the link's price is", new() { Timeout = Long });
        await Expect(page.Locator("#link")).ToHaveValueAsync("6");
        await page.Locator("#link").FillAsync("40 lbf/in");
        await page.Locator("#link").PressAsync("Enter");
        await Expect(page.Locator("#link")).ToHaveValueAsync("7.0051", new() { Timeout = Long });
        await Expect(page.Locator(".tried")).ToHaveTextAsync(new System.Text.RegularExpressions.Regex("1 setting tried\\s+as described"));
        await page.Locator("#take-along").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/pass\\?.*road=speed-table.*speed=30.*link=7\\.0051"));
        await Expect(page.Locator("#exact-link")).ToHaveValueAsync(new System.Text.RegularExpressions.Regex("^7"), new() { Timeout = Long });
    }

    [Theory, InlineData(390), InlineData(1280), InlineData(1920)]
    public async Task Nothing_runs_over_the_edge(int width)
    {
        var page = await Shown(Pebble);
        await page.SetViewportSizeAsync(width, 900);
        await Expect(page.Locator("#traces .picture").First).ToBeVisibleAsync(new() { Timeout = Long });
        Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"));
    }

    private async Task<IPage> Shown(string address)
    {
        var page = await served.Open(address);
        await Expect(page.Locator(".says [data-id=shares]")).ToBeVisibleAsync(new() { Timeout = Long });
        return page;
    }
}
