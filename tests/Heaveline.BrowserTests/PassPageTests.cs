using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

[Collection(OneProgram.Name)]
public class PassPageTests(Served served)
{
    private const string Saloon = "/pass?car=fern-saloon&load=four%20up%20with%20luggage&road=village-hump";

    [Fact]
    public async Task A_slider_changes_numbers_and_picture_and_undo_brings_both_back()
    {
        var page = await Open(Saloon);
        var (numbers, picture) = (await Measure(page, "settling-rms-pitch"), await Picture(page));
        await Expect(page.Locator("#undo")).ToBeDisabledAsync();

        await Set(page, "rear-spring", "52");
        await Expect(page.Locator("tr[data-measure=settling-rms-pitch] td")).ToHaveCountAsync(3);
        Assert.NotEqual(numbers, await Measure(page, "settling-rms-pitch"));
        Assert.NotEqual(picture, await Picture(page));
        Assert.Contains("rear-spring=52", page.Url, StringComparison.Ordinal);
        await Expect(page.Locator("#against")).ToContainTextAsync("Against the car as described");
        await Expect(page.Locator("[data-behind]")).ToContainTextAsync("The tint behind it: the car as described");

        await page.Locator("#undo").ClickAsync();
        await Expect(page.Locator("#exact-rear-spring")).ToHaveValueAsync("38");
        await Eventually(async () => Assert.Equal(picture, await Picture(page)));
        Assert.Equal(numbers, await Measure(page, "settling-rms-pitch"));
        await page.Keyboard.PressAsync("Control+y");
        await Expect(page.Locator("#exact-rear-spring")).ToHaveValueAsync("52");
        await page.Keyboard.PressAsync("Control+z");
        await Expect(page.Locator("#exact-rear-spring")).ToHaveValueAsync("38");
    }

    [Fact]
    public async Task While_a_slider_is_dragged_everything_follows_but_the_address_waits()
    {
        var page = await Open(Saloon);
        var (before, picture) = (await page.Locator("#story").InnerTextAsync(), await Picture(page));
        await page.EvaluateAsync("() => { const s = document.querySelector('#slide-front-damping'); s.value = 1.8; "
            + "s.dispatchEvent(new Event('input', { bubbles: true })); }");
        await Eventually(async () => Assert.NotEqual(before, await page.Locator("#story").InnerTextAsync()));
        Assert.NotEqual(picture, await Picture(page));
        await Expect(page.Locator(".finding")).ToContainTextAsync("where it was");
        await Expect(page.Locator("#verdict")).ToContainTextAsync("Price: ");
        Assert.DoesNotContain("front-damping", page.Url, StringComparison.Ordinal);
        await Expect(page.Locator("#exact-front-damping")).ToHaveValueAsync("1.8");
        await Expect(page.Locator("[data-note=front-damping]")).ToContainTextAsync("ratio 0.5");
    }

    [Fact]
    public async Task The_former_state_is_drawn_behind_the_new_one()
    {
        var plain = await Picture(await Open("/pass?car=fern-saloon-cured&load=four%20up%20with%20luggage", 1000));
        var ghosted = await Picture(await Open("/pass?car=fern-saloon-cured&load=four%20up%20with%20luggage&beside=fern-saloon", 1000));
        Assert.NotEqual(plain, ghosted);
    }

    [Fact]
    public async Task What_is_set_stands_in_the_address_and_a_reload_brings_it_back()
    {
        var page = await Open(Saloon);
        await Set(page, "front-spring", "18.5");
        await Set(page, "speed", "63");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("63 km/h");
        var before = await page.Locator("#story").InnerTextAsync();
        await page.Locator("#choose-road").SelectOptionAsync("pothole-left");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("63 km/h");
        await Eventually(() => Task.FromResult(Assert.Single(Regex.Matches(page.Url, "road=pothole-left"))));
        // The address may be there before the words are.
        await Eventually(async () => Assert.NotEqual(before, await page.Locator("#story").InnerTextAsync()));
        var story = await page.Locator("#story").InnerTextAsync();
        await page.ReloadAsync();
        await Ready(page);
        await Expect(page.Locator("#exact-front-spring")).ToHaveValueAsync("18.5");
        await Expect(page.Locator("#exact-speed")).ToHaveValueAsync("63");
        await Expect(page.Locator("#choose-road")).ToHaveValueAsync("pothole-left");
        Assert.Equal(story, await page.Locator("#story").InnerTextAsync());
    }

    [Fact]
    public async Task Back_leads_to_where_one_came_from_and_forward_to_what_was_set()
    {
        var page = await Open("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "The pass" }).ClickAsync();
        await Ready(page);
        await Set(page, "front-damping", "1.25");
        await page.GoBackAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("What stands in the garage");
        await page.GoForwardAsync();
        await Ready(page);
        await Expect(page.Locator("#exact-front-damping")).ToHaveValueAsync("1.25");
    }

    [Theory]
    [InlineData("-4", "must be above 0 N/mm")]
    [InlineData("soft", "must be a number")]
    public async Task A_value_that_cannot_be_is_refused_beside_its_slider_and_the_picture_stays(string typed, string words)
    {
        var page = await Open(Saloon);
        var picture = await Picture(page);
        await page.Locator("#exact-front-spring").FillAsync(typed);
        await page.Locator("#exact-front-spring").PressAsync("Enter");
        await Expect(page.Locator("#refusal-front-spring")).ToContainTextAsync(words);
        Assert.Equal(picture, await Picture(page));
        Assert.DoesNotContain("front-spring", page.Url, StringComparison.Ordinal);
        await Set(page, "front-spring", "19");
        await Expect(page.Locator("#refusal-front-spring")).ToHaveTextAsync("");
    }

    [Fact]
    public async Task Springs_can_be_set_by_their_ride_frequency()
    {
        var page = await Open(Saloon);
        await page.GetByLabel("ride frequencies").CheckAsync();
        await Expect(page.Locator("#slide-rear-spring")).ToHaveAttributeAsync("data-unit", "Hz");
        await Set(page, "rear-spring", "1.2");
        await Expect(page.Locator("[data-note=ratio]")).ToContainTextAsync("1.20 Hz behind");
        await Expect(page.Locator("[data-note=rear-spring]")).ToContainTextAsync("N/mm at the wheel");
    }

    [Fact]
    public async Task A_kept_variant_is_a_file_that_gives_the_same_numbers_and_replacing_it_is_asked()
    {
        var page = await Open(Saloon);
        await Set(page, "rear-spring", "47.3");
        await Set(page, "rear-damping", "1.3");
        var numbers = await Measure(page, "settling-rms-pitch");
        await page.Locator("#variant-name").FillAsync("Browser test’s own");
        await page.Locator("#keep").ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/pass[?]car=fern-saloon-browser-test-s-own"));
        await Ready(page);
        Assert.True(File.Exists(Path.Combine(served.Garage, "fern-saloon-browser-test-s-own.yaml")));
        await Eventually(async () => Assert.Equal(numbers, await Measure(page, "settling-rms-pitch")));

        await page.GotoAsync("/");
        await Expect(page.GetByText("fern-saloon-browser-test-s-own", new() { Exact = true })).ToBeVisibleAsync();

        await page.GotoAsync(Saloon + "&rear-spring=40");
        await Ready(page);
        var kept = await File.ReadAllTextAsync(
            Path.Combine(served.Garage, "fern-saloon-browser-test-s-own.yaml"), TestContext.Current.CancellationToken);
        await page.Locator("#variant-name").FillAsync("Browser test’s own");
        await page.Locator("#keep").ClickAsync();
        await Expect(page.Locator("#keep-answer")).ToContainTextAsync("already");
        Assert.Equal(
            kept,
            await File.ReadAllTextAsync(Path.Combine(served.Garage, "fern-saloon-browser-test-s-own.yaml"), TestContext.Current.CancellationToken));
        await page.Locator("#replace").ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/pass[?]car=fern-saloon-browser-test-s-own"));
        Assert.Contains(
            "40 N/mm",
            await File.ReadAllTextAsync(Path.Combine(served.Garage, "fern-saloon-browser-test-s-own.yaml"), TestContext.Current.CancellationToken),
            StringComparison.Ordinal);
        File.Delete(Path.Combine(served.Garage, "fern-saloon-browser-test-s-own.yaml"));
    }

    [Fact]
    public async Task The_keyboard_alone_does_everything()
    {
        var page = await Open(Saloon);
        var scene = page.Locator("[data-scene]");
        await scene.FocusAsync();
        var start = await Picture(page);
        await page.Keyboard.PressAsync("End");
        var end = await page.Locator("[data-time]").InnerTextAsync();
        Assert.NotEqual(start, await Picture(page));
        await page.Keyboard.PressAsync("Home");
        await page.Keyboard.PressAsync("ArrowRight");
        Assert.NotEqual(end, await page.Locator("[data-time]").InnerTextAsync());
        await page.Locator("#slide-front-spring").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(page.Locator("#exact-front-spring")).ToHaveValueAsync("20.8");
        await Eventually(() => Task.FromResult(Assert.Single(Regex.Matches(page.Url, "front-spring=20.8"))));
    }

    [Fact]
    public async Task The_scrubber_moves_the_cursor_over_the_charts_and_a_press_on_the_charts_moves_the_scrubber()
    {
        var page = await Open(Saloon);
        var cursor = await Cursor(page);
        await page.EvaluateAsync(
            "() => { const s = document.querySelector('[data-scrub]'); s.value = 500; s.dispatchEvent(new Event('input', { bubbles: true })); }");
        Assert.NotEqual(cursor, await Cursor(page));
        var box = (await page.Locator("[data-strips]").BoundingBoxAsync())!;
        await page.Locator("[data-strips]").ClickAsync(new LocatorClickOptions { Position = new Position { X = box.Width * 0.8f, Y = 120 } });
        Assert.InRange(int.Parse(await page.Locator("[data-scrub]").InputValueAsync(), System.Globalization.CultureInfo.InvariantCulture), 600, 1000);
    }

    [Theory]
    [InlineData("/download/pass.svg", "image/svg+xml", "<?xml")]
    [InlineData("/download/pass.png", "image/png", "\u0089PNG")]
    [InlineData("/download/pass.pdf", "application/pdf", "%PDF-")]
    [InlineData("/download/pass-before-after.svg", "image/svg+xml", "<?xml")]
    [InlineData("/download/pass.csv", "text/csv", "time [s],")]
    [InlineData("/download/pass.json", "application/json", "{")]
    public async Task What_is_taken_away_is_a_real_file_of_its_kind(string path, string kind, string start)
    {
        var page = await Open(Saloon + "&rear-spring=48");
        var link = await page.Locator($".downloads a[href^='{path[1..]}']").GetAttributeAsync("href");
        var answer = await page.APIRequest.GetAsync(new Uri(served.Address, link).ToString());
        Assert.Equal(200, answer.Status);
        Assert.StartsWith(kind, answer.Headers["content-type"], StringComparison.Ordinal);
        var bytes = await answer.BodyAsync();
        Assert.StartsWith(start, System.Text.Encoding.Latin1.GetString(bytes), StringComparison.Ordinal);
        if (kind == "application/json")
        {
            using var json = JsonDocument.Parse(bytes);
            Assert.Equal(48.0, json.RootElement.GetProperty("set").GetProperty("rear-spring").GetDouble());
        }
    }

    [Fact]
    public async Task An_address_that_leads_nowhere_is_answered_in_words()
    {
        var page = await served.Open("/pass?car=nobody");
        await Expect(page.Locator("section.refused")).ToContainTextAsync("There is no car named");
        await Expect(page.Locator("#blazor-error-ui")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task A_crossing_that_breaks_off_is_shown_as_far_as_it_goes()
    {
        var page = await Open("/pass?car=fern-saloon&load=four%20up%20with%20luggage&road=village-hump&height=400&speed=60");
        await Expect(page.Locator("#broken-off")).ToContainTextAsync("as far as it goes");
        Assert.NotEqual("", await page.Locator("[data-time]").InnerTextAsync());
    }

    [Theory]
    [InlineData(390)]
    [InlineData(768)]
    [InlineData(2560)]
    public async Task No_page_needs_scrolling_sideways(int width)
    {
        var page = await Open(Saloon + "&rear-spring=48", width);
        Assert.Equal(0, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth"));
    }

    [Theory]
    [InlineData(false, 1280)]
    [InlineData(true, 1280)]
    [InlineData(false, 390)]
    [InlineData(true, 390)]
    public async Task The_accessibility_engine_finds_nothing(bool dark, int width)
    {
        var page = await Open(Saloon + "&rear-spring=48", width, dark: dark);
        await Accessible.Check(page);
    }

    private async Task<IPage> Open(string path, int width = 1280, bool dark = false, bool still = true)
    {
        var page = await served.Open(path, width, 900, dark, still);
        if (path.StartsWith("/pass", StringComparison.Ordinal))
        {
            await Ready(page);
        }

        return page;
    }

    // The first picture stands when the moment has been written beside it.
    internal static Task Ready(IPage page) => Expect(page.Locator("[data-time]")).Not.ToHaveTextAsync("", new() { Timeout = 20000 });

    internal static async Task Set(IPage page, string key, string value)
    {
        await page.Locator($"#exact-{key}").FillAsync(value);
        await page.Locator($"#exact-{key}").PressAsync("Enter");
        await Eventually(() =>
        {
            Assert.Contains($"{key}=", page.Url, StringComparison.Ordinal);
            return Task.CompletedTask;
        });
        await Expect(page.Locator($"#exact-{key}")).ToHaveValueAsync(value);
    }

    private static Task<string> Measure(IPage page, string key) =>
        page.EvaluateAsync<string>("key => [...document.querySelectorAll(`tr[data-measure=\"${key}\"] td.number`)].at(-1).textContent", key);

    internal static Task<string> Picture(IPage page) => page.Locator("[data-scene]").EvaluateAsync<string>("canvas => canvas.toDataURL()");

    private static Task<string> Cursor(IPage page) =>
        page.Locator("[data-strips] canvas").Nth(1).EvaluateAsync<string>("canvas => canvas.toDataURL()");

    internal static async Task Eventually(Func<Task> holds)
    {
        for (var tries = 0; ; tries++)
        {
            try
            {
                await holds();
                return;
            }
            catch (Exception failure) when (failure is Xunit.Sdk.XunitException && tries < 100)
            {
                await Task.Delay(100);
            }
        }
    }
}
