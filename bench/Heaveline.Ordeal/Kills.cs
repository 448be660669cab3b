using System.Diagnostics;
using System.Globalization;
using Heaveline.Files;
using Heaveline.Files.Drives;
using Heaveline.Files.Garages;
using Heaveline.Files.Reporting;

namespace Heaveline.Ordeal;

/// <summary>
/// Kills the writer at random moments (SIGKILL: it can do nothing about it) and looks at what it left: every file whole, the last save that it called
/// finished there or the one after it, no version of the history missing, and the garage ready for the next save.
/// </summary>
internal static class Kills
{
    /// <summary>As a bench: prints what came of it.</summary>
    public static int Run(int rounds, int seed)
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-kills-").FullName;
        try
        {
            var clock = Stopwatch.StartNew();
            var (faults, halves, writes) = Of(rounds, seed, folder);
            Console.WriteLine(
                $"{rounds} kills in {clock.Elapsed.TotalMinutes:F1} min, seed {seed}: {writes} writes finished, {halves} kills left a half file "
                + $"aside, {faults.Count} faults.");
            faults.ToList().ForEach(Console.WriteLine);
            return faults.Count == 0 ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Rounds in one folder, the writers in turn.</summary>
    /// <returns>What was wrong; how many rounds left a neighbour behind; how many writes were finished.</returns>
    public static (IReadOnlyList<string> Faults, int Halves, int Writes) Of(int rounds, int seed, string folder)
    {
        var whole = Writer.Outputs.Skip(1).ToDictionary(file => file, Contents.Whole);
        Directory.CreateDirectory(Writer.GarageIn(folder));
        var chance = new Random(seed);
        var (faults, halves, writes) = (new List<string>(), 0, 0);
        for (var round = 0; round < rounds; round++)
        {
            var said = Killed(folder, round + (seed * Writer.Kinds), chance);
            writes += said.Count(line => line == "written" || line.StartsWith("saved", StringComparison.Ordinal));
            var partial = Partials(folder).ToList();
            halves += partial.Count > 0 ? 1 : 0;
            faults.AddRange(Look(folder, whole, said).Select(fault => FormattableString.Invariant($"round {round}: {fault}")));
            foreach (var file in partial)
            {
                File.SetLastWriteTimeUtc(file, DateTime.UtcNow.AddHours(-1.0));
            }

            faults.AddRange(GoesOn(folder).Select(fault => FormattableString.Invariant($"round {round}: {fault}")));
        }

        return (faults, halves, writes);
    }

    private static List<string> Killed(string folder, int seed, Random chance)
    {
        // Beside this program lies what starts it; inside the tests as well.
        var start = new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "Heaveline.Ordeal"))
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var word in new[] { Writer.Word, folder, seed.ToString(CultureInfo.InvariantCulture) })
        {
            start.ArgumentList.Add(word);
        }

        using var program = Process.Start(start)!;
        var errors = program.StandardError.ReadToEndAsync();
        var said = new List<string>();
        // The first kills fall into the start and the first write; the others anywhere after it.
        if (chance.Next(8) == 0 || program.StandardOutput.ReadLine() is not { } first)
        {
            Thread.Sleep(chance.Next(300));
        }
        else
        {
            said.Add(first);
            var until = Stopwatch.GetTimestamp() + (long)(Stopwatch.Frequency * 0.1 * chance.NextDouble());
            while (Stopwatch.GetTimestamp() < until)
            {
                Thread.Sleep(1);
            }
        }

        program.Kill();
        said.AddRange(program.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries));
        program.WaitForExit();
        if (errors.GetAwaiter().GetResult() is { Length: > 0 } words)
        {
            said.Add("! " + words.Split('\n')[0]);
        }

        return said;
    }

    private static IEnumerable<string> Look(string folder, Dictionary<string, IReadOnlyList<byte[]>> whole, List<string> said)
    {
        foreach (var error in said.Where(line => line.StartsWith('!')))
        {
            yield return $"the writer said {error}";
        }

        foreach (var (file, contents) in whole)
        {
            if (Bytes(folder, file) is { } bytes && !contents.Any(one => bytes.AsSpan().SequenceEqual(one)))
            {
                yield return $"{file} is torn";
            }
        }

        foreach (var file in new[] { Writer.Outputs[0], "garage/reports/numbers.html", "garage/reports/numbers.pdf" })
        {
            if (Bytes(folder, file) is { } bytes && Contents.NumberOfCsv(bytes) is null)
            {
                yield return $"{file} is torn";
            }
        }

        foreach (var file in Directory.EnumerateFiles(Writer.GarageIn(folder), "*.yaml", SearchOption.AllDirectories)
            .Where(f => !f.EndsWith(".partial") && Path.GetFileName(f) != DriveFile.FileName))
        {
            if (Contents.NumberOfCar(File.ReadAllBytes(file)) is null)
            {
                yield return $"{Path.GetRelativePath(folder, file)} is torn";
            }
        }

        foreach (var fault in Drives(folder, said).Concat(Upkeep.Faults(folder)))
        {
            yield return fault;
        }

        var finished = said
            .Where(line => line.StartsWith("car ", StringComparison.Ordinal)).Select(line => int.Parse(line[4..], CultureInfo.InvariantCulture));
        if (said.Any(line => line.StartsWith("saved", StringComparison.Ordinal)) && finished.ToList() is [.., var last])
        {
            foreach (var fault in History(folder, last))
            {
                yield return fault;
            }
        }
    }

    // Every file of a log whole, every drive's own file sound, and those there that were called finished.
    private static IEnumerable<string> Drives(string folder, List<string> said)
    {
        var garage = new Garage(Writer.GarageIn(folder));
        foreach (var drive in garage.Drives.Names)
        {
            if (garage.Drive(DriveFolders.FileOf(drive)).Value is null)
            {
                yield return $"what was written down about {drive} is torn";
            }

            foreach (var file in garage.Drives.LogFiles(drive))
            {
                if (Contents.NumberOfCsv(File.ReadAllBytes(Path.Combine(garage.Folder, DriveFolders.Folder, drive, file))) is null)
                {
                    yield return $"{file} of {drive} is torn";
                }
            }
        }

        foreach (var line in said.Where(line => line.StartsWith("log ", StringComparison.Ordinal)))
        {
            var words = line.Split(' ');
            var bytes = Bytes(folder, $"garage/{DriveFolders.Folder}/{words[1]}/{words[2]}");
            if (bytes is null || Contents.NumberOfCsv(bytes) != int.Parse(words[3], CultureInfo.InvariantCulture))
            {
                yield return $"{words[2]} of {words[1]} was brought in and is gone";
            }
        }
    }

    private static IEnumerable<string> History(string folder, int last)
    {
        if (Bytes(folder, $"garage/{Writer.Saved}") is not { } bytes || Contents.NumberOfCar(bytes) is not { } present)
        {
            yield return $"car {last} was saved and is gone";
            yield break;
        }

        if (present != last && present != last + 1)
        {
            yield return $"car {last} was saved and car {present} is there";
        }

        var garage = new Garage(Writer.GarageIn(folder));
        var kept = garage.Earlier(Writer.Saved)
            .Select(v => Contents.NumberOfCar(System.Text.Encoding.UTF8.GetBytes(garage.ReadEarlier(Writer.Saved, v.Until).Text ?? ""))).ToHashSet();
        // A save that was killed may have kept its version already: the next one keeps it a second time. None between may be missing.
        if (present > 0 && kept.Count == 0)
        {
            yield return $"car {present} has no history";
        }

        foreach (var missing in kept.Count == 0 ? [] : Enumerable.Range(kept.Min()!.Value, present - kept.Min()!.Value).Where(n => !kept.Contains(n)))
        {
            yield return $"version {missing} is missing under car {present}";
        }
    }

    // The next save finds no lock in its way and sweeps what the killed one left.
    private static IEnumerable<string> GoesOn(string folder)
    {
        var garage = new Garage(Writer.GarageIn(folder));
        var end = garage.Save("next.yaml", Contents.Car(Random.Shared.Next(1000)), garage.Read("next.yaml").Stamp).End;
        WholeFile.Write(Path.Combine(folder, Writer.Outputs[0]), Contents.Csv(0));
        new ReportFolder(garage.Folder).Save("next", "html", Contents.Csv(0), replaces: true);
        if (garage.Drives.Begin("next", "next.csv", Contents.Csv(0)) is { Drive: null } outcome)
        {
            yield return $"the next log was not brought in: {outcome.Message}";
        }

        if (end is not (SaveEnd.Saved or SaveEnd.Unchanged))
        {
            yield return $"the next save ended as {end}";
        }

        if (Directory.Exists(Upkeep.GarageIn(folder)))
        {
            var kept = new Garage(Upkeep.GarageIn(folder));
            kept.Save("next.yaml", Contents.Car(Random.Shared.Next(1000)), kept.Read("next.yaml").Stamp);
        }

        foreach (var left in Partials(folder))
        {
            yield return $"{Path.GetRelativePath(folder, left)} is not swept";
        }
    }

    private static IEnumerable<string> Partials(string folder) => Directory.EnumerateFiles(
        folder, ".*.partial", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint });

    private static byte[]? Bytes(string folder, string file) =>
        Path.Combine(folder, file) is var path && File.Exists(path) ? File.ReadAllBytes(path) : null;
}
