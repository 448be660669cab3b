using System.Globalization;
using System.Text.Json;

namespace Heaveline.PageBench;

/// <summary>
/// Moves sliders by one input event after another, the next when the picture has followed, and reads from the page's own events where the time went:
/// waiting for the question before, computing in the program, carrying question and answer, drawing, and the wait for the next animation frame.
/// Measured in a browser without a screen, from the event to inside the frame after the drawing.
/// </summary>
internal static class SliderRace
{
    /// <summary>Median and 95th percentile that the page must keep, ms.</summary>
    public const double MedianGoal = 50.0, TailGoal = 100.0;

    /// <summary>The sliders that are moved in turn.</summary>
    public static readonly string[] Sliders =
        ["front-spring", "rear-spring", "front-damping", "rear-damping", "speed", "height", "luggage", "front-stop", "link", "wheelbase"];

    /// <summary>One stroke of a slider to and fro about its middle, as a script of the page; it ends when the picture has followed.</summary>
    public const string Move = """
        ([key, part]) => {
            const slider = document.querySelector(`[data-setting="${key}"]`);
            const [low, high] = [Number(slider.min), Number(slider.max)];
            slider.value = low + part * (high - low);
            const seen = new Promise((done, failed) => {
                document.addEventListener("heaveline-frame", () => done(), { once: true });
                setTimeout(() => failed(new Error("no picture within ten seconds")), 10000);
            });
            slider.dispatchEvent(new Event("input", { bubbles: true }));
            return seen;
        }
        """;

    public static async Task<int> Run(int moves)
    {
        await using var served = await ServedPage.Open("?car=fern-saloon&load=four%20up%20with%20luggage&rear-spring=44");
        Console.WriteLine($"load average before: {LoadAverage()}; browser {served.BrowserVersion}; {Environment.ProcessorCount} processors");

        // The first moves of each slider are compiled and warmed, and not counted.
        await Stroke(served, Sliders.Length * 3);
        await served.Page.EvaluateAsync("() => { frames_.length = 0; }");
        await Stroke(served, moves);
        var frames = JsonSerializer.Deserialize<List<Frame>>(
            await served.Page.EvaluateAsync<string>("() => JSON.stringify(frames_)"), JsonSerializerOptions.Web)!;
        Console.WriteLine($"load average after: {LoadAverage()}; {frames.Count} pictures of {moves} moves, {frames.Count(f => f.Refused)} refused");
        Print("slider to redrawn page", frames, f => f.Total);
        Print("  waiting for the question before", frames, f => f.Waited);
        Print("  computing", frames, f => f.Compute);
        Print("  carrying and words", frames, f => f.Transfer);
        Print("  drawing", frames, f => f.Drawing);
        Print("  until the next frame", frames, f => f.Shown);
        foreach (var key in Sliders)
        {
            Print($"  of {key}", [.. frames.Where(f => f.Key == key)], f => f.Total);
        }

        foreach (var complaint in served.Complaints)
        {
            Console.WriteLine($"said: {complaint}");
        }

        var kept = frames.Count >= moves / 2 && Quantile(frames, f => f.Total, 0.5) <= MedianGoal && Quantile(frames, f => f.Total, 0.95) <= TailGoal
            && served.Complaints.Count == 0;
        Console.WriteLine(
            kept ? "The goal is kept: median 50 ms, 95th percentile 100 ms." : "The goal is missed: median 50 ms, 95th percentile 100 ms.");
        return kept ? 0 : 1;
    }

    private static async Task Stroke(ServedPage served, int moves)
    {
        for (var i = 0; i < moves; i++)
        {
            var key = Sliders[i / 8 % Sliders.Length];
            var part = 0.35 + (0.30 * Math.Abs((i % 16 / 8.0) - 1.0)) + (0.001 * (i % 7));
            await served.Page.EvaluateAsync(Move, new object[] { key, part });
        }
    }

    private static void Print(string what, List<Frame> frames, Func<Frame, double> of)
    {
        if (frames.Count > 0)
        {
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{what,-34} median {Quantile(frames, of, 0.5),6:F1} ms, 95 % {Quantile(frames, of, 0.95),6:F1} ms, worst {frames.Max(of),6:F1} ms"));
        }
    }

    private static double Quantile(List<Frame> frames, Func<Frame, double> of, double share)
    {
        double[] sorted = [.. frames.Select(of).Order()];
        return sorted.Length == 0 ? double.PositiveInfinity : sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
    }

    internal static string LoadAverage() =>
        File.Exists("/proc/loadavg") ? string.Join(' ', File.ReadAllText("/proc/loadavg").Split(' ').Take(3)) : "unknown";

    internal sealed record Frame(
        string Key,
        double Total,
        double Waited,
        double Compute,
        double Transfer,
        double Drawing,
        [property: System.Text.Json.Serialization.JsonPropertyName("frame")] double Shown,
        bool Refused);
}
