using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;

namespace Heaveline.PageBench;

/// <summary>
/// The page of the rule: how long a new fine map takes from the choice to the drawn page, whether another measure computes anything anew, and whether
/// the page is ever held up while it is read. Every round asks for a range of speeds that was not asked for before.
/// </summary>
internal static class RuleRace
{
    /// <summary>What the page must keep: a new fine map, another measure of the same passes, the longest task, ms.</summary>
    public const double MapGoal = 1000.0, MeasureGoal = 250.0, TaskGoal = 100.0;

    private const int Fastest = 90;
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    private const string Listen = """
        globalThis.tasks_ = [];
        new PerformanceObserver(list => { for (const task of list.getEntries()) tasks_.push(task.duration); })
            .observe({ type: "longtask", buffered: true });
        """;

    private const string State = """
        () => ({
            to: Math.round(Number(document.querySelector("#map .panel")?.dataset.xTo ?? 0)),
            heading: document.querySelector("#map h2")?.textContent ?? "",
            isDone: !document.querySelector(".maps.stale") && !document.querySelector("progress")
                && !(document.querySelector("#map figcaption")?.textContent ?? "Coarse map.").includes("Coarse map."),
            isComputing: document.querySelector("progress") !== null,
        })
        """;

    public static async Task<int> Run(int rounds)
    {
        await using var served = await ServedPage.Open("?car=fern-saloon&load=driver");
        var page = served.Page;
        await page.AddInitScriptAsync(Listen);
        await page.GotoAsync(new Uri(new Uri(page.Url), "/rule?car=fern-saloon&load=driver").ToString());
        await Until(page, state => state.IsDone && state.To == 120);
        Console.WriteLine(
            $"load average before: {SliderRace.LoadAverage()}; browser {served.BrowserVersion}; {Environment.ProcessorCount} processors");
        var (maps, measures, isAnew) = (new List<double>(), new List<double>(), false);
        for (var k = 0; k < rounds; k++)
        {
            var (to, watch) = (Fastest + k, Stopwatch.StartNew());
            await page.Locator("#to").FillAsync(to.ToString(CultureInfo.InvariantCulture));
            await page.Locator("#to").PressAsync("Enter");
            await Until(page, state => state.IsDone && state.To == to);
            maps.Add(watch.Elapsed.TotalMilliseconds);
            foreach (var measure in new[] { "hit", "late", "jerk", "settling" })
            {
                var before = (await page.EvaluateAsync<Seen>(State)).Heading;
                watch.Restart();
                await page.Locator("#measure").SelectOptionAsync(measure);
                isAnew |= await Until(page, state => state.IsDone && state.Heading != before);
                measures.Add(watch.Elapsed.TotalMilliseconds);
            }
        }

        var tasks = await page.EvaluateAsync<double[]>("() => tasks_");
        Console.WriteLine($"load average after: {SliderRace.LoadAverage()}; {rounds} ranges, {measures.Count} changes of the measure");
        Print("a new fine map", maps);
        Print("another measure", measures);
        Print("tasks over 50 ms", tasks);
        Console.WriteLine(isAnew ? "Another measure was computed anew." : "Another measure computed nothing anew.");
        foreach (var complaint in served.Complaints)
        {
            Console.WriteLine($"said: {complaint}");
        }

        var isKept = Median(maps) <= MapGoal && Median(measures) <= MeasureGoal && !isAnew && tasks.All(task => task <= TaskGoal)
            && served.Complaints.Count == 0;
        Console.WriteLine(FormattableString.Invariant(
            $"The goal is {(isKept ? "kept" : "missed")}: a map in {MapGoal} ms, another measure in {MeasureGoal} ms, no task over {TaskGoal} ms."));
        return isKept ? 0 : 1;
    }

    // Asked from outside every 10 ms, since the page's policy forbids what would wait in it. Says whether a computation was seen on the way.
    private static async Task<bool> Until(IPage page, Func<Seen, bool> isReached)
    {
        var (watch, isComputing) = (Stopwatch.StartNew(), false);
        while (watch.Elapsed < Longest)
        {
            var state = await page.EvaluateAsync<Seen>(State);
            isComputing |= state.IsComputing;
            if (isReached(state))
            {
                return isComputing;
            }

            await Task.Delay(10);
        }

        throw new TimeoutException($"Nothing new stood after {Longest.TotalSeconds} s.");
    }

    private static double Median(IReadOnlyCollection<double> values) => values.Order().ElementAt(values.Count / 2);

    private static void Print(string what, IReadOnlyCollection<double> values) => Console.WriteLine(values.Count == 0
        ? $"{what,-20} none"
        : string.Create(
            CultureInfo.InvariantCulture, $"{what,-20} median {Median(values),7:F0} ms, worst {values.Max(),7:F0} ms, {values.Count} of them"));

    private sealed record Seen
    {
        public int To { get; init; }

        public string Heading { get; init; } = "";

        public bool IsDone { get; init; }

        public bool IsComputing { get; init; }
    }
}
