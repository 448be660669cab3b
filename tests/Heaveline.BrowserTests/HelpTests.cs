using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>Words that say what they mean, pages that say what they answer, the first story, and what can be copied.</summary>
[Collection(AnotherProgram.Name)]
public class HelpTests(Served served)
{
    private const string Hit = "[data-measure=hit-peak-pitch-acceleration] .term";
    private const string Says = "Largest pitch acceleration until the rear wheels have left.";

    [Fact]
    public async Task A_word_says_what_it_means_where_it_is_pointed_at_and_while_the_pointer_is_on_its_meaning()
    {
        var page = await served.Open("/pass?car=fern-saloon");
        await PassPageTests.Ready(page);
        var meaning = page.Locator("#term-says");
        await Expect(page.Locator(Hit)).ToHaveAttributeAsync("aria-description", Says);
        await page.Locator(Hit).HoverAsync();
        await Expect(meaning).ToBeVisibleAsync();
        await Expect(meaning).ToHaveTextAsync(Says);
        await meaning.HoverAsync();
        await page.WaitForTimeoutAsync(500);
        await Expect(meaning).ToBeVisibleAsync();
        await Accessible.Check(page);
        await page.Keyboard.PressAsync("Escape");
        await Expect(meaning).ToBeHiddenAsync();
        await page.Locator(Hit).HoverAsync();
        await Expect(meaning).ToBeVisibleAsync();
        await page.Mouse.MoveAsync(2, 2);
        await Expect(meaning).ToBeHiddenAsync();
    }

    [Fact]
    public async Task It_says_so_too_where_it_has_the_focus_and_after_a_touch()
    {
        var page = await served.Open("/pass?car=fern-saloon");
        await PassPageTests.Ready(page);
        var meaning = page.Locator("#term-says");
        await page.Locator(Hit).FocusAsync();
        await Expect(meaning).ToHaveTextAsync(Says);
        await page.Keyboard.PressAsync("Tab");
        await Expect(meaning).Not.ToHaveTextAsync(Says);
        await page.Keyboard.PressAsync("Escape");
        await Expect(meaning).ToBeHiddenAsync();

        var context = await served.Browser.NewContextAsync(new()
        {
            BaseURL = served.Address.ToString(),
            HasTouch = true,
            ViewportSize = new() { Width = 390, Height = 800 },
            ReducedMotion = ReducedMotion.Reduce,
        });
        var phone = await context.NewPageAsync();
        await phone.GotoAsync("/car?car=fern-saloon");
        await Expect(phone.Locator("[data-live=yes]").First).ToBeAttachedAsync();
        await phone.Locator(".numbers .term").First.TapAsync();
        await Expect(phone.Locator("#term-says")).ToBeVisibleAsync();
        var box = await phone.Locator("#term-says").BoundingBoxAsync();
        Assert.InRange(box!.X, 0.0f, 390.0f - box.Width);
        await phone.Locator("h1").First.TapAsync();
        await Expect(phone.Locator("#term-says")).ToBeHiddenAsync();
        await context.CloseAsync();
    }

    public static TheoryData<string> Pages => [.. PagePaths.All];

    [Theory, MemberData(nameof(Pages))]
    public async Task Every_page_opens_its_help_by_keyboard_and_Escape_closes_it(string path)
    {
        var page = await served.Open(path, width: 390);
        if (path != "/phone")
        {
            await page.Awake();
        }

        // As a page comes to life its title is set anew.
        await Expect(page).ToHaveTitleAsync(new Regex("Heaveline"));
        await page.Locator(".help-opener").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#page-help")).ToBeVisibleAsync();
        await Expect(page.Locator("#page-help dt").First).ToBeVisibleAsync();
        await Accessible.Check(page);
        Assert.True(await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"));
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.Locator("#page-help")).ToBeHiddenAsync();
        await Expect(page.Locator(".help-opener")).ToBeFocusedAsync();
    }

    [Theory]
    [InlineData(390, false)]
    [InlineData(1280, true)]
    public async Task The_story_is_computed_as_one_looks_and_ends_in_a_car_of_ones_own(int width, bool dark)
    {
        var page = await served.Open("/story", width, dark: dark);
        await page.Awake();
        await Expect(page.Locator("h1")).ToContainTextAsync("Loaded, this saloon nods by 1.", new() { Timeout = 60_000 });
        await Expect(page.Locator("#story-why ~ ol li")).ToHaveCountAsync(3, new() { Timeout = 60_000 });
        await Expect(page.Locator("#story-price ~ .wide-scroll caption")).ToHaveCountAsync(1, new() { Timeout = 60_000 });
        await Expect(page).ToHaveTitleAsync("A first story: Heaveline");
        await Accessible.Check(page);
        Assert.True(await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"));
        var nod = (await page.Locator("h1").InnerTextAsync()).Split("by ")[^1].TrimEnd('.');
        await page.GetByRole(AriaRole.Link, new() { Name = "Drive this one yourself" }).ClickAsync();
        await PassPageTests.Ready(page);
        await Expect(page.Locator(".finding mark")).ToContainTextAsync(nod[..4]);
        await page.GoBackAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Begin your own car" }).ClickAsync();
        await Expect(page.Locator("h1")).ToHaveTextAsync("A new car from one page");
    }

    [Fact]
    public async Task The_finding_is_copied_with_what_it_is_of_and_its_number_alone_also_where_there_is_no_clipboard_for_pages()
    {
        var page = await served.Open("/pass?car=fern-saloon&load=driver&rear-spring=52");
        await page.Context.GrantPermissionsAsync(["clipboard-read", "clipboard-write"]);
        await PassPageTests.Ready(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Copy the sentence" }).ClickAsync();
        await Expect(page.Locator("#verdict-copied")).ToHaveTextAsync("copied");
        var copied = await page.EvaluateAsync<string>("() => navigator.clipboard.readText()");
        Assert.StartsWith("Fern saloon over ", copied, StringComparison.Ordinal);
        Assert.Contains("at 40 km/h, set: rear spring 52 N/mm: ", copied, StringComparison.Ordinal);
        Assert.Contains("driver", copied, StringComparison.OrdinalIgnoreCase);
        Assert.EndsWith("Held against the car as described.", copied, StringComparison.Ordinal);
        var number = await page.Locator(".finding mark").InnerTextAsync();
        await page.EvaluateAsync("() => { navigator.clipboard.writeText = () => Promise.reject(new DOMException('none')); }");
        await page.GetByRole(AriaRole.Button, new() { Name = "Copy the number" }).ClickAsync();
        await Expect(page.Locator("#verdict-copied")).ToHaveTextAsync("copied");
        Assert.Equal(number, await page.EvaluateAsync<string>("() => navigator.clipboard.readText()"));
    }
}
