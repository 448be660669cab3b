using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;

namespace Heaveline.PageBench;

/// <summary>
/// Moves sliders that the page follows by itself, in one tab or in several at once: how long from a slider's event to the frame that shows its curves
/// and numbers, and how long the page computed for it.
/// </summary>
internal static class LiveRace
{
    private static readonly string[] Sliders = ["front-spring", "rear-spring", "front-damping", "rear-damping", "speed", "height", "luggage"];

    // A stroke that has been followed: what the page tells in its own event, and the moment after the frame. Where the program's answer was there
    // before that frame it is drawn instead: such a stroke says nothing here.
    private const string Move = """
        ([key, part]) => new Promise((done, failed) => {
            const slider = document.querySelector(`[data-setting="${key}"]`), [low, high] = [Number(slider.min), Number(slider.max)];
            slider.value = low + part * (high - low);
            const since = performance.now(), late = setTimeout(() => failed(new Error("no picture within ten seconds")), 10000);
            const seen = event => {
                clearTimeout(late);
                document.removeEventListener("heaveline-ahead", seen);
                document.removeEventListener("heaveline-frame", seen);
                const isAhead = event.type === "heaveline-ahead";
                done(JSON.stringify({ total: performance.now() - since, compute: event.detail.compute, isAhead }));
            };
            document.addEventListener("heaveline-ahead", seen);
            document.addEventListener("heaveline-frame", seen);
            slider.dispatchEvent(new Event("input", { bubbles: true }));
        })
        """;

    public static async Task<int> Run(int moves, int tabs)
    {
        await using var served = await ServedPage.Open("?car=fern-saloon&load=four%20up%20with%20luggage");
        Console.WriteLine(
            $"load average before: {SliderRace.LoadAverage()}; browser {served.BrowserVersion}; {Environment.ProcessorCount} processors");
        var pages = new List<IPage> { served.Page };
        while (pages.Count < tabs)
        {
            pages.Add(await served.Another());
        }

        foreach (var page in pages)
        {
            await Followed(page);
        }

        var strokes = await Task.WhenAll(pages.Select(page => Strokes(page, moves)));
        Stroke[] all = [.. strokes.SelectMany(own => own)];
        Console.WriteLine(
            $"load average after: {SliderRace.LoadAverage()}; {all.Length} of {moves * tabs} strokes in {tabs} tabs were followed before the answer");
        Print("slider to followed curves and numbers", [.. all.Select(stroke => stroke.Total)]);
        Print("  computing and laying out", [.. all.Select(stroke => stroke.Compute)]);
        foreach (var complaint in served.Complaints)
        {
            Console.WriteLine($"said: {complaint}");
        }

        return served.Complaints.Count == 0 ? 0 : 1;
    }

    // The record of the state at rest comes in its own time.
    private static async Task Followed(IPage page)
    {
        for (var tries = 0; ; tries++)
        {
            var said = await page.EvaluateAsync<string>(Move, new object[] { "rear-damping", 0.4 + (0.001 * (tries % 9)) });
            if (JsonSerializer.Deserialize<Stroke>(said, JsonSerializerOptions.Web)!.IsAhead)
            {
                return;
            }

            if (tries > 600)
            {
                throw new TimeoutException("The page did not follow by itself.");
            }
        }
    }

    private static async Task<Stroke[]> Strokes(IPage page, int moves)
    {
        var strokes = new List<Stroke>();
        for (var i = 0; i < moves + Sliders.Length; i++)
        {
            var part = 0.35 + (0.30 * Math.Abs((i % 16 / 8.0) - 1.0)) + (0.001 * (i % 7));
            var said = await page.EvaluateAsync<string>(Move, new object[] { Sliders[i % Sliders.Length], part });
            // The first of each is compiled and warmed.
            if (i >= Sliders.Length && JsonSerializer.Deserialize<Stroke>(said, JsonSerializerOptions.Web) is { IsAhead: true } stroke)
            {
                strokes.Add(stroke);
            }
        }

        return [.. strokes];
    }

    private static void Print(string what, double[] values)
    {
        Array.Sort(values);
        double At(double share) => values[Math.Min(values.Length - 1, (int)(share * values.Length))];
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{what,-40} median {At(0.5),6:F2} ms, 95 % {At(0.95),6:F2} ms, 99 % {At(0.99),6:F2} ms, worst {values[^1],6:F2} ms"));
    }

    private sealed record Stroke(double Total, double Compute, bool IsAhead);
}
