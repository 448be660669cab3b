using Heaveline.Files.Garages;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

[Collection(OneProgram.Name)]
public class CarInHandTests(Served served)
{
    private const string Asked = "/pass?car=fern-saloon&load=four%20up%20with%20luggage&road=pothole-left&speed=30&rear-spring=52";

    [Fact]
    public async Task Car_load_road_speed_and_trial_go_along_from_page_to_page_and_back()
    {
        var page = await served.Open(Asked);
        await PassPageTests.Ready(page);
        foreach (var name in new[] { "The rule", "The ride", "The report", "The drive", "The car" })
        {
            await Pages(page).GetByRole(AriaRole.Link, new() { Name = name, Exact = true }).ClickAsync();
            await Expect(Pages(page).Locator("[aria-current=page]")).ToHaveTextAsync(name);
            await IsInHand(page);
            await Expect(page.Locator(".tried")).ToContainTextAsync("1 setting tried on the pass, not counted here");
        }

        await page.Locator(".next a").ClickAsync();
        await PassPageTests.Ready(page);
        await IsInHand(page);
        await Expect(page.Locator("#exact-rear-spring")).ToHaveValueAsync("52");
        await Expect(page.Locator("#exact-speed")).ToHaveValueAsync("30");
        await page.Locator("#as-described").ClickAsync();
        await Expect(page.Locator("#exact-rear-spring")).ToHaveValueAsync("38");
        await Expect(page.Locator(".tried")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_is_chosen_in_the_head_is_what_the_page_shows_and_its_own_choices_stay()
    {
        var page = await served.Open("/rule?car=fern-saloon&rule=damping&measure=hit&rear-spring=52");
        await Expect(page.GetByLabel("Judged by")).ToHaveValueAsync("hit");
        await Live(page);
        await page.Locator("#choose-load").SelectOptionAsync("four up with luggage");
        await Expect(page.Locator("#load")).ToHaveValueAsync("four up with luggage");
        await Expect(page.GetByLabel("Judged by")).ToHaveValueAsync("hit");
        await Expect(page.Locator("#rule")).ToHaveValueAsync("damping");
        await page.Locator("#choose-car").SelectOptionAsync("drover-van");
        await Expect(page.Locator("#car")).ToHaveValueAsync("drover-van");
        await Expect(page.Locator("#choose-car")).ToHaveValueAsync("drover-van");
        await Expect(page.Locator(".tried")).ToHaveCountAsync(0);
        await Expect(page.GetByLabel("Judged by")).ToHaveValueAsync("hit");
        Assert.DoesNotContain("load=", page.Url, StringComparison.Ordinal);
        await page.Locator("#choose-speed").FillAsync("25 mph");
        await page.Locator("#choose-speed").PressAsync("Enter");
        await Expect(page.Locator("#choose-speed")).ToHaveValueAsync("40.234");
    }

    [Fact]
    public async Task An_address_that_names_no_car_opens_with_the_last_one_of_this_browser_and_of_no_other()
    {
        var page = await served.Open(Asked);
        await PassPageTests.Ready(page);
        await page.WaitForFunctionAsync("() => localStorage.length > 0");
        await page.GotoAsync("/report");
        await Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/report[?]car=fern-saloon&.*rear-spring=52"));
        await IsInHand(page);
        await page.GotoAsync("/");
        await IsInHand(page);
        await page.GotoAsync("/phone");
        await page.GotoAsync("/ride?at=50");
        await Expect(page.Locator("#at")).ToHaveValueAsync("50");
        await Expect(page.Locator("#choose-car")).ToHaveValueAsync("fern-saloon");
        Assert.DoesNotContain(await page.Context.CookiesAsync(), cookie => cookie.Value.Contains("fern", StringComparison.Ordinal));

        var other = await served.Open("/report");
        await Expect(other.Locator("#choose-car")).Not.ToHaveValueAsync("fern-saloon");
    }

    [Fact]
    public async Task The_drive_in_hand_is_what_the_report_is_of_and_is_shown_again_on_its_page()
    {
        var drives = new Garage(served.Garage).Drives;
        var before = drives.Begin("In hand before", "log.csv", "t\n"u8.ToArray()).Drive!;
        var after = drives.Begin("In hand after", "log.csv", "t\n"u8.ToArray()).Drive!;
        var page = await served.Open($"/drive?car=fern-saloon&log={before}");
        await Live(page);
        await page.Locator(".next a").ClickAsync();
        await Expect(page.Locator("#drive-1")).ToHaveValueAsync(before);
        await page.Locator("#drive-2").SelectOptionAsync(after);
        await Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex($"drive={before}&drive={after}"));
        // The head chooses another load: both drives stay.
        await page.Locator("#choose-load").SelectOptionAsync("four up with luggage");
        var both = $"drive={before}&drive={after}";
        await Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex($"load=four.*{both}|{both}.*load=four"));
        foreach (var name in new[] { "The pass", "The drive", "The report" })
        {
            await Pages(page).GetByRole(AriaRole.Link, new() { Name = name, Exact = true }).ClickAsync();
            await Expect(Pages(page).Locator("[aria-current=page]")).ToHaveTextAsync(name);
        }

        await Expect(page.Locator("#drive-1")).ToHaveValueAsync(before);
        await Expect(page.Locator("#drive-2")).ToHaveValueAsync(after);
        Directory.Delete(Path.Combine(served.Garage, DriveFolders.Folder, before), recursive: true);
        Directory.Delete(Path.Combine(served.Garage, DriveFolders.Folder, after), recursive: true);
    }

    [Fact]
    public async Task A_page_that_comes_to_life_takes_the_focus_from_nobody_and_a_page_gone_to_is_read_from_its_heading()
    {
        var page = await served.Open("/car?car=fern-saloon");
        await Live(page);
        await page.Awake();
        Assert.Equal("BODY", await page.EvaluateAsync<string>("() => document.activeElement.tagName"));
        await Pages(page).GetByRole(AriaRole.Link, new() { Name = "The rule", Exact = true }).ClickAsync();
        await page.WaitForFunctionAsync("() => document.activeElement.tagName === 'H1'");
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task The_head_is_accessible_and_as_wide_as_the_page(int width)
    {
        var page = await served.Open("/car?car=fern-saloon&rear-spring=52", width);
        await Live(page);
        await Accessible.Check(page);
        Assert.True(await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"));
    }

    private static ILocator Pages(IPage page) => page.GetByRole(AriaRole.Navigation, new() { Name = "Pages" });

    private static Task Live(IPage page) => page.WaitForFunctionAsync("() => localStorage.length > 0");

    private static async Task IsInHand(IPage page)
    {
        await Expect(page.Locator("#choose-car")).ToHaveValueAsync("fern-saloon");
        await Expect(page.Locator("#choose-load")).ToHaveValueAsync("four up with luggage");
        await Expect(page.Locator("#choose-road")).ToHaveValueAsync("pothole-left");
        await Expect(page.Locator("#choose-speed")).ToHaveValueAsync("30");
    }
}
