using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>Whose the focus is on a machine so slow that the program hears of everything late: the reader's.</summary>
[Collection(OneProgram.Name)]
public class FocusTests(Served served)
{
    private const string Saloon = "/pass?car=fern-saloon&load=four%20up%20with%20luggage&road=village-hump";
    private static readonly TimeSpan Late = TimeSpan.FromMilliseconds(800);

    [Fact]
    public async Task Whoever_goes_on_to_a_cure_before_the_program_has_heard_that_the_cures_are_shown_stays_there()
    {
        // The answer is known: it comes with the press.
        var page = await served.Open(Saloon);
        await Look(page);
        page = await Slow(Saloon);
        await Look(page);
        var cure = page.Locator("[data-cure='stronger rear damping']");
        await cure.FocusAsync();
        // What the program says of the cures comes before what it says of this press.
        await page.Keyboard.PressAsync("Enter");
        await Expect(cure).ToHaveAttributeAsync("aria-pressed", "true");
        await Expect(cure).ToBeFocusedAsync();
    }

    [Fact]
    public async Task Whoever_stays_with_the_press_is_led_on_by_it()
    {
        var page = await Slow(Saloon);
        await Keys.TabTo(page, "#look-for-cures");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#cures-heading")).ToBeFocusedAsync();
        await Expect(page.Locator("#cure-finding")).ToBeVisibleAsync(new() { Timeout = 240_000 });
        await Expect(page.Locator("#cures-heading")).ToBeFocusedAsync();
    }

    [Fact]
    public async Task A_panel_that_a_press_opens_takes_the_hand_along_and_takes_it_from_nobody_who_has_gone_on()
    {
        var page = await Slow("/");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^its file: ") }).First.ClickAsync();
        var acts = page.Locator(".file-acts");
        await acts.GetByRole(AriaRole.Button, new() { Name = "Rename", Exact = true }).ClickAsync();
        var fields = acts.Locator("input");
        await Expect(fields.First).ToBeFocusedAsync();
        await acts.GetByRole(AriaRole.Button, new() { Name = "Copy", Exact = true }).ClickAsync();
        await fields.Nth(1).FocusAsync();
        await Led(page, "input", times: 2);
        await Expect(fields.Nth(1)).ToBeFocusedAsync();
    }

    [Fact]
    public async Task A_page_that_is_gone_to_takes_no_focus_from_whoever_has_gone_on_in_it()
    {
        var page = await Slow(Saloon);
        // Before the program has heard that the page is shown, a link loads the next one anew, and nobody leads the focus.
        await Expect(page.Locator(".pass[data-script=there]")).ToBeAttachedAsync();
        await page.Locator("nav[aria-label=Pages] a", new() { HasTextString = "The ride" }).ClickAsync();
        await page.Locator("#at").FocusAsync();
        await Led(page, "h1", times: 1);
        await Expect(page.Locator("#at")).ToBeFocusedAsync();
    }

    // The program has asked so often for the focus to be put on an element of that kind.
    private static Task Led(IPage page, string kind, int times) => page.WaitForFunctionAsync(
        "([kind, times]) => window.led.filter(one => one === kind).length >= times", new object[] { kind, times });

    private static async Task Look(IPage page)
    {
        await page.Locator("#look-for-cures").ClickAsync();
        await Expect(page.Locator("#cure-finding")).ToBeVisibleAsync(new() { Timeout = 240_000 });
    }

    private async Task<IPage> Slow(string path)
    {
        var page = await served.Open("/_content/Heaveline.Web/mark.svg");
        await page.Delay(Late);
        await page.AddInitScriptAsync("""
            window.led = [];
            let there;
            Object.defineProperty(window, "heaveline", {
                get: () => there,
                set: came => {
                    const { onward } = came;
                    came.onward = (element, isStill) => {
                        onward(element, isStill);
                        window.led.push(element?.localName);
                    };
                    there = came;
                },
            });
            """);
        await page.GotoAsync(path);
        await page.Awake();
        return page;
    }
}
