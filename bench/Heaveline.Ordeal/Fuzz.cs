using System.Diagnostics;
using System.Globalization;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Files.Yaml;

namespace Heaveline.Ordeal;

/// <summary>
/// Reads texts that nobody would write: the example cars, variants, roads and profiles, spoilt at random. Each must be read or refused, with words
/// for every refusal, in two seconds of processor time and bounded memory. An input is made again from the seed and its number.
/// </summary>
internal static class Fuzz
{
    private const long MostBytes = 400_000_000;
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(2.0);

    /// <summary>As a bench: prints what came of it.</summary>
    public static int Run(int inputs, int seed)
    {
        var clock = Stopwatch.StartNew();
        var tally = Of(inputs, seed, (n, soFar) =>
        {
            if (n % 10_000 == 0)
            {
                Console.WriteLine(FormattableString.Invariant($"{n} after {clock.Elapsed.TotalMinutes:F1} min: {soFar.Faults.Count} faults"));
            }
        });
        Console.WriteLine(
            FormattableString.Invariant($"{inputs} inputs in {clock.Elapsed.TotalMinutes:F1} min, seed {seed}: {tally.Accepted} read, ")
            + FormattableString.Invariant($"{inputs - tally.Accepted - tally.Faults.Count} refused, {tally.Faults.Count} faults; slowest ")
            + FormattableString.Invariant(
                $"{tally.Slowest.TotalMilliseconds:F0} ms of processor time, most memory for one {tally.MostBytes / 1e6:F0} MB, ")
            + FormattableString.Invariant($"working set at most {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:F0} MB."));
        tally.Faults.ToList().ForEach(Console.WriteLine);
        return tally.Faults.Count == 0 ? 0 : 1;
    }

    /// <summary>Reads so many spoilt texts.</summary>
    public static FuzzTally Of(int inputs, int seed, Action<int, FuzzTally>? at = null)
    {
        var garage = Path.Combine(Examples(), "garage");
        var (names, sound) = Sound();
        var tally = new FuzzTally();
        for (var n = 0; n < inputs; n++)
        {
            var (name, text) = Input(n, seed, names, sound);
            Read(name, text, garage, FormattableString.Invariant($"input {n} of seed {seed}, {Path.GetFileName(name)}"), tally);
            at?.Invoke(n + 1, tally);
        }

        return tally;
    }

    /// <summary>One of the spoilt texts, to be looked at.</summary>
    public static (string File, string Text) Input(int number, int seed)
    {
        var (names, sound) = Sound();
        return Input(number, seed, names, sound);
    }

    private static (string File, string Text) Input(int number, int seed, List<string> names, List<string> sound)
    {
        var chance = new Random(HashCode(seed, number));
        var which = chance.Next(names.Count);
        return (names[which], Mutation.Of(sound, which, chance));
    }

    private static (List<string> Names, List<string> Texts) Sound()
    {
        List<string> names =
        [
            .. new[] { "garage", "roads" }.SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Examples(), folder)))
                .Where(file => FileFormat.Described.Has(file) || FileFormat.MeasuredProfile.Has(file)).Order(StringComparer.Ordinal),
        ];
        return (names, [.. names.Select(File.ReadAllText)]);
    }

    private static void Read(string name, string text, string garage, string what, FuzzTally tally)
    {
        var worked = Environment.CpuUsage.TotalTime;
        var before = GC.GetAllocatedBytesForCurrentThread();
        // A loop without end is said before it is waited for in vain.
        using var watch = new Timer(_ => Environment.FailFast($"{what}: still being read after a minute."), null, 60_000, Timeout.Infinite);
        try
        {
            var source = new SourceText(name, text);
            var (isRead, refusals, words) = FileFormat.MeasuredProfile.Has(name) ? Outcome(MeasuredProfileFile.Read(source))
                : name.StartsWith(garage, StringComparison.Ordinal) ? Outcome(CarFile.Read(source, garage))
                : Outcome(RoadFile.Read(source, Path.GetDirectoryName(name)));
            if (isRead == refusals > 0)
            {
                tally.Faults.Add($"{what}: {(isRead ? "read and refused" : "neither read nor refused")}");
            }
            else if (refusals > 0 && words.Length == 0)
            {
                tally.Faults.Add($"{what}: refused without a word");
            }
            else
            {
                tally.Accepted += isRead ? 1 : 0;
            }
        }
        catch (Exception e)
        {
            tally.Faults.Add($"{what}: {e.GetType().Name}: {e.Message} {e.StackTrace?.Split('\n')[0].Trim()}");
        }

        var (time, bytes) = (Environment.CpuUsage.TotalTime - worked, GC.GetAllocatedBytesForCurrentThread() - before);
        tally.Slowest = time > tally.Slowest ? time : tally.Slowest;
        tally.MostBytes = Math.Max(tally.MostBytes, bytes);
        if (time > Longest || bytes > MostBytes)
        {
            tally.Faults.Add(string.Create(CultureInfo.InvariantCulture, $"{what}: {time.TotalSeconds:F1} s and {bytes / 1e6:F0} MB"));
        }
    }

    private static (bool IsRead, int Refusals, string Words) Outcome<T>(Reading<T> reading)
        where T : class => (reading.Value is not null, reading.Refusals.Count, reading.Format());

    // The same on every run, unlike the runtime's own.
    private static int HashCode(int seed, int n) => unchecked((int)(((uint)seed * 2654435761u) ^ ((uint)n * 2246822519u)));

    private static string Examples()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Heaveline.slnx")))
            {
                return Path.Combine(folder.FullName, "examples");
            }
        }

        throw new DirectoryNotFoundException("The bench does not run from a checkout.");
    }
}
