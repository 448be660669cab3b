using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>One pass in a file of its own, opened from the disk by a browser that reaches nothing, against the core.</summary>
[Collection(OneProgram.Name)]
public class LiveFileTests(Served served)
{
    private const string Loaded = "car=fern-saloon&load=four%20up%20with%20luggage&road=village-hump&speed=40";

    [Theory]
    [InlineData(Loaded, 3)]
    [InlineData("car=drover-van&road=pothole-left", 5)]
    [InlineData("car=plover-motorcycle&road=kerb-down", 9)]
    public async Task Its_numbers_are_those_of_the_core_wherever_its_sliders_stand(string query, int seed)
    {
        var page = await Opened(query);
        var garage = new GarageView(new ServeOptions { Garage = served.Garage });
        var state = PassState.Of("?" + query, "");
        var trial = new PassTrial(garage);
        var view = trial.See(state, full: true).View!;
        SliderLine[] lines = [.. SliderLine.Of(view, ReaderUnits.Metric).SelectMany(group => group.Lines)];
        Assert.Equal(await Texts(page, "td.number:nth-child(2)"), await Texts(page, "td.now"));
        var random = new Random(seed);
        var compared = 0;
        for (var round = 0; round < 6; round++)
        {
            var asked = state;
            foreach (var line in lines.Where(one => one.Key is "rear-damping" or "front-spring" or "luggage" or PassState.Speed))
            {
                // A speed from which no wheel is thrown past its limits.
                var most = line.Key == PassState.Speed ? 60 : LiveSettings.Places(line);
                var value = LiveSettings.Value(line, random.Next(line.Key == PassState.Speed ? 20 : 0, most));
                await Slide(page, line.Key, value);
                asked = asked.With(line.Key, line.Own(value));
            }

            var (set, objections) = trial.See(asked, full: false);
            var refused = await page.Locator(".refusal:not(:empty)").CountAsync() > 0;
            if (set is null || set.Now.Pass.Outcome != PassOutcome.Completed)
            {
                Assert.True(refused, string.Join(' ', objections.Select(o => o.Sentence)));
                continue;
            }

            Assert.False(refused, $"round {round}: {string.Join(", ", asked.Values)}");
            var rows = set.Changes.ToDictionary(change => change.Measure.Key, change => change.Print(change.After));
            foreach (var (key, now) in await Texts(page, "td.now"))
            {
                compared += rows.TryGetValue(key, out var expected) ? 1 : 0;
                Assert.Equal(expected ?? now, now);
            }

            // The finding was of other places.
            await Expect(page.Locator(".finding")).ToBeHiddenAsync();
            await Expect(page.Locator("#moved")).ToContainTextAsync("is not followed by the sliders");
            foreach (var doubt in await page.Locator("main > .doubtful").AllAsync())
            {
                await Expect(doubt).ToBeHiddenAsync();
            }

        }

        Assert.InRange(compared, 20, 200);
        await page.Locator("[data-back]").ClickAsync();
        await Expect(page.Locator(".finding")).ToBeVisibleAsync();
        Assert.Equal(await Texts(page, "td.number:nth-child(2)"), await Texts(page, "td.now"));
    }

    [Fact]
    public async Task It_says_what_it_is_of_asks_nobody_and_runs_nothing_that_does_not_stand_in_it()
    {
        var asked = new ConcurrentQueue<string>();
        var said = new List<string>();
        var page = await Opened(Loaded, asked, said);
        Assert.All(asked, address => Assert.Matches("^(file|data|blob):", address));
        var words = await page.Locator("main").InnerTextAsync();
        Assert.Empty(said);
        foreach (var expected in new[]
        {
            "Fern saloon", "village hump", "40 km/h", "four up with luggage", "Heaveline", "no proof of safety", "in this browser",
        })
        {
            Assert.Contains(expected, words, StringComparison.OrdinalIgnoreCase);
        }

        var policy = await page.Locator("meta[http-equiv]").GetAttributeAsync("content");
        Assert.Matches(
            new Regex("^default-src 'none'; script-src 'sha256-[^']+' 'wasm-unsafe-eval'; style-src 'sha256-[^']+'; img-src data:;"), policy!);
        // What somebody writes into it does not run.
        await page.EvaluateAsync("""
            () => {
                const script = document.createElement("script");
                script.textContent = "document.title = 'taken'";
                document.body.append(script);
                document.body.insertAdjacentHTML("beforeend", "<img src=x onerror=\"document.title = 'taken'\"><p style=\"color: red\">x</p>");
            }
            """);
        Assert.DoesNotContain("taken", await page.TitleAsync());
        Assert.NotEqual("rgb(255, 0, 0)", await page.EvaluateAsync<string>("() => getComputedStyle(document.querySelector('p:last-of-type')).color"));
    }

    [Fact]
    public async Task Keys_move_its_sliders_and_its_picture_and_it_rests_until_it_is_driven()
    {
        var page = await Opened(Loaded);
        Assert.Equal("Drive it", await page.Locator("[data-play]").InnerTextAsync());
        var before = await page.Locator("tr[data-measure=settling-rms-pitch] .now").InnerTextAsync();
        await page.Locator("#slide-rear-damping").FocusAsync();
        for (var k = 0; k < 20; k++)
        {
            await page.Keyboard.PressAsync("ArrowRight");
        }

        await Expect(page.Locator("tr[data-measure=settling-rms-pitch] .now")).Not.ToHaveTextAsync(before);
        var moment = await page.Locator("[data-time]").InnerTextAsync();
        await page.Locator("[data-scene]").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(page.Locator("[data-time]")).Not.ToHaveTextAsync(moment);
    }

    [Fact]
    public async Task Without_scripts_figure_and_table_stand_as_they_were_written()
    {
        var path = await File(Loaded);
        var context = await served.Browser.NewContextAsync(new BrowserNewContextOptions { JavaScriptEnabled = false, Offline = true });
        var page = await context.NewPageAsync();
        await page.GotoAsync($"file://{path}");
        await Expect(page.Locator(".unscripted img")).ToBeVisibleAsync();
        await Expect(page.Locator(".finding")).ToBeVisibleAsync();
        await Expect(page.Locator("[data-play]")).ToBeHiddenAsync();
        await Expect(page.Locator("td.now").First).ToBeHiddenAsync();
        Assert.Contains("1.2", await page.Locator("tr[data-measure=settling-rms-pitch]").InnerTextAsync());
        await context.CloseAsync();
    }

    [Fact]
    public async Task Over_an_obstacle_it_weighs_less_than_150_kB()
    {
        foreach (var query in new[] { Loaded, "car=tarn-off-roader&road=village-hump", "car=plover-motorcycle&road=village-hump" })
        {
            var length = new FileInfo(await File(query)).Length;
            TestContext.Current.SendDiagnosticMessage($"{query}: {length} B");
            Assert.InRange(length, 50_000, 150_000);
        }
    }

    private async Task<IPage> Opened(string query, ConcurrentQueue<string>? asked = null, List<string>? said = null)
    {
        var page = await served.Open("about:blank");
        await page.Context.SetOfflineAsync(true);
        page.Request += (_, request) => asked?.Enqueue(request.Url);
        page.Console += (_, message) => said?.AddRange(message.Type == "error" ? [message.Text] : []);
        var faults = new List<string>();
        page.PageError += (_, fault) => faults.Add(fault);
        await page.GotoAsync($"file://{await File(query)}");
        await Expect(page.Locator("td.now [data-live]:not(:empty)").First).ToBeVisibleAsync();
        Assert.Empty(faults);
        return page;
    }

    private async Task<string> File(string query)
    {
        using var client = new HttpClient { BaseAddress = served.Address };
        var address = new Uri($"download/pass-live.html?{query}", UriKind.Relative);
        using var answer = await client.GetAsync(address, TestContext.Current.CancellationToken);
        answer.EnsureSuccessStatusCode();
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition?.DispositionType);
        var path = Path.Combine(Directory.CreateTempSubdirectory("heaveline-file-").FullName, "pass-live.html");
        await System.IO.File.WriteAllBytesAsync(path, await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        return path;
    }

    private static async Task<Dictionary<string, string>> Texts(IPage page, string selector) => (await page.EvaluateAsync<string[][]>(
        "selector => [...document.querySelectorAll(`tr[data-measure] ${selector}`)]"
            + ".map(cell => [cell.parentElement.dataset.measure, cell.textContent])",
        selector)).ToDictionary(pair => pair[0], pair => pair[1]);

    // A movement and the frame after it.
    private static Task Slide(IPage page, string key, double value) => page.EvaluateAsync(
        """
        ([key, value]) => new Promise(done => {
            const slider = document.querySelector(`#slide-${key}`);
            slider.value = value;
            slider.dispatchEvent(new Event('input', { bubbles: true }));
            requestAnimationFrame(() => requestAnimationFrame(done));
        })
        """,
        new object[] { key, value });
}
