using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

/// <summary>A film from the roadside, from the folder to the finding, by keyboard and pointer; and kept tracks at every width.</summary>
[Collection(OneProgram.Name)]
public class FilmPageTests(Served served)
{
    // A film is drawn and followed on a busy machine.
    private const float Long = 180_000;

    private static readonly string Camera = Path.Combine(
        Checkout.Root, "src", "Heaveline.Camera", "bin", "Release", "net10.0", "Heaveline.Camera.dll");

    [Fact]
    public async Task A_film_is_described_marked_and_followed_and_tells_what_the_car_does()
    {
        Assert.SkipUnless(File.Exists(Camera), $"The camera part is not built: {Camera}.");
        Assert.SkipUnless(IsThere("ffmpeg"), "FFmpeg is not installed (eng/camera.sh).");
        using var drawn = await Drawn("lane.mp4");
        var marks = drawn.RootElement;
        try
        {
            var page = await served.Open("/film?film=lane.mp4");
            await page.Awake();
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

            await Accessible.Check(page);

            // The box's upper corner by pointer, where the film was drawn with it.
            await page.CheckAsync("input[value=from]");
            await page.Locator(".frame").ScrollIntoViewIfNeededAsync();
            var frame = (await page.Locator(".frame").BoundingBoxAsync())!;
            var large = frame.Width / 1920;
            await page.Mouse.ClickAsync(
                (float)(frame.X + (Number(marks, "box", 0) * large)), (float)(frame.Y + (Number(marks, "box", 1) * large)));
            await Expect(page.Locator("#follow")).ToBeEnabledAsync();
            await page.Locator("#follow").FocusAsync();
            await page.Keyboard.PressAsync("Enter");
            await Expect(page.Locator(".finding")).ToContainTextAsync("heaves", new() { Timeout = Long });
            await Expect(page.Locator("#mark-heading")).ToHaveTextAsync("Mark the car anew");
            var stop = TestContext.Current.CancellationToken;
            Assert.StartsWith("heaveline film track,1", await File.ReadAllTextAsync(InGarage("lane.csv"), stop), StringComparison.Ordinal);
            Assert.Contains("front: [", await File.ReadAllTextAsync(InGarage("lane.yaml"), stop), StringComparison.Ordinal);

            var still = await page.APIRequest.GetAsync(new Uri(served.Address, "download/film-still.png?film=lane.yaml").ToString());
            Assert.True(still.Ok, await still.TextAsync());
            Assert.Equal([0x89, 0x50, 0x4e, 0x47], (await still.BodyAsync())[..4]);
        }
        finally
        {
            foreach (var file in new[] { "lane.mp4", "lane.yaml", "lane.csv" }.Select(InGarage).Where(File.Exists))
            {
                File.Delete(file);
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
            foreach (var width in new[] { 390, 1280, 2560 })
            {
                await page.SetViewportSizeAsync(width, 900);
                await Accessible.Check(page);
                Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"), $"over the edge at {width}");
            }

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

    private string InGarage(string file) => Path.Combine(served.Garage, file);

    private static double Number(JsonElement of, string key, int n) => of.GetProperty(key)[n].GetDouble();

    private static bool IsThere(string program) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Any(folder => File.Exists(Path.Combine(folder, program)));

    // The car, its speed and its bump are known: the film is drawn, never stored.
    private async Task<JsonDocument> Drawn(string name)
    {
        var start = new ProcessStartInfo(
            "dotnet", [Camera, "draw", Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"), "--to", InGarage(name)])
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
