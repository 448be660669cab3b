using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Heaveline.BrowserTests.PassPageTests;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

[Collection(OneProgram.Name)]
public class PassViewTests(Served served)
{
    private const string Saloon = "/pass?car=fern-saloon&load=four%20up%20with%20luggage&road=village-hump";

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Nothing_moves_until_it_is_driven_and_then_it_drives_round_and_round_until_it_is_told_to_rest(bool still)
    {
        var page = await Open(Saloon, still: still);
        await Expect(page.Locator("[data-play]")).ToHaveTextAsync("Drive it");
        var (rest, picture) = (await page.Locator("[data-time]").InnerTextAsync(), await Picture(page));
        await Task.Delay(400, TestContext.Current.CancellationToken);
        Assert.Equal(rest, await page.Locator("[data-time]").InnerTextAsync());

        // Fast enough to come round within a moment: the time goes back by itself.
        await page.Locator("[data-rate]").SelectOptionAsync("1");
        await page.Locator("[data-play]").ClickAsync();
        await Expect(page.Locator("[data-play]")).ToHaveTextAsync("Rest");
        var before = await Moment(page);
        await Eventually(async () =>
        {
            var now = await Moment(page);
            var isRound = now < before;
            before = now;
            Assert.True(isRound, $"{now} s");
        });

        await page.Locator("[data-scene]").FocusAsync();
        await page.Keyboard.PressAsync(" ");
        await Expect(page.Locator("[data-play]")).ToHaveTextAsync("Drive it");
        Assert.Equal(rest, await page.Locator("[data-time]").InnerTextAsync());
        Assert.Equal(picture, await Picture(page));
    }

    [Fact]
    public async Task The_picture_rests_where_it_tells_most_and_says_how_much_larger_movements_are()
    {
        var page = await Open(Saloon);
        await Expect(page.Locator("[data-stretch]")).ToHaveValueAsync("3");
        await Expect(page.Locator("[data-said]")).ToHaveTextAsync(new Regex("^nose [0-9.]+° (up|down)$"));
        await Expect(page.Locator(".player-words")).ToContainTextAsync("rests where it pitches most");
        var picture = await Picture(page);
        await page.Locator("[data-stretch]").SelectOptionAsync("1");
        Assert.NotEqual(picture, await Picture(page));
        await Set(page, "rear-spring", "52");
        await Expect(page.Locator("[data-said]")).ToHaveTextAsync(new Regex("^nose [0-9.]+° (up|down), was [0-9.]+° (up|down)$"));
        await Expect(page.Locator(".player-words")).ToContainTextAsync("rests where the two differ most");
    }

    [Fact]
    public async Task The_film_has_six_moments_and_leads_to_each_by_press_by_arrow_and_by_dragging()
    {
        var page = await Open(Saloon);
        var frames = page.Locator("[data-frame]");
        await Expect(frames).ToHaveCountAsync(6);
        await Expect(frames.First).ToHaveTextAsync("meets it");
        await Expect(frames.Last).ToHaveTextAsync("nearly still");
        await frames.First.ClickAsync();
        await Expect(page.Locator("[data-time]")).ToHaveTextAsync("0.00 s");
        await Expect(frames.First).ToHaveAttributeAsync("aria-current", "step");
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(frames.Nth(1)).ToBeFocusedAsync();
        await Expect(frames.Nth(1)).ToHaveAttributeAsync("aria-current", "step");
        var second = await Moment(page);
        Assert.True(second > 0.0);

        await frames.Nth(1).HoverAsync();
        await page.Mouse.DownAsync();
        await frames.Nth(4).HoverAsync();
        await page.Mouse.UpAsync();
        Assert.True(await Moment(page) > second);
    }

    [Fact]
    public async Task Finding_picture_film_pitch_and_the_sliders_used_most_are_in_one_view()
    {
        var page = await Open(Saloon + "&rear-spring=50&front-spring=18.5", height: 800);
        foreach (var place in new[] { ".finding", "#verdict", "[data-scene]", "[data-frame] >> nth=5", "#slide-front-spring", "#slide-rear-damping" })
        {
            var box = (await page.Locator(place).BoundingBoxAsync())!;
            Assert.True(box.Y >= 0 && box.Y + box.Height <= 800, $"{place} ends at {box.Y + box.Height}");
        }

        // The first panel, with its title, is the pitch: a quarter more than 28 mm high on paper, 3.9 pixels each, under 44 pixels of words.
        var strips = (await page.Locator("[data-strips]").BoundingBoxAsync())!;
        Assert.True(strips.Y + 44 + (1.25 * 28 * 0.88 * 3.9) <= 800, $"the curves begin at {strips.Y}");
        var (front, rear) = (
            (await page.Locator("#slide-front-spring").BoundingBoxAsync())!, (await page.Locator("#slide-rear-spring").BoundingBoxAsync())!);
        Assert.Equal(front.Y, rear.Y, 1.0);
        Assert.True(rear.X > front.X + front.Width - 1);
    }

    [Fact]
    public async Task On_a_phone_no_number_of_the_table_is_beside_the_screen()
    {
        var page = await Open(Saloon + "&rear-spring=50", 390);
        var cells = page.Locator(".before-after tbody td");
        Assert.True(await cells.CountAsync() > 9);
        foreach (var cell in await cells.AllAsync())
        {
            var box = (await cell.BoundingBoxAsync())!;
            Assert.True(box.X >= 0 && box.X + box.Width <= 390, $"{await cell.InnerTextAsync()} ends at {box.X + box.Width}");
        }
    }

    [Fact]
    public async Task On_a_phone_come_finding_picture_pitch_and_sliders_and_the_picture_stays_in_sight()
    {
        var page = await Open(Saloon + "&rear-spring=50", 390);
        float[] tops =
        [
            .. await Task.WhenAll(new[]
            {
                ".finding", "[data-scene]", "[data-strips]", "#slide-front-spring", ".pass > .choices", "[data-frame] >> nth=0",
                ".strips figcaption", "#story",
            }
                .Select(async place => (await page.Locator(place).BoundingBoxAsync())!.Y)),
        ];
        Assert.Equal(tops.Order(), tops);

        var height = (await page.Locator("[data-strips]").BoundingBoxAsync())!.Height;
        await Expect(page.Locator("[data-curves]")).ToHaveAttributeAsync("aria-expanded", "false");
        await page.Locator("[data-curves]").ClickAsync();
        await Expect(page.Locator("[data-curves]")).ToHaveAttributeAsync("aria-expanded", "true");
        Assert.True((await page.Locator("[data-strips]").BoundingBoxAsync())!.Height > 2 * height);
        await page.Locator("[data-curves]").ClickAsync();

        await page.Locator("#slide-rear-damping").ScrollIntoViewIfNeededAsync();
        await page.EvaluateAsync("() => document.querySelector('#slide-rear-damping').scrollIntoView({ block: 'center' })");
        var scene = (await page.Locator("[data-scene]").BoundingBoxAsync())!;
        Assert.InRange(scene.Y, -1, 1);
    }

    private async Task<IPage> Open(string path, int width = 1280, bool still = true, int height = 900)
    {
        var page = await served.Open(path, width, height, false, still);
        await Ready(page);
        return page;
    }

    private static async Task<double> Moment(IPage page) => double.Parse(
        (await page.Locator("[data-time]").InnerTextAsync()).Split(' ')[0].Replace('−', '-'), System.Globalization.CultureInfo.InvariantCulture);
}
