using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>A film from the roadside, from the browser to finding and report, by keyboard and pointer; at every width, light and dark.</summary>
[Collection(OneProgram.Name)]
public class FilmPageTests(Served served)
{
    // A film is drawn and followed on a busy machine.
    private const float Long = 180_000;

    private static readonly string Camera = Path.Combine(
        Checkout.Root, "src", "Heaveline.Camera", "bin", "Release", "net10.0", "Heaveline.Camera.dll");

    [Fact]
    public async Task A_film_is_brought_in_described_marked_and_followed_tells_what_the_car_does_and_goes_into_a_report()
    {
        Assert.SkipUnless(File.Exists(Camera), $"The camera part is not built: {Camera}.");
        Assert.SkipUnless(IsThere("ffmpeg"), "FFmpeg is not installed (eng/camera.sh).");
        var outside = Directory.CreateTempSubdirectory("heaveline-drawn-").FullName;
        using var drawn = await Drawn(Path.Combine(outside, "lane.mp4"));
        var marks = drawn.RootElement;
        try
        {
            var page = await served.Open("/film");
            await page.Awake();
            await page.SetInputFilesAsync("#film-file", Path.Combine(outside, "lane.mp4"));
            await Expect(page.Locator("h1")).ToHaveTextAsync("films/lane.mp4", new() { Timeout = Long });
            Assert.Equal(new FileInfo(Path.Combine(outside, "lane.mp4")).Length, new FileInfo(InGarage("films/lane.mp4")).Length);
            await Expect(page.Locator("#film-look")).ToContainTextAsync("1920 × 1080 pixels, 60 frames a second", new() { Timeout = Long });
            await page.FillAsync("#begin-wheelbase", "2.70 m ± 1 cm");
            await page.FillAsync("#begin-seen", "drawn saloon");
            await page.Keyboard.PressAsync("Enter");
            await Expect(page.Locator("#mark-heading")).ToHaveTextAsync("Mark the car");
            await Expect(page.Locator("#mark-said")).ToContainTextAsync("Nothing is marked yet", new() { Timeout = Long });
            await page.EvalOnSelectorAsync(
                "#mark-at", "(range, at) => { range.value = at; range.dispatchEvent(new Event('change')); }", Number(marks, "at", 0));
            await Expect(page.Locator(".frame")).Not.ToHaveAttributeAsync("aria-busy", "true", new() { Timeout = Long });

            // A mark by keys alone, and taken back.
            await page.Locator(".frame").FocusAsync();
            await page.Keyboard.PressAsync("ArrowRight");
            await Expect(page.Locator("#mark-said")).ToContainTextAsync("front hub at 961.0, 540.0");
            await page.Keyboard.PressAsync("+");
            await Expect(page.Locator(".frame svg")).ToHaveAttributeAsync("viewBox", "481 270 960 540");
            await page.Keyboard.PressAsync("-");
            await page.Keyboard.PressAsync("Shift+ArrowDown");
            await Expect(page.Locator("#mark-said")).ToContainTextAsync("front hub at 961.0, 550.0");
            await page.Keyboard.PressAsync("Control+z");
            await page.Locator("#mark-undo").FocusAsync();
            await page.Keyboard.PressAsync("Enter");
            await Expect(page.Locator("#mark-said")).ToContainTextAsync("Nothing is marked yet");
            await Expect(page.Locator("#follow")).ToBeDisabledAsync();

            await page.Locator("#mark-suggest").FocusAsync();
            await page.Keyboard.PressAsync("Enter");
            await Expect(page.Locator("#mark-said")).ToContainTextAsync("the corner opposite at", new() { Timeout = Long });
            var said = await page.Locator("#mark-said").TextContentAsync() ?? "";
            foreach (var hub in new[] { "front", "rear" })
            {
                var found = double.Parse(said.Split($"{hub} hub at ")[1].Split(',')[0], CultureInfo.InvariantCulture);
                Assert.Equal(Number(marks, hub, 0), found, 3.0);
            }

            await EveryWay(page);

            // The box's upper corner by pointer, where the film was drawn with it.
            await page.CheckAsync("input[value=from]");
            await page.Locator(".frame").ScrollIntoViewIfNeededAsync();
            var frame = (await page.Locator(".frame").BoundingBoxAsync())!;
            // After the suggestion the car fills half of the frame: what is pressed is the film's pixel there.
            var view = ((await page.GetAttributeAsync(".frame svg", "viewBox")) ?? "").Split(' ').Select(
                n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
            Assert.InRange(1920.0 / view[2], 2.0, 8.0);
            var large = frame.Width / view[2];
            await page.Mouse.ClickAsync(
                (float)(frame.X + ((Number(marks, "box", 0) - view[0] + 0.5) * large)),
                (float)(frame.Y + ((Number(marks, "box", 1) - view[1] + 0.5) * large)));
            var corner = (await page.TextContentAsync("#mark-said") ?? "").Split("a corner at ")[1].Split(',');
            Assert.Equal(Number(marks, "box", 0), double.Parse(corner[0], CultureInfo.InvariantCulture), 1.0);
            await Expect(page.Locator("#follow")).ToBeEnabledAsync();
            await page.Locator("#follow").FocusAsync();
            await page.Keyboard.PressAsync("Enter");
            // While it is followed the marked frame stays as it was, marks and all.
            await Expect(page.Locator(".underway progress:visible")).ToBeVisibleAsync(new() { Timeout = Long });
            Assert.True(await page.EvaluateAsync<bool>(
                "() => { const img = document.querySelector('.frame img'), style = getComputedStyle(img);"
                + " return img.naturalWidth === 1920 && style.opacity === '1' && document.querySelectorAll('.frame svg circle').length > 0"
                + " && Number(document.querySelector('.frame svg').getAttribute('viewBox').split(' ')[2]) < 1920; }"));
            await Expect(page.Locator(".finding")).ToContainTextAsync("heaves", new() { Timeout = Long });
            await Expect(page.Locator("#mark-heading")).ToHaveTextAsync("Mark the car anew");
            var stop = TestContext.Current.CancellationToken;
            Assert.StartsWith("heaveline film track,1", await File.ReadAllTextAsync(InGarage("films/lane.csv"), stop), StringComparison.Ordinal);
            Assert.Contains("front: [", await File.ReadAllTextAsync(InGarage("films/lane.yaml"), stop), StringComparison.Ordinal);

            var still = await page.APIRequest.GetAsync(new Uri(served.Address, "download/film-still.png?film=films/lane.yaml").ToString());
            Assert.True(still.Ok, await still.TextAsync());
            Assert.Equal([0x89, 0x50, 0x4e, 0x47], (await still.BodyAsync())[..4]);
            await EveryWay(page);

            // Into a report of a car of this garage, whose forecast stands beside it where that is ticked.
            await page.Locator("#film-report").ClickAsync();
            await page.Awake();
            await page.CheckAsync("#filmed-car");
            await Expect(page.Locator("#part-film")).ToBeCheckedAsync();
            await page.ClickAsync("#make");
            var report = page.FrameLocator("iframe");
            await Expect(report.Locator("body")).ToContainTextAsync("The film: drawn saloon", new() { Timeout = Long });
            await Expect(report.Locator("body")).ToContainTextAsync("Beside Drover van, driver", new() { Timeout = Long });
            await Expect(report.Locator("body")).ToContainTextAsync("The sheet's wheelbase, 2.70 m, is not that of Drover van, 3.40 m.");
        }
        finally
        {
            Directory.Delete(outside, recursive: true);
            Directory.Delete(InGarage("films"), recursive: true);
        }
    }

    [Fact]
    public async Task What_is_no_film_or_there_already_is_refused_beside_the_field_and_nothing_of_it_is_kept()
    {
        var outside = Directory.CreateTempSubdirectory("heaveline-no-film-").FullName;
        try
        {
            var page = await served.Open("/film");
            await page.Awake();
            foreach (var (name, bytes, words) in new (string, byte[], string)[]
            {
                ("notes.mp4", "no film at all, though its name says so"u8.ToArray(), "is no film"),
                ("notes.txt", [1], "the name must end in"),
                ("empty.mp4", [], "is empty"),
                ("short.mp4", [0, 0, 0, 24, .. "ftypmp42"u8, 0, 0, 0, 0], "stands in the garage now"),
                ("short.mp4", [0, 0, 0, 24, .. "ftypmp42"u8, 0, 0, 0, 1], "already"),
            })
            {
                await File.WriteAllBytesAsync(Path.Combine(outside, name), bytes, TestContext.Current.CancellationToken);
                await page.SetInputFilesAsync("#film-file", Path.Combine(outside, name));
                await Expect(page.Locator("#film-file-remark")).ToContainTextAsync(words, new() { Timeout = Long });
            }

            Assert.Equal(["short.mp4"], Directory.EnumerateFiles(InGarage("films")).Select(Path.GetFileName));
        }
        finally
        {
            Directory.Delete(outside, recursive: true);
            if (Directory.Exists(InGarage("films")))
            {
                Directory.Delete(InGarage("films"), recursive: true);
            }
        }
    }

    [Fact]
    public async Task A_film_that_comes_in_beside_another_takes_nobody_from_that_and_one_that_answers_nonsense_leaves_the_field_free()
    {
        try
        {
            var page = await served.Open("/film");
            await page.Awake();
            await page.SetInputFilesAsync("#film-file", Small("first.mp4"));
            await Expect(page.Locator("h1")).ToHaveTextAsync("films/first.mp4", new() { Timeout = Long });
            await page.SetInputFilesAsync("#film-file", Small("second.mp4"));
            var link = page.Locator("#film-file-there a");
            await Expect(link).ToHaveTextAsync("Show films/second.mp4 now", new() { Timeout = Long });
            await Expect(page.Locator("h1")).ToHaveTextAsync("films/first.mp4");

            await page.RouteAsync("**/film-file?*", async route =>
            {
                if (route.Request.Method == "POST")
                {
                    await route.FulfillAsync(new() { Status = 201, Body = "<p>A line between has answered.</p>" });
                }
                else
                {
                    await route.ContinueAsync();
                }
            });
            await page.SetInputFilesAsync("#film-file", Small("third.mp4"));
            await Expect(page.Locator("#film-file-remark .refused")).ToContainTextAsync("Whether third.mp4 came in is not known");
            await Expect(page.Locator("#film-file")).ToBeEnabledAsync();
            await link.ClickAsync();
            await Expect(page.Locator("h1")).ToHaveTextAsync("films/second.mp4");
            await Expect(link).ToHaveCountAsync(0);
        }
        finally
        {
            Cleared();
        }
    }

    [Fact]
    public async Task A_film_that_is_on_its_way_when_its_page_is_left_is_stopped()
    {
        var page = await served.Open("/film");
        await page.Awake();
        var stopped = new TaskCompletionSource<string?>();
        page.RequestFailed += (_, request) =>
        {
            if (request.Method == "POST" && request.Url.Contains("film-file", StringComparison.Ordinal))
            {
                stopped.TrySetResult(request.Failure);
            }
        };
        var never = new TaskCompletionSource();
        await page.RouteAsync("**/film-file?*", route => route.Request.Method == "POST" ? never.Task : route.ContinueAsync());
        await page.RunAndWaitForRequestAsync(
            () => page.SetInputFilesAsync("#film-file", Small("lane.mp4")),
            request => request.Method == "POST" && request.Url.Contains("film-file", StringComparison.Ordinal));
        await page.Locator("nav[aria-label=Pages] a", new() { HasTextString = "The ride" }).ClickAsync();
        await page.Locator("#at").WaitForAsync();
        Assert.Equal("net::ERR_ABORTED", await stopped.Task.WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken));
        never.SetResult();
    }

    private static FilePayload Small(string name) =>
        new() { Name = name, MimeType = "video/mp4", Buffer = [0, 0, 0, 24, .. "ftypmp42"u8, 0, 0, 0, 0] };

    private void Cleared()
    {
        if (Directory.Exists(InGarage("films")))
        {
            Directory.Delete(InGarage("films"), recursive: true);
        }
    }

    [Fact]
    public async Task A_film_that_is_stopped_on_its_way_leaves_nothing()
    {
        var outside = Directory.CreateTempSubdirectory("heaveline-stopped-").FullName;
        try
        {
            var film = Path.Combine(outside, "long.mp4");
            await using (var stream = File.Create(film))
            {
                stream.Write([0, 0, 0, 24, .. "ftypmp42"u8]);
                stream.SetLength(400_000_000);
            }

            var page = await served.Open("/film");
            await page.Awake();
            await page.EvaluateAsync(
                "() => { const sent = XMLHttpRequest.prototype.send; XMLHttpRequest.prototype.send = function (body) {"
                + " this.upload.addEventListener('progress', () => document.querySelector('#film-file-cancel').click(), { once: true });"
                + " sent.call(this, body); }; }");
            await page.SetInputFilesAsync("#film-file", film);
            await Expect(page.Locator("#film-file-remark")).ToContainTextAsync("nothing of the film is kept", new() { Timeout = Long });
            for (var n = 0; n < 100 && Directory.Exists(InGarage("films")) && Directory.EnumerateFileSystemEntries(InGarage("films")).Any(); n++)
            {
                await Task.Delay(100, TestContext.Current.CancellationToken);
            }

            Assert.True(!Directory.Exists(InGarage("films")) || !Directory.EnumerateFileSystemEntries(InGarage("films")).Any());
        }
        finally
        {
            Directory.Delete(outside, recursive: true);
            if (Directory.Exists(InGarage("films")))
            {
                Directory.Delete(InGarage("films"), recursive: true);
            }
        }
    }

    [Fact]
    public async Task Kept_tracks_are_shown_at_every_width_and_the_cars_of_one_bump_in_their_order()
    {
        string[] files = ["grey-saloon-25.yaml", "grey-saloon-25.csv", "red-saloon-25.yaml", "red-saloon-25.csv"];
        foreach (var file in files)
        {
            File.Copy(Path.Combine(Checkout.Root, "examples", "films", file), InGarage(file));
        }

        try
        {
            var page = await served.Open("/film?film=red-saloon-25.yaml");
            await Expect(page.Locator(".finding")).ToContainTextAsync("It heaves more than it pitches", new() { Timeout = Long });
            await Expect(page.Locator("#place")).ToHaveTextAsync("Seen at school hump", new() { Timeout = Long });
            await EveryWay(page);

            foreach (var (name, ending, begins) in new[] { ("film", "svg", "<?xml"), ("film", "csv", "heaveline film track"), ("film", "json", "{"),
                ("film-place", "svg", "<?xml") })
            {
                var address = await page.Locator($".downloads a[href*='{name}.{ending}']").GetAttributeAsync("href");
                var answer = await page.APIRequest.GetAsync(new Uri(served.Address, address).ToString());
                Assert.True(answer.Ok, await answer.TextAsync());
                Assert.StartsWith(begins, (await answer.TextAsync()).TrimStart('\uFEFF'), StringComparison.Ordinal);
            }
        }
        finally
        {
            foreach (var file in files)
            {
                File.Delete(InGarage(file));
            }
        }
    }

    [Theory]
    [InlineData("film=../../etc/passwd&at=1")]
    [InlineData("film=fern-saloon.yaml&at=1")]
    [InlineData("film=ghost.yaml&at=1")]
    [InlineData("at=1")]
    [InlineData("film=fern-saloon.yaml&at=NaN")]
    [InlineData("film=fern-saloon.yaml&at=-1")]
    public async Task No_frame_is_given_of_what_is_no_film_of_the_garage(string query)
    {
        using var client = new HttpClient();
        var answer = await client.GetAsync(new Uri(served.Address, "film-frame?" + query), TestContext.Current.CancellationToken);
        Assert.Contains((int)answer.StatusCode, new[] { 404, 422 });
    }

    private static async Task EveryWay(IPage page)
    {
        foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await page.EmulateMediaAsync(new() { ColorScheme = scheme });
            foreach (var width in new[] { 390, 2560, 1280 })
            {
                await page.SetViewportSizeAsync(width, 900);
                await Accessible.Check(page, frames: false, scheme == ColorScheme.Dark ? "color-contrast" : null);
                Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"), $"over the edge at {width}");
                await Picture(page, scheme, width);
            }
        }

        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
    }

    // For an eye: into the folder that HEAVELINE_PICTURES names.
    private static async Task Picture(IPage page, ColorScheme scheme, int width)
    {
        if (Environment.GetEnvironmentVariable("HEAVELINE_PICTURES") is { Length: > 0 } folder)
        {
            var state = await page.Locator(".finding").CountAsync() > 0 ? "told" : "marked";
            var name = $"film-{(await page.Locator("h1").TextContentAsync())!.Replace(' ', '-')}-{state}-{width}-{scheme}.png";
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name.ToLowerInvariant()), FullPage = true });
        }
    }

    private string InGarage(string file) => Path.Combine(served.Garage, file);

    private static double Number(JsonElement of, string key, int n) => of.GetProperty(key)[n].GetDouble();

    private static bool IsThere(string program) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Any(folder => File.Exists(Path.Combine(folder, program)));

    // The car, its speed and its bump are known: the film is drawn, never stored.
    private static async Task<JsonDocument> Drawn(string film)
    {
        var start = new ProcessStartInfo(
            "dotnet", [Camera, "draw", Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"), "--to", film])
        {
            RedirectStandardOutput = true,
        };
        using var drawing = Process.Start(start)!;
        var said = await drawing.StandardOutput.ReadToEndAsync();
        await drawing.WaitForExitAsync();
        Assert.Equal(0, drawing.ExitCode);
        return JsonDocument.Parse(said);
    }
}
