using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Text;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Playwright;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Tuning;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

[Collection(OneProgram.Name)]
public class RulePageTests(Served served)
{
    private const string Saloon = "/rule?car=fern-saloon&load=driver";

    // A whole map on a busy machine.
    private const float Long = 180_000;

    [Fact]
    public async Task A_coarse_map_comes_first_with_progress_and_can_be_stopped_and_gone_on_with()
    {
        // A range that no other test asks for, so that nothing of it is kept.
        var page = await served.Open("/rule?car=drover-van&rule=damping&from=23&to=97");
        await Expect(page.GetByRole(AriaRole.Progressbar)).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Cancel" }).ClickAsync(new() { Timeout = Long });
        await Expect(page.GetByText("Stopped before its end.")).ToBeVisibleAsync(new() { Timeout = Long });
        await Expect(page.GetByRole(AriaRole.Progressbar)).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "Go on" }).ClickAsync();
        await Expect(page.GetByText("Coarse map.")).ToBeVisibleAsync(new() { Timeout = Long });
        await Expect(page.Locator(".map .picture").First).ToBeVisibleAsync(new() { Timeout = Long });
        await Expect(page.GetByText("Coarse map.")).ToHaveCountAsync(0, new() { Timeout = Long });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Cancel" })).ToHaveCountAsync(0);
        await Expect(page.Locator(".says")).ToContainTextAsync("no damping is best for all");
    }

    [Fact]
    public async Task Choices_stand_in_the_address_and_a_reload_brings_them_back()
    {
        var page = await Fine(Saloon);
        await page.GetByLabel("Judged by").SelectOptionAsync("hit");
        await Reached(page, "measure=hit");
        await page.GetByLabel("Load", new() { Exact = true }).SelectOptionAsync("four up with luggage");
        await Reached(page, "load=four");
        await page.ReloadAsync();
        await Expect(page.GetByLabel("Judged by")).ToHaveValueAsync("hit");
        await Expect(page.GetByLabel("Load", new() { Exact = true })).ToHaveValueAsync("four up with luggage");
        await Expect(page.GetByLabel("Car", new() { Exact = true })).ToHaveValueAsync("fern-saloon");
        await Expect(page.Locator(".says")).ToContainTextAsync("This judges the hit alone", new() { Timeout = Long });
    }

    [Fact]
    public async Task A_click_on_the_map_opens_that_ratio_and_speed_on_the_page_of_the_pass()
    {
        var page = await Fine(Saloon);
        var at = await page.EvaluateAsync<double[]>(
            """
            () => {
                const box = document.querySelector('.map .panel > .frame').getBoundingClientRect();
                return [box.left + (60 - 20) / (120 - 20) * box.width, box.bottom - (1.25 - .8) / (1.4 - .8) * box.height];
            }
            """);
        await page.Mouse.MoveAsync((float)at[0], (float)at[1]);
        await Expect(page.Locator(".map .read").First).ToContainTextAsync("speed 60 km/h");
        await page.Mouse.ClickAsync((float)at[0], (float)at[1]);
        await Reached(page, "/pass?");
        Assert.Equal(60.0, Number(page.Url, "speed"), 2.0);
        Assert.Equal(1.25, RatioAt(page.Url), 0.02);
        Assert.Equal("village-hump", Query(page.Url)["road"]);
        Assert.Equal("driver", Query(page.Url)["load"]);
        await Expect(page.Locator("#exact-speed")).ToHaveValueAsync(Query(page.Url)["speed"], new() { Timeout = Long });
        foreach (var setting in new[] { "front-spring", "rear-spring", "front-damping", "rear-damping" })
        {
            // Shown as exactly as the slider is.
            Assert.Equal(
                Number(page.Url, setting),
                double.Parse(await page.Locator($"#exact-{setting}").InputValueAsync(), CultureInfo.InvariantCulture),
                0.005);
        }

        await Expect(page.Locator("[data-note=ratio]")).ToContainTextAsync(RatioAt(page.Url).ToString("F2", CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task The_same_place_can_be_typed_and_opened_from_the_keyboard_alone()
    {
        var page = await Fine(Saloon);
        await page.Locator("#try-speed").FocusAsync();
        await page.Keyboard.PressAsync("Control+a");
        await page.Keyboard.TypeAsync("45");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Control+a");
        await page.Keyboard.TypeAsync("1.18");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Enter");
        await Reached(page, "/pass?");
        Assert.Equal(45.0, Number(page.Url, "speed"), 0.01);
        Assert.Equal(1.18, RatioAt(page.Url), 0.002);
    }

    [Fact]
    public async Task A_place_off_the_map_is_refused_in_words()
    {
        var page = await Fine(Saloon);
        await page.Locator("#try-value").FillAsync("7");
        await page.Locator("#try-value").PressAsync("Enter");
        await Expect(page.Locator("#try-value-refused")).ToContainTextAsync("does not lie between 0.8 and 1.4");
        Assert.Contains("/rule", page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_address_says_wrongly_is_said_beside_its_control()
    {
        var page = await served.Open("/rule?car=no-such-car");
        await Expect(page.Locator("#car-refused")).ToContainTextAsync("There is no car named no-such-car");
        await Expect(page.Locator("#car[aria-invalid=true]")).ToBeVisibleAsync();
        await Expect(page.Locator(".map")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_is_taken_away_is_what_it_says_it_is()
    {
        var page = await Fine(Saloon);
        var said = await page.Locator(".says li").AllInnerTextsAsync();
        async Task<byte[]> Take(string words)
        {
            var download = await page.RunAndWaitForDownloadAsync(
                () => page.GetByRole(AriaRole.Link, new() { Name = $"The map as {words}" }).ClickAsync(), new() { Timeout = Long });
            Assert.Equal($"fern-saloon-rule-ratio-settling.{words.ToLowerInvariant()}", download.SuggestedFilename);
            return await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        }

        Assert.Contains(
            "is it true that a front softer than the rear pitches less?", Encoding.UTF8.GetString(await Take("SVG")), StringComparison.Ordinal);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], (await Take("PNG"))[..4]);
        Assert.Equal("%PDF-", Encoding.ASCII.GetString((await Take("PDF"))[..5]));
        var rows = Encoding.UTF8.GetString(await Take("CSV")).TrimEnd().Split('\n');
        Assert.StartsWith("speed [km/h]", rows[0], StringComparison.Ordinal);
        var json = JsonNode.Parse(await Take("JSON"))!;
        var grid = json["tables"]![0]!;
        Assert.Equal(rows.Length - 1, grid["rows"]!.AsArray().Count * grid["columns"]!
            .AsArray().Count(c => double.TryParse(c!.GetValue<string>(), CultureInfo.InvariantCulture, out _)));
        // The page says what the command says, but for the option that the command names.
        Assert.Equal(json["sentences"]!.AsArray().Select(s => s!.GetValue<string>().Replace(" (--measure hit)", "", StringComparison.Ordinal)), said);
    }

    [Fact]
    public async Task Every_load_is_marked_and_one_alone_when_asked()
    {
        var page = await Fine(Saloon);
        await Expect(page.Locator("#map .picture text").Filter(new() { HasText = "four up with luggage" })).ToHaveCountAsync(1);
        await page.GetByLabel("mark every load").UncheckAsync();
        await Reached(page, "marks=one");
        await Expect(page.Locator(".map .picture text").Filter(new() { HasText = "four up with luggage" })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task The_levels_of_a_map_are_round_numbers_from_its_middle()
    {
        var page = await served.Open("/rule?car=no-such-car");
        var levels = await page.EvaluateAsync<double[]>("async () => (await import('/_content/Heaveline.Web/map.js')).levelsOf(.53, 2.21, 1)");
        Assert.Equal([0.6, 0.8, 1.0, 1.2, 1.4, 1.6, 1.8, 2.0, 2.2], levels);
    }

    [Fact]
    public async Task Levels_that_are_ratios_are_shaded_each_as_deep_as_the_next_and_bear_their_own_numbers()
    {
        var page = await served.Open("/rule?car=no-such-car");
        var ranks = await page.EvaluateAsync<double[]>(
            "async () => (await import('/_content/Heaveline.Web/map.js'))"
            + ".shadesOf([.5, .6, .7, .8, .9, 1, 1.1, 1.25, 1.5, 2], 1).map(shade => 6 * shade)");
        Assert.Equal([-6.0, -5.0, -4.0, -3.0, -2.0, -1.0, 1.0, 2.0, 3.0, 4.0, 5.0], ranks.Select(r => Math.Round(r, 9)));

        page = await Fine("/rule?car=fern-saloon&load=driver&rule=damping&from=30&to=110");
        await Expect(page.Locator(".map .numbers text", new() { HasText = "1.25" }).First).ToBeAttachedAsync();
        await Expect(page.Locator(".map .key text").Filter(new() { HasTextRegex = new("^1$") }).First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Drawing_a_map_breaks_no_policy_and_fetches_nothing_from_elsewhere()
    {
        var page = await served.Open("/rule?car=no-such-car");
        var complaints = new List<string>();
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                complaints.Add(message.Text);
            }
        };
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(served.Address.ToString(), StringComparison.Ordinal)
                && !request.Url.StartsWith("data:", StringComparison.Ordinal))
            {
                complaints.Add(request.Url);
            }
        };
        await page.GotoAsync(Saloon);
        await Drawn(page);
        Assert.Empty(complaints);
    }

    [Theory]
    [InlineData(390)]
    [InlineData(768)]
    [InlineData(2560)]
    public async Task The_page_is_never_wider_than_its_window(int width)
    {
        var page = await Fine(Saloon, width);
        Assert.Equal(0, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth"));
    }

    [Theory]
    [InlineData(false, 1280)]
    [InlineData(true, 1280)]
    [InlineData(false, 390)]
    [InlineData(true, 390)]
    public async Task The_accessibility_engine_finds_nothing(bool dark, int width)
    {
        var page = await Fine(Saloon, width, dark);
        await Accessible.Check(page);
    }

    // Asked again and again: an address that changes between a look and a listening would be missed.
    private static Task Reached(IPage page, string part) => Expect(page).ToHaveURLAsync(new Regex(Regex.Escape(part)), new() { Timeout = Long });

    private async Task<IPage> Fine(string path, int width = 1280, bool dark = false)
    {
        var page = await served.Open(path, width, dark: dark);
        await Drawn(page);
        return page;
    }

    private static async Task Drawn(IPage page)
    {
        await Expect(page.Locator(".map .picture").First).ToBeVisibleAsync(new() { Timeout = Long });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Cancel" })).ToHaveCountAsync(0, new() { Timeout = Long });
        await Expect(page.GetByText("Coarse map.")).ToHaveCountAsync(0, new() { Timeout = Long });
    }

    private static Dictionary<string, string> Query(string url) =>
        QueryHelpers.ParseQuery(new Uri(url).Query).ToDictionary(pair => pair.Key, pair => pair.Value.ToString());

    private static double Number(string url, string name) => double.Parse(Query(url)[name], CultureInfo.InvariantCulture);

    // The car that the address sets, under its load.
    private double RatioAt(string url)
    {
        var car = CarFile.Load(Path.Combine(served.Garage, "fern-saloon.yaml"), served.Garage).Value!;
        Axle Sprung(Axle axle, string end) => axle with
        {
            Spring = axle.Spring with
            {
                Law = ((LinearSpring)axle.Spring.Law) with { Rate = new Amount<Stiffness>(1000.0 * Number(url, end + "-spring")) },
            },
        };
        var set = car with { Front = Sprung(car.Front, "front"), Rear = Sprung(car.Rear, "rear") };
        return RideTuning.Of(RideModel.Of(set, set.LoadStates.First(l => l.Name == Query(url)["load"]))).Ratio;
    }
}
