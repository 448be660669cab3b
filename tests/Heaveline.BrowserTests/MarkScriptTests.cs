using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>The marks of a frame by themselves: to which moment they belong, and which keys they leave to the browser.</summary>
[Collection(OneProgram.Name)]
public class MarkScriptTests(Served served)
{
    private const string Frame = """
        <div id="marks" data-script="waiting" data-frame="film-frame?film=lane.yaml" data-width="640" data-height="360" data-order="lamp"
             data-marks="100,50">
            <input id="mark-at" type="range" min="0" max="4" step="0.0333" value="1.2346" data-scripted><output data-time></output>
            <button data-scripted data-zoom="2">nearer</button><button data-scripted data-zoom="0.5">farther</button>
            <input type="radio" name="mark" value="lamp" data-label="lamp" checked>
            <div class="frame" tabindex="0"><img alt=""><svg></svg><canvas width="168" height="168"></canvas></div>
            <p id="mark-said"></p><button id="mark-undo" data-scripted>Undo</button>
        </div>
        """;

    [Fact]
    public async Task Marks_stay_on_their_frame_where_a_hand_moves_the_slider_before_their_script_is_there()
    {
        var page = await Shown();
        await page.EvaluateAsync("""
            () => {
                const range = document.getElementById("mark-at");
                range.value = "2.5";
                for (const type of ["input", "change"]) range.dispatchEvent(new Event(type, { bubbles: true }));
            }
            """);
        await Attach(page);
        await page.WaitForFunctionAsync("() => window.said.some(one => one.at > 2)");
        // The marks are of the film's moment that was told with them, to its last digit, and of no other.
        Assert.Equal(0, await page.EvaluateAsync<int>("() => window.said.filter(one => one.points && one.at !== 1.2346).length"));
        Assert.InRange(await page.EvaluateAsync<double>("() => window.said.at(-1).at"), 2.48, 2.52);
        await Expect(page.Locator("#mark-said")).ToContainTextAsync("Nothing is marked yet");
        await page.Locator("#mark-undo").ClickAsync();
        await Expect(page.Locator("#mark-said")).ToContainTextAsync("lamp at 100.0, 50.0");
        Assert.Equal(1.2346, await page.EvaluateAsync<double>("() => window.said.at(-1).at"));
    }

    [Fact]
    public async Task Marks_stand_on_their_frame_again_for_whoever_comes_back_to_it()
    {
        var page = await Shown();
        await Attach(page);
        await page.Locator("#marks .frame").FocusAsync();
        await page.Keyboard.PressAsync("PageDown");
        await Expect(page.Locator("#mark-said")).ToContainTextAsync("Nothing is marked yet");
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(page.Locator("#mark-said")).ToContainTextAsync("lamp at 321.0, 180.0");
        await page.Keyboard.PressAsync("PageUp");
        await Expect(page.Locator("#mark-said")).ToContainTextAsync("lamp at 100.0, 50.0");
        await page.Keyboard.PressAsync("PageDown");
        await Expect(page.Locator("#mark-said")).ToContainTextAsync("lamp at 321.0, 180.0");
    }

    [Fact]
    public async Task A_press_before_the_script_is_there_is_heard_when_it_is()
    {
        var page = await Shown();
        await page.Locator("[data-zoom='2']").ClickAsync();
        await Attach(page);
        await Expect(page.Locator("#marks svg")).ToHaveAttributeAsync("viewBox", "0 0 320 180");
    }

    [Fact]
    public async Task The_browser_keeps_its_own_keys()
    {
        var page = await Shown();
        await Attach(page);
        await page.Locator("#marks .frame").FocusAsync();
        await page.EvaluateAsync("() => { window.taken = []; addEventListener('keydown', e => window.taken.push(e.defaultPrevented)); }");
        string[] keys = ["Enter", "+", "-", "PageUp", "PageDown"];
        foreach (var held in new[] { "ctrlKey", "metaKey", "altKey" })
        {
            foreach (var key in keys)
            {
                await page.EvaluateAsync(
                    "([key, held]) => document.querySelector('#marks .frame').dispatchEvent("
                    + "new KeyboardEvent('keydown', { key, [held]: true, bubbles: true, cancelable: true }))",
                    new[] { key, held });
            }
        }

        Assert.Equal(Enumerable.Repeat(false, 3 * keys.Length), await page.EvaluateAsync<bool[]>("() => window.taken"));
        await page.Keyboard.PressAsync("+");
        Assert.True(await page.EvaluateAsync<bool>("() => window.taken.at(-1)"));
    }

    [Fact]
    public async Task A_frame_that_is_gone_before_its_script_or_before_its_film_has_answered_troubles_nobody()
    {
        var page = await Shown();
        var wrong = new List<string>();
        page.PageError += (_, error) => wrong.Add(error);
        await page.EvaluateAsync("""
            async () => {
                const { attach, suggest } = await import("/_content/Heaveline.Web/marks.js");
                const gone = { invokeMethodAsync: () => Promise.reject(new Error("nobody listens")) };
                attach(null, gone);
                const place = document.getElementById("marks");
                suggest(place, [1, 2, 3, 4]);
                attach(place, gone);
                place.remove();
                await new Promise(done => setTimeout(done, 300));
            }
            """);
        Assert.Empty(wrong);
    }

    private static Task Attach(IPage page) => page.EvaluateAsync("""
        async () => {
            const { attach } = await import("/_content/Heaveline.Web/marks.js");
            window.said = [];
            attach(document.getElementById("marks"), { invokeMethodAsync: async (_, at, points) => window.said.push({ at, points }) });
        }
        """);

    private async Task<IPage> Shown()
    {
        var page = await served.Open("/ride?car=fern-saloon");
        await page.Awake();
        await page.RouteAsync("**/film-frame**", route => route.FulfillAsync(new()
        {
            ContentType = "image/svg+xml",
            Body = "<svg xmlns='http://www.w3.org/2000/svg' width='640' height='360'></svg>",
        }));
        await page.EvaluateAsync("frame => document.body.insertAdjacentHTML('afterbegin', frame)", Frame);
        return page;
    }
}
