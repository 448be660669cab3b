using System.Diagnostics;
using System.Globalization;
using Heaveline.Files.Keeping;
using Heaveline.Numerics;

namespace Heaveline.Ordeal;

/// <summary>
/// Kills the program at random moments of a choice whose pieces it keeps (SIGKILL), every third time tears off the end of what was kept as a power
/// cut would, and goes on from there: what was kept must be readable each time, and the end have the same bytes as the run that nobody killed.
/// </summary>
internal static class StudyKills
{
    private const int MostTorn = 200;

    /// <summary>The choice that is killed.</summary>
    public static readonly string[] Line =
    [
        "choose", "examples/garage/fern-saloon.yaml", "--parts", "examples/parts/village-autumn.yaml", "--use", "village-hump at 40 km/h",
        "--load", "driver", "--budget", "400 EUR", "--draws", "10",
    ];

    /// <summary>As a bench: prints what came of it.</summary>
    /// <param name="program">The program, built.</param>
    /// <param name="kills">How often it is killed.</param>
    /// <param name="seed">Where in time.</param>
    public static int Run(string program, int kills, int seed)
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-studies-").FullName;
        try
        {
            var clock = Stopwatch.StartNew();
            var (faults, ends, torn, before) = Of(program, kills, seed, folder);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{kills} kills in {clock.Elapsed.TotalMinutes:F1} min, seed {seed}: {ends} studies came to their end, {torn} times what was kept "
                + $"was torn too, {before} pieces were taken up in all, {faults.Count} faults."));
            faults.ToList().ForEach(Console.WriteLine);
            return faults.Count == 0 ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Kills and ends.</summary>
    /// <returns>What was wrong; how many studies ended; how often the file was torn; how many pieces later lives found.</returns>
    public static (IReadOnlyList<string> Faults, int Ends, int Torn, long Before) Of(string program, int kills, int seed, string folder)
    {
        var clock = Stopwatch.StartNew();
        var whole = Told(program, [.. Line]);
        // From the start of the program to a little before its end.
        var longest = 0.95 * clock.Elapsed.TotalMilliseconds;
        string[] kept = [.. Line, "--kept-in", folder, "--resume"];
        var (faults, ends, torn, before, killed) = (new List<string>(), 0, 0, 0L, 0);
        for (var life = 0UL; killed < kills || Kept(folder) is not null; life++)
        {
            if (killed < kills)
            {
                using var process = Started(program, kept);
                var said = process.StandardOutput.ReadToEndAsync();
                var remarks = process.StandardError.ReadToEndAsync();
                if (!process.WaitForExit(TimeSpan.FromMilliseconds(longest * SplitMix.Uniform((ulong)seed, life))))
                {
                    process.Kill();
                    process.WaitForExit();
                    killed++;
                    if (remarks.Result.Trim() is { Length: > 0 } words && !IsOfItsEnd(words))
                    {
                        faults.Add($"life {life}: it said {words}");
                    }

                    var found = Count(folder, faults, life);
                    before += found;
                    torn += life % 3 == 0 && Tear(folder, seed, life) ? 1 : 0;
                    continue;
                }

                Compare(whole, (process.ExitCode, said.Result, remarks.Result), life, faults);
            }
            else
            {
                Compare(whole, Told(program, kept), life, faults);
            }

            ends++;
            Directory.Delete(Path.Combine(folder, ".heaveline"), recursive: true);
        }

        return (faults, ends, torn, before);
    }

    private static void Compare(
        (int Code, string Said, string Remarks) whole, (int Code, string Said, string Remarks) own, ulong life, List<string> faults)
    {
        if ((own.Code, own.Said) != (whole.Code, whole.Said))
        {
            faults.Add($"life {life}: ended with {own.Code} and other bytes: {own.Remarks.Trim()}");
        }
    }

    private static (int Code, string Said, string Remarks) Told(string program, string[] words)
    {
        using var process = Started(program, words);
        var remarks = process.StandardError.ReadToEndAsync();
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, said, remarks.Result);
    }

    private static Process Started(string program, string[] words) => Process.Start(new ProcessStartInfo(program, words)
    {
        RedirectStandardOutput = true, RedirectStandardError = true,
    })!;

    private static string? Kept(string folder) => Path.Combine(folder, ".heaveline", "studies") is var at && Directory.Exists(at)
        ? Directory.EnumerateFiles(at, "*" + PieceFile.Ending).SingleOrDefault()
        : null;

    // Killed between the last piece and the answer: that all is kept was said by then, and is true.
    private static bool IsOfItsEnd(string words) =>
        words.StartsWith("heaveline: kept in '", StringComparison.Ordinal) && !words.Contains('\n', StringComparison.Ordinal);

    // What the killed one left is read by nobody else now.
    private static int Count(string folder, List<string> faults, ulong life)
    {
        if (Kept(folder) is not { } path || PieceFile.StudyOf(path) is not { } study)
        {
            return 0;
        }

        try
        {
            var program = File.ReadLines(path).Skip(2).First()["program ".Length..];
            using var file = PieceFile.Open(path, study, program);
            return file.Before;
        }
        catch (Quantities.RefusedValueException refused)
        {
            faults.Add($"life {life}: {refused.Message}");
            return 0;
        }
    }

    private static bool Tear(string folder, int seed, ulong life)
    {
        if (Kept(folder) is not { } path)
        {
            return false;
        }

        using var file = new FileStream(path, FileMode.Open);
        file.SetLength(Math.Max(0L, file.Length - 1L - (long)(MostTorn * SplitMix.Uniform((ulong)seed + 1UL, life))));
        return true;
    }
}
