using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Heaveline.BrowserTests.PassPageTests;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

[Collection(OneProgram.Name)]
public class PassCureTests(Served served)
{
    // All cures on a machine that others keep busy.
    private const float Long = 240_000;

    private const string Saloon = "/pass?car=fern-saloon&load=four%20up%20with%20luggage&road=village-hump";

    [Fact]
    public async Task A_cure_pressed_sets_the_sliders_and_pressed_again_takes_itself_back()
    {
        var page = await Looked(Saloon);
        var numbers = page.Locator("tr[data-measure=settling-rms-pitch] td");
        await Expect(numbers).ToHaveCountAsync(1);
        var described = await numbers.First.InnerTextAsync();
        var cure = page.Locator("[data-cure='stronger rear damping']");
        var change = Regex.Match(await cure.Locator(".number").InnerTextAsync(), @"^from (\S+)° to (\S+)°, \d+ % less$");
        Assert.True(change.Success);
        Assert.Equal(described, change.Groups[1].Value);

        await cure.ClickAsync();
        await Expect(cure).ToHaveAttributeAsync("aria-pressed", "true");
        var value = Regex.Match(await cure.InnerTextAsync(), @"([\d.]+) × described").Groups[1].Value;
        await Expect(page.Locator("#exact-rear-damping")).ToHaveValueAsync(value);
        Assert.Contains($"rear-damping={value}", page.Url, StringComparison.Ordinal);
        await Expect(numbers).ToHaveCountAsync(3);
        await Expect(numbers.Nth(1)).ToHaveTextAsync(change.Groups[2].Value);
        await Expect(page.Locator(".finding")).ToContainTextAsync($"{change.Groups[2].Value}°");

        // Another takes its place, and does not come on top of it.
        var other = page.Locator("[data-cure='more rear bump-stop clearance']");
        await other.ClickAsync();
        await Expect(other).ToHaveAttributeAsync("aria-pressed", "true");
        await Expect(cure).ToHaveAttributeAsync("aria-pressed", "false");
        await Expect(page.Locator("#exact-rear-damping")).ToHaveValueAsync("1");
        await other.ClickAsync();
        await Expect(other).ToHaveAttributeAsync("aria-pressed", "false");
        await Expect(numbers).ToHaveCountAsync(1);
        await page.Locator("#undo").ClickAsync();
        await Expect(other).ToHaveAttributeAsync("aria-pressed", "true");
    }

    [Fact]
    public async Task Each_cure_has_its_price_and_its_chance_and_no_machine_finds_fault_with_it()
    {
        var page = await Looked(Saloon);
        var cures = await page.Locator(".cure-list > li").AllAsync();
        Assert.True(cures.Count > 2);
        foreach (var (k, cure) in cures.Index())
        {
            await Expect(cure.Locator("strong")).ToHaveTextAsync(new Regex($"^{k + 1}[.] [A-Z]"));
            await Expect(cure.Locator("[data-said=price]")).ToHaveTextAsync(new Regex("^Price( under '[^']+')?: .+[.]$"));
            await Expect(cure.Locator("[data-said=chance]")).ToHaveTextAsync(new Regex(@"^It helps in \d+ of 200 cars drawn within the doubts"));
        }

        await page.Locator("#cures-more summary").ClickAsync();
        await Expect(page.Locator("#cures-more")).ToContainTextAsync("Changed springs: ");
        // The sentence names the worst; all loads stand in the fold.
        var fold = page.Locator("[data-prices]").First;
        await fold.Locator("summary").ClickAsync();
        await Expect(fold.Locator("tbody tr").First).ToBeVisibleAsync();
        await Accessible.Check(page);
    }

    [Fact]
    public async Task The_cures_follow_the_load_the_road_the_speed_and_what_is_to_be_less()
    {
        var page = await Looked(Saloon);
        var finding = page.Locator("#cure-finding");
        var first = await finding.InnerTextAsync();
        await page.Locator("input[name=cure-aim]").Nth(1).CheckAsync();
        await Expect(finding).ToContainTextAsync("peak pitch acceleration of the hit");
        await page.Locator("input[name=cure-aim]").First.CheckAsync();
        await Expect(finding).ToHaveTextAsync(first);
        await Set(page, "speed", "25");
        await Expect(page.Locator("tr[data-measure=settling-rms-pitch] td")).ToHaveCountAsync(1);
        var slow = await page.Locator("tr[data-measure=settling-rms-pitch] td").First.InnerTextAsync();
        await Expect(page.Locator(".cure .number").First).ToContainTextAsync($"from {slow}°");

        // What is tried on the car is no other question.
        var cure = await page.Locator(".cure .number").First.InnerTextAsync();
        await Set(page, "front-spring", "24");
        await Expect(page.Locator(".cure .number").First).ToHaveTextAsync(cure);
    }

    [Fact]
    public async Task On_a_phone_a_cure_is_set_by_the_keyboard_and_nothing_stands_beside_the_screen()
    {
        var page = await Looked(Saloon, 390);
        await page.Locator("[data-cure='stronger rear damping']").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("[data-cure='stronger rear damping']")).ToHaveAttributeAsync("aria-pressed", "true");
        Assert.Equal(390, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
    }

    private async Task<IPage> Looked(string address, int width = 1280)
    {
        var page = await served.Open(address, width);
        await Ready(page);
        await page.Locator("#look-for-cures").ClickAsync();
        await Expect(page.Locator("#cure-finding")).ToBeVisibleAsync(new() { Timeout = Long });
        return page;
    }
}
