using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>Words on the charts of the pages keep apart, also where curves end close to one another.</summary>
[Collection(OneProgram.Name)]
public class ChartWordsTests(Served served)
{
    private const string Laden = "car=fern-saloon&load=four%20up%20with%20luggage&road=village-hump&speed=40";

    [Theory]
    [InlineData($"/pass?{Laden}&front-spring=18.5&rear-spring=48", "[data-strips] canvas")]
    [InlineData("/pass?car=plover-motorcycle&road=village-hump&speed=40", "[data-strips] canvas")]
    [InlineData("/ride?car=fern-saloon&beside=fern-saloon-springs", ".pickable svg")]
    [InlineData("/rule?car=fern-saloon&load=driver", ".map .picture")]
    public async Task No_word_of_a_chart_covers_another(string path, string stands)
    {
        var page = await served.Open("about:blank");
        await Note(page);
        await page.GotoAsync(new Uri(served.Address, path).ToString());
        await page.Awake();
        await Expect(page.Locator(stands).First).ToBeAttachedAsync(new() { Timeout = 60_000 });
        foreach (var width in new[] { 390, 1280, 1920 })
        {
            await page.SetViewportSizeAsync(width, 900);
            // Charts follow a window's width in their own time.
            await page.WaitForTimeoutAsync(600);
            var (written, covered) = await Words(page);
            Assert.True(written > 10, $"{written} words were found");
            Assert.Equal("", covered);
        }
    }

    // The pass rests where the car pitches most: there the nod says the value, and elsewhere the line does, to as many decimals.
    [Fact]
    public async Task The_value_under_the_line_stands_once_and_with_the_digits_of_the_nods()
    {
        var page = await served.Open("about:blank");
        await Note(page);
        await page.GotoAsync(new Uri(served.Address, "/pass?car=fern-saloon&load=driver&road=village-hump&speed=40").ToString());
        await page.Awake();
        await Expect(page.Locator("[data-strips] canvas").First).ToBeAttachedAsync(new() { Timeout = 60_000 });
        await page.WaitForTimeoutAsync(600);
        Assert.Empty(await UnderTheLine(page));
        Assert.NotEmpty(await UnderTheLine(page, lower: true));
        var strips = (await page.Locator("[data-strips]").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(strips.X + (0.8f * strips.Width), strips.Y + 80);
        await page.WaitForTimeoutAsync(300);
        Assert.Matches(@"^−?\d+\.\d$", Assert.Single(await UnderTheLine(page)));
    }

    // What is written over the curves, in the panel of the pitch or in those below it.
    private static Task<string[]> UnderTheLine(IPage page, bool lower = false) => page.EvaluateAsync<string[]>(
        """
        lower => {
            const [base, over] = document.querySelectorAll("[data-strips] canvas");
            const end = window.drawn.find(word => word.canvas === base && word.text.startsWith("road under")).top;
            return window.drawn.filter(word => word.canvas === over && (word.top > end) === lower).map(word => word.text);
        }
        """,
        lower);

    // What is written on a canvas leaves no trace in the page: the places are noted as they are written, until all is cleared.
    private static Task Note(IPage page) => page.AddInitScriptAsync(
            """
            const pen = CanvasRenderingContext2D.prototype, fill = pen.fillText, clear = pen.clearRect;
            window.drawn = [];
            pen.clearRect = function (...box) {
                window.drawn = window.drawn.filter(word => word.canvas !== this.canvas);
                return clear.apply(this, box);
            };
            pen.fillText = function (text, x, y) {
                const wide = this.measureText(text).width, left = x - wide * ({ right: 1, center: .5 }[this.textAlign] ?? 0);
                window.drawn.push({ text, canvas: this.canvas, left, right: left + wide, top: y - 6, bottom: y + 6 });
                return fill.call(this, text, x, y);
            };
            """);

    private static async Task<(int Written, string Covered)> Words(IPage page)
    {
        var found = await page.EvaluateAsync<string[]>(
            """
            () => {
                const placed = [...document.querySelectorAll(".pickable svg, .picture svg, svg.picture")]
                    .flatMap(svg => [...svg.querySelectorAll("text")])
                    .filter(one => one.textContent.trim()).map(one => ({ text: one.textContent, room: one.getBoundingClientRect() }))
                    .concat(window.drawn.filter(word => word.canvas.isConnected && word.canvas.closest("[data-strips]")).map(word => {
                        const at = word.canvas.getBoundingClientRect();
                        return { text: word.text, room: {
                            left: at.left + word.left, right: at.left + word.right, top: at.top + word.top, bottom: at.top + word.bottom } };
                    })).filter(one => one.room.right > one.room.left);
                const meet = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2
                    && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 4;
                const covered = [];
                placed.forEach((one, i) => placed.slice(0, i).forEach(other => {
                    if (meet(one.room, other.room)) covered.push(`“${one.text}” over “${other.text}”`);
                }));
                return [String(placed.length), covered.join("\n")];
            }
            """);
        return (int.Parse(found[0], System.Globalization.CultureInfo.InvariantCulture), found[1]);
    }
}
