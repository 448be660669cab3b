using System.Diagnostics;
using System.Globalization;

namespace Heaveline.PageBench;

/// <summary>Moves sliders without a pause for minutes and looks whether memory holds: that of the program, and the page's own.</summary>
internal static class Soak
{
    // The page's heap is read after a collection: between two, its saw teeth are larger than all that is held.
    private const double Allowed = 1.10;

    public static async Task<int> Run(double minutes)
    {
        await using var served = await ServedPage.Open("?car=fern-saloon&load=four%20up%20with%20luggage&rear-spring=44");
        var samples = new List<(double Minute, double Program, double Page)>();
        var clock = Stopwatch.StartNew();
        var (move, next) = (0, TimeSpan.Zero);
        // Compiling and the first garbage collections are not growth: the first tenth, at least a minute of a long run, is not counted.
        var warm = TimeSpan.FromMinutes(Math.Min(0.1 * minutes, 3.0));
        while (clock.Elapsed.TotalMinutes < minutes)
        {
            var key = SliderRace.Sliders[move / 20 % SliderRace.Sliders.Length];
            await served.Page.EvaluateAsync(SliderRace.Move, new object[] { key, 0.3 + (0.4 * (move % 20) / 19.0) });
            if (move % 20 == 19)
            {
                await served.Page.EvaluateAsync(
                    "key => document.querySelector(`[data-setting=\"${key}\"]`).dispatchEvent(new Event('change', { bubbles: true }))", key);
                await served.Page.EvaluateAsync("() => { frames_.length = 0; }");
            }

            move++;
            await Task.Delay(30);
            if (clock.Elapsed >= warm && clock.Elapsed >= next)
            {
                next = clock.Elapsed + TimeSpan.FromSeconds(2.0);
                samples.Add((
                    clock.Elapsed.TotalMinutes,
                    Resident(served.Program.Id),
                    await served.Page.EvaluateAsync<double>("() => { gc(); return performance.memory.usedJSHeapSize / 1048576; }")));
            }
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{move} moves in {clock.Elapsed.TotalMinutes:F1} min, {samples.Count} samples after a warm-up of {warm.TotalMinutes:F1} min; "
            + $"load average {SliderRace.LoadAverage()}"));
        var holds = Holds("working set of the program, MB", [.. samples.Select(s => s.Program)]) & Holds(
            "JavaScript heap of the page, MB", [.. samples.Select(s => s.Page)]);
        foreach (var complaint in served.Complaints)
        {
            Console.WriteLine($"said: {complaint}");
        }

        Console.WriteLine(
            holds && served.Complaints.Count == 0 ? "Memory holds, and nothing was said of an error." : "Memory grows, or an error was said.");
        return holds && served.Complaints.Count == 0 ? 0 : 1;
    }

    private static bool Holds(string what, double[] values)
    {
        var third = values.Length / 3;
        if (third == 0)
        {
            Console.WriteLine($"{what}: too few samples");
            return false;
        }

        var (first, last) = (values[..third].Average(), values[^third..].Average());
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{what,-34} first third {first,7:F1}, last third {last,7:F1} ({100.0 * ((last / first) - 1.0):+0.0;-0.0} %), least {values.Min(),7:F1}, "
            + $"most {values.Max(),7:F1}"));
        return last <= Allowed * first;
    }

    // [proc(5), VmRSS]
    private static double Resident(int process)
    {
        var line = File.ReadLines($"/proc/{process}/status").First(one => one.StartsWith("VmRSS:", StringComparison.Ordinal));
        return double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) / 1024.0;
    }
}
