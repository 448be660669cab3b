using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>What a hand does on a page that the program, or the script of a part of it, has not yet taken over.</summary>
[Collection(OneProgram.Name)]
public class EarlyChoiceTests(Served served)
{
    private const string Program = "**/blazor.web.js";

    [Fact]
    public async Task What_is_chosen_before_a_page_lives_is_chosen_when_it_does_and_none_of_it_undoes_another()
    {
        var (page, lives) = await Held("/ride?car=fern-saloon", Program);
        await page.Locator("#load").SelectOptionAsync("four up with luggage");
        await page.Locator("#at").FillAsync("50 mph");
        await page.Locator("#at").BlurAsync();
        await Expect(page.Locator("#content[data-awake=no]")).ToBeAttachedAsync();
        lives.SetResult();
        await page.Awake();
        await Expect(page).ToHaveURLAsync(new Regex("load=four(%20|[+])up"));
        await Expect(page).ToHaveURLAsync(new Regex("at=50(%20|[+])mph"));
        await Expect(page.Locator("#at")).ToHaveValueAsync("80.467");
    }

    [Fact]
    public async Task A_button_pressed_before_a_page_lives_is_pressed_once_when_it_does()
    {
        var (page, lives) = await Held("/", Program);
        var second = page.GetByRole(AriaRole.Button, new() { NameRegex = new("^its file: ") }).Nth(1);
        var named = await second.GetAttributeAsync("aria-label");
        await second.ClickAsync();
        await Expect(second).ToHaveAttributeAsync("aria-expanded", "false");
        lives.SetResult();
        await Expect(second).ToHaveAttributeAsync("aria-expanded", "true");
        await page.Awake();
        await Expect(page.Locator("[aria-expanded=true]")).ToHaveAttributeAsync("aria-label", named!);
        await Expect(page.Locator(".file-acts")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Whoever_presses_again_because_nothing_moved_presses_once()
    {
        var (page, lives) = await Held("/", Program);
        var first = page.GetByRole(AriaRole.Button, new() { NameRegex = new("^its file: ") }).First;
        await first.ClickAsync();
        await first.ClickAsync();
        lives.SetResult();
        await page.Awake();
        await Expect(first).ToHaveAttributeAsync("aria-expanded", "true");
        await Expect(page.Locator(".file-acts")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task A_form_that_is_drawn_a_moment_after_the_page_lives_is_sent_once_by_the_button_that_was_pressed()
    {
        const string Form = "<form id='late'><button id='one' name='way' value='a'>a</button><button id='two' name='way' value='b'>b</button></form>";
        var (page, lives) = await Held("/ride?car=fern-saloon", Program);
        await page.EvaluateAsync("""
            form => {
                window.sent = [];
                document.querySelector("#content").insertAdjacentHTML("beforeend", form);
                document.getElementById("two").click();
                document.getElementById("two").click();
                document.getElementById("late").remove();
                addEventListener("submit", event => {
                    event.preventDefault();
                    window.sent.push(event.submitter?.id);
                });
            }
            """, Form);
        lives.SetResult();
        await Expect(page.Locator("#content[data-awake=yes]")).ToBeAttachedAsync();
        await page.EvaluateAsync("form => document.querySelector('#content').insertAdjacentHTML('beforeend', form)", Form);
        await page.WaitForFunctionAsync("() => window.sent.length > 0");
        Assert.Equal(["two"], await page.EvaluateAsync<string[]>("() => window.sent"));
    }

    [Fact]
    public async Task What_was_done_on_a_page_that_has_been_left_is_not_done_when_one_comes_back()
    {
        var (page, lives) = await Held("/pass?car=fern-saloon", "**/pass.js");
        await Expect(page.Locator("#content[data-awake=yes]")).ToBeAttachedAsync();
        await page.Locator("#exact-rear-damping").FillAsync("1.5");
        await page.Locator("#exact-rear-damping").BlurAsync();
        await page.Locator("nav[aria-label=Pages] a", new() { HasTextString = "The ride" }).ClickAsync();
        await page.Locator("#at").WaitForAsync();
        await page.Locator("nav[aria-label=Pages] a", new() { HasTextString = "The pass" }).ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/pass"));
        await page.Locator("#exact-front-damping").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        lives.SetResult();
        await Expect(page.Locator(".pass[data-script=there]")).ToBeAttachedAsync();
        await page.Locator("#exact-front-damping").FillAsync("1.2");
        await page.Locator("#exact-front-damping").BlurAsync();
        await Expect(page).ToHaveURLAsync(new Regex("front-damping=1[.]2"));
        Assert.DoesNotContain("rear-damping", page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_half_typed_as_a_page_comes_to_life_stands_there_with_the_hand_on_it_and_counts_when_it_is_left()
    {
        var (page, lives) = await Held("/ride?car=fern-saloon", Program);
        var at = page.Locator("#at");
        await at.FocusAsync();
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.TypeAsync("5");
        lives.SetResult();
        await page.Awake();
        await Expect(at).ToBeFocusedAsync();
        await Expect(at).ToHaveValueAsync("5");
        await page.Keyboard.TypeAsync("0 mph");
        await page.Keyboard.PressAsync("Tab");
        await Expect(page).ToHaveURLAsync(new Regex("at=50(%20|[+])mph"));
    }

    [Fact]
    public async Task A_value_that_no_hand_goes_on_with_counts_when_it_is_left_too()
    {
        var (page, lives) = await Held("/ride?car=fern-saloon", Program);
        await page.Locator("#at").FocusAsync();
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.TypeAsync("70 km/h");
        lives.SetResult();
        await page.Awake();
        await Expect(page.Locator("#at")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Tab");
        await Expect(page).ToHaveURLAsync(new Regex("at=70"));
    }

    [Theory]
    [InlineData("/", Program)]
    [InlineData("/drive", Program)]
    [InlineData("/drive", "**/drive.js")]
    public async Task A_file_chosen_before_anybody_listens_is_taken_once_when_somebody_does(string path, string held)
    {
        var (page, lives) = await Held(path, held);
        if (held != Program)
        {
            await Expect(page.Locator("#content[data-awake=yes]")).ToBeAttachedAsync();
        }

        var said = 0;
        await page.ExposeFunctionAsync("saidSo", () => said++);
        await page.EvaluateAsync("""
            () => new MutationObserver(all => all.forEach(one => one.addedNodes.forEach(node =>
                node.parentElement?.id === "upload-remark" && saidSo()))).observe(document, { subtree: true, childList: true })
            """);
        await page.Locator("#upload").SetInputFilesAsync(new FilePayload { Name = "picture.png", MimeType = "image/png", Buffer = new byte[100] });
        await Expect(page.Locator("#upload-remark")).ToHaveTextAsync("");
        lives.SetResult();
        await Expect(page.Locator("#upload-remark .refused")).ToContainTextAsync("must end in");
        await page.Awake();
        Assert.Equal(1, said);
    }

    [Fact]
    public async Task A_slider_moved_before_its_script_is_there_moves_the_car_when_it_is()
    {
        var (page, lives) = await Held("/pass?car=fern-saloon", "**/pass.js");
        await Expect(page.Locator("#content[data-awake=yes]")).ToBeAttachedAsync();
        await page.Locator("#exact-rear-damping").FillAsync("1.5");
        await page.Locator("#exact-rear-damping").BlurAsync();
        lives.SetResult();
        await Expect(page).ToHaveURLAsync(new Regex("rear-damping=1[.]5"));
    }

    private async Task<(IPage Page, TaskCompletionSource Lives)> Held(string path, string script)
    {
        var page = await served.Open("/_content/Heaveline.Web/mark.svg");
        var held = new TaskCompletionSource();
        await page.RouteAsync(script, async route =>
        {
            await held.Task;
            await route.ContinueAsync();
        });
        await page.GotoAsync(path, new() { WaitUntil = WaitUntilState.Commit });
        await page.Locator("#content").WaitForAsync();
        return (page, held);
    }
}
