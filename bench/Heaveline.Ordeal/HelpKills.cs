using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Numerics;

namespace Heaveline.Ordeal;

/// <summary>
/// Kills, at random moments, now the program that helps with a study, now the study itself (SIGKILL). A study whose helper is killed must end with
/// the bytes of the run that nobody helped; a helper whose study is killed must leave by itself, and the study go on from what it kept.
/// </summary>
internal static partial class HelpKills
{
    // Ten seconds of silence, and what a busy machine adds to them.
    private static readonly TimeSpan Leaves = TimeSpan.FromSeconds(90.0);

    /// <summary>As a bench: prints what came of it.</summary>
    /// <param name="program">The program, built.</param>
    /// <param name="kills">How often one of the two is killed.</param>
    /// <param name="seed">Which, and where in time.</param>
    public static int Run(string program, int kills, int seed)
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-helped-").FullName;
        var clock = Stopwatch.StartNew();
        var (faults, helpers, studies, ends) = (new List<string>(), 0, 0, 0);
        try
        {
            using var plain = Started(program, StudyKills.Line);
            var whole = plain.StandardOutput.ReadToEnd();
            plain.WaitForExit();
            var longest = 1.5 * clock.Elapsed.TotalMilliseconds;
            for (var life = 0UL; helpers + studies < kills; life++)
            {
                using var study = Started(program, [.. StudyKills.Line, "--kept-in", folder, "--resume", "--help-at", "0"]);
                var said = study.StandardOutput.ReadToEndAsync();
                if (Opened(study) is not { } opened)
                {
                    faults.Add($"life {life}: the study was not opened to others.");
                    break;
                }

                var remarks = study.StandardError.ReadToEndAsync();
                using var helper = Started(program, ["help-out", opened.At, opened.Code, "--threads", "1"]);
                var helped = helper.StandardOutput.ReadToEndAsync();
                var complained = helper.StandardError.ReadToEndAsync();
                var isStudy = SplitMix.Uniform((ulong)seed, (2UL * life) + 1UL) < 0.5;
                var ended = study.WaitForExit(TimeSpan.FromMilliseconds(longest * SplitMix.Uniform((ulong)seed, 2UL * life)));
                if (!ended)
                {
                    (isStudy ? study : helper).Kill();
                    (helpers, studies) = (helpers + (isStudy ? 0 : 1), studies + (isStudy ? 1 : 0));
                }

                study.WaitForExit();
                if (!helper.WaitForExit(Leaves))
                {
                    faults.Add($"life {life}: the helper stays: {helped.IsCompleted}");
                    helper.Kill();
                    helper.WaitForExit();
                }

                if (complained.Result.Contains("   at ", StringComparison.Ordinal))
                {
                    faults.Add($"life {life}: the helper said {complained.Result.Trim()}");
                }

                if (!ended && isStudy)
                {
                    continue;
                }

                ends++;
                if ((study.ExitCode, said.Result) != (0, whole))
                {
                    faults.Add($"life {life}: ended with {study.ExitCode} and other bytes: {remarks.Result.Trim()}");
                }

                Directory.Delete(Path.Combine(folder, ".heaveline"), recursive: true);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{helpers} helpers and {studies} studies killed in {clock.Elapsed.TotalMinutes:F1} min, seed {seed}: {ends} studies came to their end, "
            + $"{faults.Count} faults."));
        faults.ForEach(Console.WriteLine);
        return faults.Count == 0 ? 0 : 1;
    }

    private static (string At, string Code)? Opened(Process study)
    {
        while (study.StandardError.ReadLine() is { } line)
        {
            if (Invitation().Match(line) is { Success: true } words)
            {
                return (words.Groups[1].Value, words.Groups[2].Value);
            }
        }

        return null;
    }

    private static Process Started(string program, string[] words) => Process.Start(new ProcessStartInfo(program, words)
    {
        RedirectStandardOutput = true, RedirectStandardError = true,
    })!;

    [GeneratedRegex(@"help-out (\S+) (\S+)")]
    private static partial Regex Invitation();
}
