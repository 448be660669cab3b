using System.Text.Json;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>What the page works out by itself, against the core.</summary>
[Collection(OneProgram.Name)]
public class LivePassTests(Served served)
{
    private const int Places = 24;

    // Of the peak of each number drawn.
    private const double Near = 1e-12;

    // As the page does it, from the modules to the numbers drawn.
    private const string Work = """
        async ([structure, numbers, modules, folds, all]) => {
            const { Live } = await import('/_content/Heaveline.Web/live.js');
            const bytes = text => Uint8Array.from(atob(text), c => c.charCodeAt(0));
            const [step, ahead, balance, windows, measures] = modules.map(bytes);
            const live = await Live.open({ structure, numbers: bytes(numbers), step, ahead, balance, windows, measures, folds: folds.map(bytes) });
            return all.map(({ places, speed, height }) => {
                const { drive } = live.made, started = performance.now();
                if (!live.drive(drive.speed * speed / drive.shownSpeed, height * drive.perHeight / drive.height)) return null;
                if (!live.set(new Map(Object.entries(places)))) return null;
                const drawn = live.cross(), crossed = performance.now() - started, measured = drawn && [...live.measured()];
                const took = performance.now() - started;
                return drawn && { drawn: [...drawn].map(String), measured: measured.map(String), took, crossed };
            });
        }
        """;

    public static TheoryData<string> Cars => ["fern-saloon", "sprig-kit-car", "tarn-off-roader", "pebble-fluid-car", "plover-motorcycle"];

    [Theory, MemberData(nameof(Cars))]
    public async Task The_browser_draws_what_the_core_computes_wherever_the_sliders_stand(string name)
    {
        var garage = new GarageView(new ServeOptions { Garage = served.Garage });
        var trial = new PassTrial(garage);
        var view = trial.See(new PassState { Car = name }, full: true).View!;
        SliderLine[] lines = [.. SliderLine.Of(view, ReaderUnits.Metric).SelectMany(group => group.Lines)];
        var live = LivePass.Of(1, view, lines, ReaderUnits.Metric)!;
        var (asked, made) = (LiveSettings.Of(view, lines), JsonDocument.Parse(live.Structure).RootElement);
        var keys = made.GetProperty("sliders").EnumerateArray().ToDictionary(
            s => s.GetProperty("key").GetString()!, s => s.GetProperty("places").GetInt32());
        Assert.Contains("luggage", keys.Keys);
        var random = new Random(11);
        var all = Enumerable.Range(0, Places).Select(_ => new
        {
            places = keys.ToDictionary(k => k.Key, k => random.Next(k.Value)),
            speed = (double)random.Next(15, 80),
            height = (double)random.Next(20, 100),
        }).ToArray();
        var page = await served.Open("/");
        var answers = (await page.EvaluateAsync(
            Work,
            new object[]
            {
                live.Structure, Convert.ToBase64String(live.Numbers),
                new[] { live.Step, live.Ahead, live.Balance, live.Windows, live.Measures }.Select(bytes => Convert.ToBase64String(bytes)).ToArray(),
                live.Folds.Select(bytes => Convert.ToBase64String(bytes)).ToArray(), all,
            }))!.Value;
        var (compared, worst, times, more) = (0, 0.0, new List<double>(), new List<double>());
        string[] measured = [.. made.GetProperty("measures").EnumerateArray().Select(m => m.GetProperty("key").GetString()!)];
        Assert.Contains(PassCatalogue.PitchOver(view.Road)[0].Key, measured);
        for (var k = 0; k < Places; k++)
        {
            var set = asked.At([.. asked.Sliders.Select(s => all[k].places.TryGetValue(s.Key, out var place) ? place : (int?)null)]);
            if (answers[k].ValueKind == JsonValueKind.Null || set is not { } there)
            {
                continue;
            }

            var drawn = answers[k].GetProperty("drawn").EnumerateArray().Select(v => double.Parse(v.GetString()!, null)).ToArray();
            times.Add(answers[k].GetProperty("took").GetDouble());
            var driven = view.State.With(PassState.Speed, all[k].speed).With(PassState.Height, all[k].height);
            var pass = trial.See(driven, full: false).View!.Now.Pass;
            var request = new PassRequest(RideModel.Of(there.Car, there.Load), pass.Road, pass.Speed);
            more.Add(answers[k].GetProperty("took").GetDouble() - answers[k].GetProperty("crossed").GetDouble());
            var expected = Expected(request, made);
            var off = Math.Max(
                Off(expected, drawn, made.GetProperty("drawn").GetInt32()), OffMeasures(expected, measured, answers[k].GetProperty("measured")));
            worst = Math.Max(worst, off);
            compared++;
        }

        TestContext.Current.SendDiagnosticMessage($"{name}: {compared} places, {worst:E1} of the peak, "
            + $"slowest {times.Max():F2} ms, its numbers {more.Order().ElementAt(more.Count / 2):F2} ms");
        Assert.InRange(compared, Places / 2, Places);
        Assert.InRange(worst, 0.0, Near);
    }

    [Fact]
    public async Task While_the_program_sleeps_curves_follow_the_slider_and_the_page_says_that_its_numbers_are_behind()
    {
        var page = await served.Open("/pass?car=fern-saloon&load=four%20up%20with%20luggage&road=village-hump", 1280, 900);
        await PassPageTests.Ready(page);
        await Followed(page);
        // Words come a little after the answer to which they belong.
        var finding = "";
        while (await page.Locator(".finding").InnerTextAsync() is var words && words != finding)
        {
            finding = words;
            await Task.Delay(1500, TestContext.Current.CancellationToken);
        }

        var (curves, told) = (await Curves(page), await page.Locator(".finding .told").TextContentAsync());
        try
        {
            served.Signal("STOP");
            foreach (var (key, value) in new[] { ("rear-damping", 2.4), ("speed", 25.0), ("height", 110.0) })
            {
                await Slide(page, key, value);
                await PassPageTests.Eventually(async () => Assert.NotEqual(curves, await Curves(page)));
                curves = await Curves(page);
            }

            await Expect(page.Locator("#ahead")).ToBeVisibleAsync();
            Assert.NotEqual(finding, await page.Locator(".finding").InnerTextAsync());
            Assert.Equal(told, await page.Locator(".finding .told").TextContentAsync());
        }
        finally
        {
            served.Signal("CONT");
        }

        await Expect(page.Locator(".pass:not([data-ahead])")).ToBeVisibleAsync();
        await Expect(page.Locator("#ahead")).ToBeHiddenAsync();
        await PassPageTests.Eventually(async () => Assert.NotEqual(finding, await page.Locator(".finding").InnerTextAsync()));
    }

    [Theory]
    [InlineData("car=fern-saloon&load=four%20up%20with%20luggage&road=village-hump", 3)]
    [InlineData("car=drover-van&road=pothole-left", 5)]
    [InlineData("car=tarn-off-roader&road=sine-pitch&speed=60", 7)]
    public async Task What_the_page_says_while_the_program_sleeps_is_what_the_program_says_when_it_wakes(string address, int seed)
    {
        var page = await served.Open($"/pass?{address}", 1280, 900);
        await PassPageTests.Ready(page);
        var random = new Random(seed);
        for (var round = 0; round < 3; round++)
        {
            await Followed(page);
            IReadOnlyDictionary<string, string> live;
            try
            {
                served.Signal("STOP");
                foreach (var (key, from, to) in new[] { ("rear-damping", 0.6, 1.8), ("front-damping", 0.6, 1.8), ("speed", 25.0, 50.0) })
                {
                    await Slide(page, key, from + ((to - from) * random.NextDouble()));
                    await page.Locator($"#slide-{key}").DispatchEventAsync("change");
                    await Task.Delay(60, TestContext.Current.CancellationToken);
                }

                await Expect(page.Locator("#ahead")).ToBeVisibleAsync();
                live = await Texts(page, "[data-live]");
                Assert.True(live.Count > 8);
                Assert.All(live, number => Assert.NotEqual("", number.Value));
                // Nothing that was told of another place is lit.
                Assert.All(await Texts(page, "[data-live] + .told", isVisible: true), told => Assert.Fail($"{told.Key}: {told.Value}"));
            }
            finally
            {
                served.Signal("CONT");
            }

            await Expect(page.Locator(".pass:not([data-ahead])")).ToBeVisibleAsync();
            var told = await Texts(page, "[data-live] + .told", isVisible: true);
            foreach (var (key, number) in live.Where(one => told.ContainsKey(one.Key)))
            {
                Assert.Equal(told[key], number);
            }
        }
    }

    // The record of the state at rest comes in its own time.
    private static async Task Followed(IPage page)
    {
        await page.EvaluateAsync("() => { window.ahead = 0; document.addEventListener('heaveline-ahead', () => window.ahead++); }");
        for (var tries = 0; tries < 300 && await page.EvaluateAsync<int>("() => window.ahead") == 0; tries++)
        {
            await Slide(page, "rear-damping", 1.0 + (0.01 * (tries % 50)));
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        await Expect(page.Locator(".pass:not([data-ahead])")).ToBeVisibleAsync();
    }

    // Numbers by their measure, the headline's apart.
    private static async Task<IReadOnlyDictionary<string, string>> Texts(IPage page, string selector, bool isVisible = false) =>
        (await page.EvaluateAsync<string[][]>(
            """
            ([selector, isVisible]) => [...document.querySelectorAll(selector)].filter(place => !isVisible || place.checkVisibility()).map(place => {
                const key = (place.dataset.live ?? place.previousElementSibling.dataset.live) + (place.closest('mark') ? ' in the headline' : '');
                return [key, place.textContent.trim()];
            })
            """,
            new object[] { selector, isVisible })).ToDictionary(pair => pair[0], pair => pair[1]);

    private static Task Slide(IPage page, string key, double value) => page.EvaluateAsync(
        "([key, value]) => { const slider = document.querySelector(`#slide-${key}`); slider.value = value; "
            + "slider.dispatchEvent(new Event('input', { bubbles: true })); }",
        new object[] { key, value });

    private static Task<string> Curves(IPage page) =>
        page.EvaluateAsync<string>("() => document.querySelector('[data-strips] canvas').toDataURL()");

    // The pass with the page's own clock.
    private static Pass Expected(PassRequest request, JsonElement made)
    {
        var timing = PassTiming.Of(request, PassRecord.Default, FixedStep.Once) with { StepsPerSample = made.GetProperty("per").GetInt32() };
        var wheels = RoadUnderWheels.Of(request.Model, request.Road);
        var samples = PassRun.Of(request.Model, wheels, request.Speed, timing, TestContext.Current.CancellationToken);
        return new Pass(request, timing, samples, FixedStep.Statistics(timing, null, null));
    }

    private static double OffMeasures(Pass pass, string[] keys, JsonElement measured)
    {
        var all = PassCatalogue.For(pass.Model, pass.Road, MeasureUse.BeforeAfter).ToDictionary(m => m.Key);
        var worst = 0.0;
        foreach (var (key, i) in keys.Select((key, i) => (key, i)))
        {
            var (expected, found) = (all[key].Of(pass), double.Parse(measured[i].GetString()!, null));
            Assert.True(double.IsFinite(expected) == double.IsFinite(found), $"{key} is {expected}, in the browser {found}");
            if (double.IsFinite(expected) && Math.Abs(found - expected) > 1e-9)
            {
                TestContext.Current.SendDiagnosticMessage($"{key}: {expected:R}, in the browser {found:R}");
            }

            worst = double.IsFinite(expected) ? Math.Max(worst, Math.Abs(found - expected) / Math.Max(1.0, Math.Abs(expected))) : worst;
        }

        return worst;
    }

    private static double Off(Pass pass, double[] drawn, int each)
    {
        var trim = pass.Model.Trim;
        double[] Load(int corner) => [.. pass.TyreLoad(corner).Select(n => 100.0 * n / trim.WheelLoad[corner])];
        double[][] expected =
        [
            [.. pass.FrontHeight.Select(h => 1e3 * h)], [.. pass.RearHeight.Select(h => 1e3 * h)], [.. pass.Pitch.Select(p => -In.Degrees.Of(p))],
            [.. pass.PitchAcceleration.Select(a => -a)], [.. pass.Roll.Select(r => In.Degrees.Of(r))],
            .. Enumerable.Range(0, 4).Select(i => pass.Travel(i).Select(s => 1e3 * s).ToArray()),
            .. Enumerable.Range(0, 4).Select(Load),
        ];
        Assert.Equal(pass.Count * each, drawn.Length);
        var worst = 0.0;
        for (var c = 0; c < expected.Length; c++)
        {
            // What does not move but for rounding counts against a micrometre, a millionth of a degree.
            var peak = Math.Max(1e-3, expected[c].Max(Math.Abs));
            for (var k = 0; k < pass.Count; k++)
            {
                worst = Math.Max(worst, Math.Abs(drawn[(k * each) + c] - expected[c][k]) / peak);
            }
        }

        return worst;
    }
}
