using System.Collections.Concurrent;
using System.Globalization;
using System.IO.Compression;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>Charts and maps as their readers meet them: by keyboard, by pointer, in the dark, in forced colours, on a slow line.</summary>
[Collection(OneProgram.Name)]
public class ChartTests(Served served)
{
    private const string Rule = "/rule?car=fern-saloon&load=driver&speed=40";
    private const string Ride = "/ride?car=fern-saloon&load=driver";

    // A whole map on a busy machine.
    private const float Long = 180_000;

    [Fact]
    public async Task A_map_is_walked_over_by_arrow_keys_from_the_car_on_and_says_in_words_what_stands_there()
    {
        var page = await Drawn(Rule, ".map .picture");
        var (plot, said) = (page.Locator("#map .plot"), page.Locator("#map .read"));
        await page.Locator("#marks").FocusAsync();
        await page.Keyboard.PressAsync("Tab");
        await Expect(plot).ToBeFocusedAsync();
        // The car's own value is 1.124, and the nearest one that was computed 1.125.
        await Expect(said).ToContainTextAsync("speed 40 km/h, rear/front frequency ratio 1.125: ");
        await Expect(said).ToHaveAttributeAsync("aria-live", "polite");
        await page.Keyboard.PressAsync("ArrowUp");
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(said).ToContainTextAsync("speed 41.25 km/h, rear/front frequency ratio 1.138: ");
        await Expect(said).ToContainTextAsync("against this car's own 1.124");
        await page.Keyboard.PressAsync("Shift+ArrowUp");
        await Expect(said).ToContainTextAsync("Measured from speed 41.25 km/h, rear/front frequency ratio 1.138 to speed 41.25 km/h, ");
        await Expect(said).ToContainTextAsync("rear/front frequency ratio 1.15: ");
        await page.Keyboard.PressAsync("Escape");
        await Expect(said).Not.ToContainTextAsync("Measured");
        await page.Keyboard.PressAsync("Escape");
        await Expect(said).ToBeEmptyAsync();
    }

    [Fact]
    public async Task The_place_that_is_entered_by_the_keyboard_opens_on_the_page_of_the_pass()
    {
        var page = await Drawn(Rule, ".map .picture");
        await page.Locator("#marks").FocusAsync();
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("ArrowUp");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page).ToHaveURLAsync(new Regex("/pass\\?car=fern-saloon&load=driver&road=village-hump&speed=40&"), new() { Timeout = Long });
    }

    [Fact]
    public async Task A_finger_reads_first_and_opens_what_it_has_read_by_a_second_press()
    {
        var page = await Drawn(Rule, ".map .picture");
        var plot = page.Locator("#map .plot");
        var box = (await plot.BoundingBoxAsync())!;
        async Task Press()
        {
            var (x, y) = ((int)box.X + 250, (int)box.Y + 250);
            var at = new { pointerType = "touch", button = 0, buttons = 1, bubbles = true, clientX = x, clientY = y };
            await plot.DispatchEventAsync("pointerdown", at);
            await plot.DispatchEventAsync("pointerup", at);
        }

        await Press();
        await Expect(page.Locator("#map .read")).ToContainTextAsync("speed ");
        Assert.Contains("/rule?", page.Url, StringComparison.Ordinal);
        await Press();
        await Expect(page).ToHaveURLAsync(new Regex("/pass\\?car=fern-saloon&load=driver&road=village-hump&speed="), new() { Timeout = Long });
    }

    [Fact]
    public async Task Two_maps_of_the_same_passes_are_read_at_one_place()
    {
        var page = await Drawn(Rule, "#map-beside .picture");
        await page.Locator("#map .plot").HoverAsync(new() { Position = new() { X = 250, Y = 250 } });
        var place = Regex.Match(await page.Locator("#map .read").InnerTextAsync(), "^speed .* ratio [0-9.]+: ").Value;
        Assert.NotEqual("", place);
        await Expect(page.Locator("#map-beside .read")).ToContainTextAsync(place);
        // What a pointer sweeps over is not spoken.
        await Expect(page.Locator("#map .read")).ToHaveAttributeAsync("aria-live", "off");
        await Expect(page.Locator(".map .reading .tried")).ToHaveCountAsync(4);
    }

    [Fact]
    public async Task The_car_is_a_point_at_each_load_with_its_doubt_as_a_bar()
    {
        var page = await Drawn(Rule, ".map .picture");
        var points = page.Locator("#map .mark-at").Filter(new() { Has = page.Locator(".doubt") });
        await Expect(points).ToHaveCountAsync(3);
        await Expect(page.Locator("#map .mark-at.here text")).ToHaveTextAsync(new Regex(@"^driver 1\.12 ± 0\.0\d$"));
        Assert.True(await page.Locator("#map .here .doubt").EvaluateAsync<double>("bar => bar.getBBox().height") > 1.0);
    }

    [Fact]
    public async Task A_chart_is_read_by_a_pointer_and_a_pull_measures()
    {
        var page = await Drawn(Ride, ".pickable .picture");
        var chart = page.Locator(".chart").Nth(2);
        var plot = chart.Locator(".plot");
        await plot.HoverAsync(new() { Position = new() { X = 200, Y = 60 } });
        await Expect(chart.Locator(".read")).ToHaveTextAsync(
            new Regex("^frequency [0-9.]+ Hz: gain of the wheelbase: heave [0-9.]+, pitch [0-9.]+; heave acceleration [0-9.·⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+ m²/s³"));
        await Expect(chart.Locator(".reading .value")).Not.ToHaveCountAsync(0);
        var box = (await plot.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + 150, box.Y + 60);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + 220, box.Y + 62);
        await page.Mouse.MoveAsync(box.X + 260, box.Y + 64);
        await page.Mouse.UpAsync();
        await Expect(chart.Locator(".read")).ToHaveTextAsync(
            new Regex(@"^Measured from frequency [0-9.]+ to [0-9.]+ Hz, [0-9.]+ Hz apart: .*heave −0\.\d+"));
        await Expect(chart.Locator(".reading .span")).ToHaveCountAsync(3);
    }

    [Fact]
    public async Task A_chart_is_a_table_too_for_those_who_read_numbers()
    {
        var page = await Drawn(Ride, ".pickable .picture");
        var twin = page.Locator(".chart").Nth(2).Locator(".twin");
        await twin.Locator("summary").ClickAsync();
        await Expect(twin.Locator("thead th").Nth(1)).ToHaveTextAsync("gain of the wheelbase: heave");
        await Expect(twin.Locator("tbody tr")).ToHaveCountAsync(21);
        await Accessible.Check(page);
    }

    // Both axes of a spectrum over many decades: powers of ten bear the numbers, and nothing but numbers bears them.
    [Fact]
    public async Task Logarithmic_axes_bear_powers_of_ten_and_classes_of_roads_are_lettered()
    {
        var page = await Drawn(Ride, ".chart .picture");
        var spectrum = page.Locator(".chart").Nth(4).Locator(".panel").Nth(1);
        var ticks = await spectrum.Locator(".tick.y").AllTextContentsAsync();
        Assert.True(ticks.Count > 3);
        Assert.All(ticks, tick => Assert.Matches("^10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+$", tick));
        var letters = await spectrum.Locator("text.halo").Filter(new() { HasTextRegex = new("^[A-H]$") }).AllTextContentsAsync();
        Assert.True(letters.Count >= 3, $"Only {letters.Count} classes are lettered.");
        Assert.Equal(letters.Order(), letters);
    }

    // Rounding noise on a constant: steps so fine that adding one changes nothing would never end.
    [Theory]
    [InlineData(false, 512.3, 1e-13)]
    [InlineData(false, 512.3, 1e-10)]
    [InlineData(false, -4e9, 1e-6)]
    [InlineData(false, 0.0, 0.0)]
    [InlineData(true, 512.3, 1e-13)]
    public async Task An_axis_over_a_hair_of_a_range_has_some_numbers_and_no_more(bool isLog, double value, double hair)
    {
        var page = await served.Open("/rule?car=no-such-car");
        var counts = await page.EvaluateAsync<int[]>(
            """
            async ([log, value, hair]) => {
                const { even, range, ticks } = await import("/_content/Heaveline.Web/scales.js");
                const [low, high] = range({ log, from: null, to: null }, [value, value + hair], .06);
                return [ticks(log, low, high, 6).main.length, even(value, value + hair, 6).length];
            }
            """,
            new object[] { isLog, value, hair });
        Assert.InRange(counts[0], 2, 12);
        Assert.InRange(counts[1], 1, 12);
    }

    // Style sheets of other pages know some words for other things: nothing of a picture takes its size from them.
    [Fact]
    public async Task A_span_is_shaded_from_end_to_end_of_it_and_as_tall_as_its_panel()
    {
        var page = await served.Open("/rule?car=no-such-car");
        var sizes = await page.EvaluateAsync<double[]>(
            """
            async () => {
                const { draw } = await import("/_content/Heaveline.Web/chart.js");
                const place = document.querySelector("main").appendChild(document.createElement("div"));
                const curve = { name: "", above: "", below: "", ink: "First", dash: "Solid", width: 1, n: 3 };
                const axis = { log: false, from: null, to: null };
                const panel = {
                    kind: "chart", title: "", x: { ...axis, label: "time", unit: "s" }, y: { ...axis, label: "speed", unit: "km/h" }, shared: true,
                    height: null, traces: [curve],
                };
                const sheet = { panels: [panel, panel], bands: [{ from: 1, to: 2, label: "hit", shade: "Grey" }], alt: "" };
                await draw(place, sheet, new Uint8Array(new Float32Array([0, 1, 4, 5, 6, 7, 0, 1, 4, 5, 6, 7]).buffer), null, "");
                const frame = place.querySelector(".panel > .frame").getBoundingClientRect();
                return [...place.querySelectorAll(".shaded")].map(one => one.getBoundingClientRect())
                    .flatMap(box => [box.width / frame.width, box.height / frame.height, (box.left - frame.left) / frame.width]);
            }
            """);
        // Of two panels the first is the larger.
        Assert.Equal([0.25, 1.0, 0.25, 0.25, 32.0 / 44.0, 0.25], sizes.Select(size => size), (a, b) => Math.Abs(a - b) < 0.02);
    }

    // WCAG 2.2, 1.4.11: graphics 3:1 against what they stand on; the colours are those that the browser has computed.
    [Theory]
    [InlineData(ColorScheme.Light, ForcedColors.None)]
    [InlineData(ColorScheme.Dark, ForcedColors.None)]
    [InlineData(ColorScheme.Light, ForcedColors.Active)]
    [InlineData(ColorScheme.Dark, ForcedColors.Active)]
    public async Task Curves_and_words_stand_out_in_light_dark_and_forced_colours(ColorScheme scheme, ForcedColors forced)
    {
        var page = await Drawn(Ride, ".chart .picture");
        await page.EmulateMediaAsync(new() { ColorScheme = scheme, ForcedColors = forced });
        var pairs = await page.EvaluateAsync<string[]>(
            """
            () => {
                const ground = getComputedStyle(document.documentElement).backgroundColor;
                const of = (selector, property) => [...document.querySelectorAll(selector)]
                    .map(one => `${getComputedStyle(one)[property]}|${ground}`);
                return [...new Set([...of('.picture .curve', 'stroke'), ...of('.picture text', 'fill'), ...of('.picture .frame', 'stroke')])];
            }
            """);
        Assert.True(pairs.Length > 2);
        Assert.All(pairs, pair => Assert.True(Contrast(pair) >= 2.9, $"{pair}: {Contrast(pair):F2}"));
    }

    // What a build stores as it is a publication presses together, so scripts and style sheets are weighed pressed; the rest as it came.
    [Fact]
    public async Task The_page_of_the_rule_with_all_it_fetches_weighs_no_more_than_200_kB()
    {
        var page = await served.Open("/_content/Heaveline.Web/mark.svg");
        var fetched = new ConcurrentQueue<IResponse>();
        page.Response += (_, response) => fetched.Enqueue(response);
        await page.GotoAsync(Rule);
        await Expect(page.Locator("#map-beside .picture")).ToBeVisibleAsync(new() { Timeout = Long });
        await Expect(page.GetByText("Coarse map.")).ToHaveCountAsync(0, new() { Timeout = Long });
        var weight = 0L;
        foreach (var response in fetched.ToArray())
        {
            await response.FinishedAsync().WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);
            var isOurs = response.Url.Contains("/_content/", StringComparison.Ordinal);
            weight += isOurs ? Pressed(await response.BodyAsync()) : (await response.Request.SizesAsync()).ResponseBodySize;
        }

        Assert.Contains(fetched, response => response.Url.EndsWith("/map.js", StringComparison.Ordinal));
        Assert.InRange(weight, 50_000, 200_000);
    }

    private static long Pressed(byte[] body)
    {
        var pressed = new MemoryStream();
        using (var zip = new GZipStream(pressed, CompressionLevel.Optimal, leaveOpen: true))
        {
            zip.Write(body);
        }

        return pressed.Length;
    }

    // Relative luminance by WCAG 2.2.
    private static double Contrast(string pair)
    {
        double[] bright = [.. pair.Split('|').Select(colour =>
        {
            double[] parts = [.. Regex.Matches(colour, "[0-9.]+").Take(3).Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture) / 255.0)];
            double[] linear = [.. parts.Select(p => p <= 0.04045 ? p / 12.92 : Math.Pow((p + 0.055) / 1.055, 2.4))];
            return (0.2126 * linear[0]) + (0.7152 * linear[1]) + (0.0722 * linear[2]);
        })];
        return (bright.Max() + 0.05) / (bright.Min() + 0.05);
    }

    private async Task<IPage> Drawn(string path, string stands)
    {
        var page = await served.Open(path);
        await Expect(page.Locator(stands).First).ToBeVisibleAsync(new() { Timeout = Long });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Cancel" })).ToHaveCountAsync(0, new() { Timeout = Long });
        await Expect(page.GetByText("Coarse map.")).ToHaveCountAsync(0, new() { Timeout = Long });
        if (path.StartsWith("/ride", StringComparison.Ordinal))
        {
            await Expect(page.Locator(".chart .picture")).ToHaveCountAsync(5, new() { Timeout = Long });
        }

        return page;
    }
}
