using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>Quantities typed as they stand on a box, a tape or a speedometer.</summary>
[Collection(AnotherProgram.Name)]
public class WholeQuantityTests(Served served)
{
    private const string Rate = "#f-front--spring--rate";

    [Fact]
    public async Task A_rate_as_it_stands_on_the_springs_box_is_taken_with_its_unit()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address("car front front/spring"));
        await page.Locator(Rate).FillAsync("");
        await page.Locator(Rate).PressSequentiallyAsync("160 lbf/in");
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.Locator(Rate)).ToHaveValueAsync("160");
        await Expect(page.GetByLabel("front spring rate: unit", new() { Exact = true })).ToHaveValueAsync("lbf/in");
        await Expect(page.Locator(Rate + "-said")).ToHaveCountAsync(0);

        // A tape's fraction, and a unit chosen after the number.
        await page.Locator("#f-wheelbase").FillAsync("106 3/4 in");
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.Locator("#f-wheelbase")).ToHaveValueAsync("106.75");
        await page.Locator(Rate).FillAsync("130");
        await page.GetByLabel("front spring rate: unit", new() { Exact = true }).SelectOptionAsync("N/mm");
        await Expect(page.Locator(Rate)).ToHaveValueAsync("130");
        await page.GetByLabel("front spring rate: unit", new() { Exact = true }).SelectOptionAsync("lbf/in");
        await Expect(page.Locator(Rate)).ToHaveValueAsync("130");
        await page.Locator(".keeping button").First.ClickAsync();
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("Saved");
        Assert.Contains("rate: 130 lbf/in ± 4 %", car.Text, StringComparison.Ordinal);
        Assert.Contains("wheelbase: 106.75 in ± 5 mm", car.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_refused_is_told_as_it_was_typed()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address("front front/spring"));
        await page.Locator(Rate).FillAsync("160 furlongs");
        await Expect(page.Locator(Rate + "-said")).ToContainTextAsync("furlongs is not a unit known here");
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.Locator(Rate)).ToHaveValueAsync("160 furlongs");
    }

    [Fact]
    public async Task Boxes_of_the_pass_the_rule_and_the_report_take_them_too()
    {
        var page = await Open("/pass?car=fern-saloon", live: ".sliders");
        // The first picture stands when the moment has been written beside it.
        await Expect(page.Locator("[data-time]")).Not.ToHaveTextAsync("", new() { Timeout = 20000 });
        await page.Locator("#exact-speed").FillAsync("25 mph");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page).ToHaveURLAsync(new Regex("speed=40.2336"));
        await page.Locator("#exact-front-spring").FillAsync("118 lbf/in");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page).ToHaveURLAsync(new Regex("front-spring=20.66"));
        await page.GotoAsync("/ride?car=fern-saloon");
        await page.Awake();
        await page.Locator("#at").FillAsync("50 mph");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#at")).ToHaveValueAsync("80.467");
        await page.GotoAsync("/report?car=fern-saloon");
        await page.Awake();
        await page.Locator("#speed").FillAsync("45");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#speed")).ToHaveValueAsync("45 km/h");
        await page.Locator("#speeds").FillAsync("20, 30 mph");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#speeds")).ToHaveValueAsync("20 mph, 30 mph");
    }

    private async Task<IPage> Open(string path, string live = "[data-live=yes]")
    {
        var page = await served.Open(path);
        await Expect(page.Locator(live).First).ToBeAttachedAsync(new() { Timeout = 20000 });
        return page;
    }
}
