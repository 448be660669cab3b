using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

[Collection(OneProgram.Name)]
public class RidePageTests(Served served)
{
    private const string Saloon = "/ride?car=fern-saloon&load=driver";

    private const float Long = 180_000;

    [Fact]
    public async Task Pitch_as_it_is_and_what_the_standard_counts_stand_side_by_side()
    {
        var page = await Driven(Saloon);
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("How Fern saloon rides on a random road of class C");
        foreach (var axis in new[]
        {
            "pitch acceleration, RMS, as it is (rad/s²)",
            "counted by the standard, RMS, weighted (m/s²)",
            "gain of the wheelbase",
            "spectral density of heights (m³)",
        })
        {
            await Expect(page.Locator(".picture text").Filter(new() { HasText = axis }).First).ToBeVisibleAsync();
        }

        await Expect(page.GetByText("The standard turns pitch down").First).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = "driver: pitch by We, times 0.4 m/rad" })).ToBeVisibleAsync();
        var boxes = await page.EvaluateAsync<double[]>("() => [...document.querySelectorAll('.pickable')].map(f => f.getBoundingClientRect().left)");
        Assert.True(boxes[1] > boxes[0] + 300.0, "The two stand below one another.");
    }

    [Fact]
    public async Task A_click_on_the_sweep_takes_that_speed_for_the_spectra_and_a_link_leads_to_the_pass()
    {
        var page = await Driven(Saloon);
        var at = await page.EvaluateAsync<double[]>(
            """
            () => {
                const box = document.querySelector('.pickable .panel .frame').getBoundingClientRect();
                return [box.left + (60 - 20) / (120 - 20) * box.width, box.top + box.height / 2];
            }
            """);
        await page.Mouse.MoveAsync((float)at[0], (float)at[1]);
        await page.Mouse.ClickAsync((float)at[0], (float)at[1]);
        await Reached(page, "at=60");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "At 60 km/h: what the wheelbase lets through" }))
            .ToBeVisibleAsync(new() { Timeout = Long });
        await page.GetByRole(AriaRole.Link, new() { Name = "drive over a bump at 60 km/h" }).ClickAsync();
        await Reached(page, "/pass?car=fern-saloon&load=driver&speed=60");
    }

    [Fact]
    public async Task Choices_stand_in_the_address_and_a_reload_brings_them_back()
    {
        var page = await Driven(Saloon);
        await page.GetByLabel("Road", new() { Exact = true }).SelectOptionAsync("density");
        await page.GetByLabel("Density at 0.1 cycles/m").FillAsync("100");
        await page.GetByLabel("Density at 0.1 cycles/m").PressAsync("Enter");
        await Reached(page, "density=100");
        await page.GetByLabel("Seat", new() { Exact = true }).SelectOptionAsync("rear left");
        await Reached(page, "seat=rear");
        await page.GetByLabel("Held against it").SelectOptionAsync("fern-saloon-cured");
        await Reached(page, "beside=fern-saloon-cured");
        await page.ReloadAsync();
        await Expect(page.GetByLabel("Road", new() { Exact = true })).ToHaveValueAsync("density");
        await Expect(page.GetByLabel("Density at 0.1 cycles/m")).ToHaveValueAsync("100");
        await Expect(page.GetByLabel("Seat", new() { Exact = true })).ToHaveValueAsync("rear left");
        await Expect(page.GetByLabel("Held against it")).ToHaveValueAsync("fern-saloon-cured");
        await Expect(page.Locator("caption").Filter(new() { HasText = "Fern saloon, cured, by speed" })
            .Or(page.Locator("caption").Filter(new() { HasText = "by speed" }).Nth(1))).ToBeVisibleAsync(new() { Timeout = Long });
        await Expect(page.Locator(".picture text").Filter(new() { HasText = "vertical at the seat, rear left" })).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Passes_in_time_show_their_progress_can_be_stopped_and_bring_their_intervals()
    {
        var page = await Driven(Saloon + "&from=40&to=60");
        await page.GetByLabel("check by passes in time").CheckAsync();
        await Reached(page, "in-time=yes");
        await page.GetByRole(AriaRole.Button, new() { Name = "Cancel" }).ClickAsync();
        await Expect(page.GetByText("Stopped before its end.")).ToBeVisibleAsync(new() { Timeout = Long });
        await page.GetByRole(AriaRole.Button, new() { Name = "Go on" }).ClickAsync();
        await Expect(page.GetByText("Shaded: 95 % interval of passes in time")).ToBeVisibleAsync(new() { Timeout = Long });
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = "its 95 % interval, from rad/s²" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_road_without_a_class_is_shown_and_the_page_says_why_there_is_no_ride()
    {
        var page = await served.Open("/ride?car=fern-saloon&road=village-hump");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "This road has no class" })).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "The road itself" })).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "drive over this road" })).ToHaveAttributeAsync(
            "href", "pass?car=fern-saloon&load=driver&road=village-hump&speed=80");
        await Expect(page.Locator(".pickable")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_the_address_says_wrongly_is_said_beside_its_control()
    {
        var page = await served.Open("/ride?car=no-such-car");
        await Expect(page.Locator("#car-refused")).ToContainTextAsync("There is no car named no-such-car");
        await Expect(page.Locator("#car[aria-invalid=true]")).ToBeVisibleAsync();
        await Expect(page.Locator(".pickable")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_is_taken_away_is_what_it_says_it_is()
    {
        var page = await Driven(Saloon);
        async Task<byte[]> Take(string of, string words)
        {
            var download = await page.RunAndWaitForDownloadAsync(
                () => page.GetByRole(AriaRole.Link, new() { Name = $"{of} as {words}", Exact = true }).ClickAsync(), new() { Timeout = Long });
            return await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        }

        foreach (var of in new[]
        {
            "The ride against speed", "Pitch as it is and as counted", "The spectra", "The transfer from road to body", "The road",
        })
        {
            Assert.Contains("<svg", Encoding.UTF8.GetString(await Take(of, "SVG")), StringComparison.Ordinal);
        }

        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], (await Take("The spectra", "PNG"))[..4]);
        Assert.Equal("%PDF-", Encoding.ASCII.GetString((await Take("The ride against speed", "PDF"))[..5]));
        var rows = Encoding.UTF8.GetString(await Take("The ride against speed", "CSV")).TrimEnd().Split('\n');
        var json = JsonNode.Parse(await Take("The ride against speed", "JSON"))!;
        Assert.Equal(json["tables"]![0]!["rows"]!.AsArray().Count, rows.Length - 1);
        Assert.StartsWith("distance [m],left [mm],right [mm]", Encoding.UTF8.GetString(await Take("The road", "CSV")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_road_is_chosen_from_the_keyboard_alone()
    {
        var page = await Driven(Saloon);
        await page.GetByLabel("Road", new() { Exact = true }).FocusAsync();
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("Tab");
        await Reached(page, "road=class-D");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("class D");
    }

    [Theory]
    [InlineData(390)]
    [InlineData(768)]
    [InlineData(2560)]
    public async Task The_page_is_never_wider_than_its_window(int width)
    {
        var page = await Driven(Saloon, width);
        Assert.Equal(0, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth"));
    }

    [Theory]
    [InlineData(false, 1280)]
    [InlineData(true, 1280)]
    [InlineData(false, 390)]
    [InlineData(true, 390)]
    public async Task The_accessibility_engine_finds_nothing(bool dark, int width)
    {
        var page = await Driven(Saloon, width, dark);
        await Accessible.Check(page);
    }

    // Names beside the curves, headings and numbers: what would be cut stands outside its chart. What the policy forbids is told to the console.
    [Fact]
    public async Task At_a_phones_width_every_word_of_the_charts_stands_within_them_and_nothing_asks_for_a_style_that_is_forbidden()
    {
        var page = await served.Open("/ride?car=drover-van&load=driver&beside=fern-saloon", 390);
        var forbidden = new List<string>();
        page.Console += (_, message) =>
        {
            if (message.Text.Contains("Content Security Policy", StringComparison.Ordinal))
            {
                forbidden.Add(message.Text);
            }
        };
        await page.ReloadAsync();
        await Expect(page.Locator(".chart .picture")).ToHaveCountAsync(5, new() { Timeout = Long });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Cancel" })).ToHaveCountAsync(0, new() { Timeout = Long });
        var cut = await page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('.picture text')].filter(text => {
                const own = text.getBoundingClientRect(), box = text.closest('.chart').getBoundingClientRect();
                return own.width > 0 && (own.right > box.right + 1 || own.left < box.left - 1);
            }).map(text => text.textContent)
            """);
        Assert.Empty(cut);
        Assert.NotEqual(0, await page.Locator(".picture text").Filter(new() { HasText = "Fern saloon" }).CountAsync());
        Assert.Empty(forbidden);
    }

    // Asked again and again: an address that changes between a look and a listening would be missed.
    private static Task Reached(IPage page, string part) => Expect(page).ToHaveURLAsync(new Regex(Regex.Escape(part)), new() { Timeout = Long });

    private async Task<IPage> Driven(string path, int width = 1280, bool dark = false)
    {
        var page = await served.Open(path, width, dark: dark);
        await Expect(page.Locator(".chart .picture")).ToHaveCountAsync(5, new() { Timeout = Long });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Cancel" })).ToHaveCountAsync(0, new() { Timeout = Long });
        return page;
    }
}
