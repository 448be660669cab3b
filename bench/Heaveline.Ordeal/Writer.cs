using Heaveline.Files;
using Heaveline.Files.Garages;
using Heaveline.Files.Reporting;
using Heaveline.Press;

namespace Heaveline.Ordeal;

/// <summary>
/// The program that is killed: writes tables, figures, reports, garage files and logs of drives over and over and says what it
/// has finished, until it is killed.
/// Each seed has one kind of writer in turn: a process that writes no figure starts in a moment.
/// </summary>
internal static class Writer
{
    /// <summary>The word by which it is started.</summary>
    public const string Word = "write";

    /// <summary>How many kinds of writers there are.</summary>
    public const int Kinds = 6;

    /// <summary>The car that is saved over and over, and the one that is also restored.</summary>
    public const string Saved = "fern.yaml", Restored = "plover.yaml";

    /// <summary>The files that it writes beside the garage.</summary>
    public static IReadOnlyList<string> Outputs { get; } = ["numbers.csv", "figure.svg", "figure.png", "figure.pdf", "report.html", "report.pdf"];

    /// <summary>Folder of the garage.</summary>
    public static string GarageIn(string folder) => Path.Combine(folder, "garage");

    /// <summary>Writes until it is killed.</summary>
    public static int Run(string folder, int seed)
    {
        var chance = new Random(seed);
        var garage = new Garage(GarageIn(folder));
        var reports = new ReportFolder(garage.Folder);
        var kind = seed % Kinds;
        if (kind == 4)
        {
            Room(garage);
        }

        for (var n = 0; ; n++)
        {
            switch (kind)
            {
                case 0:
                    Save(garage, Saved, Next(garage, Saved));
                    break;
                case 1 when chance.Next(2) == 0:
                    Save(garage, Restored, chance.Next(1000));
                    break;
                case 1 when garage.Earlier(Restored) is [_, ..] versions:
                    var until = versions[chance.Next(versions.Count)].Until;
                    Said(garage.Restore(Restored, until, garage.Read(Restored).Stamp).End, "restored");
                    break;
                case 1:
                    reports.Save("numbers", "html", Contents.Csv(chance.Next(1000)), replaces: true);
                    break;
                case 2:
                    reports.Save("numbers", "pdf", Contents.Csv(chance.Next(1000)), replaces: true);
                    WholeFile.Write(Path.Combine(folder, Outputs[0]), Contents.Csv(chance.Next(1000)));
                    break;
                case 4:
                    Log(garage, FormattableString.Invariant($"Lane {chance.Next(1_000_000)}"), chance);
                    break;
                case 5:
                    Upkeep.Work(folder, chance);
                    break;
                default:
                    var file = Path.Combine(folder, Outputs[1 + chance.Next(Outputs.Count - 1)]);
                    if (Path.GetFileName(file).StartsWith("figure", StringComparison.Ordinal))
                    {
                        FigureFile.Write(Contents.Figure(chance.Next(Contents.Made)), file);
                    }
                    else
                    {
                        ReportFile.Write(Contents.Report(chance.Next(Contents.Made)), file);
                    }

                    break;
            }

            Console.WriteLine(kind == 0 ? FormattableString.Invariant($"saved {n}") : "written");
        }
    }

    // A garage has room for so many drives: those of earlier rounds go before the first is brought in.
    private static void Room(Garage garage)
    {
        if (garage.Drives.Names.Count > DriveFolders.Most / 2)
        {
            Directory.Delete(Path.Combine(garage.Folder, DriveFolders.Folder), recursive: true);
        }
    }

    // A drive of two files, as a phone writes them: the first begins it.
    private static void Log(Garage garage, string wanted, Random chance)
    {
        if (garage.Drives.Names.Count >= DriveFolders.Most - 1)
        {
            // Full, as never before the kill comes.
            Thread.Sleep(Timeout.Infinite);
        }

        var (first, second) = (chance.Next(1000), chance.Next(1000));
        var drive = Brought(garage.Drives.Begin(wanted, "force.csv", Contents.Csv(first)), "force.csv", first);
        Brought(garage.Drives.Add(drive, "turning.csv", Contents.Csv(second)), "turning.csv", second);
    }

    private static string Brought(DriveOutcome outcome, string file, int n)
    {
        var drive = outcome.Drive ?? throw new InvalidOperationException($"Not brought in: {outcome.Message}");
        Console.WriteLine(FormattableString.Invariant($"log {drive} {file} {n}"));
        return drive;
    }

    private static int Next(Garage garage, string name) =>
        garage.Read(name).Text is { } text ? Contents.NumberOfCar(System.Text.Encoding.UTF8.GetBytes(text))!.Value + 1 : 0;

    private static void Save(Garage garage, string name, int n)
    {
        var end = garage.Save(name, Contents.Car(n), garage.Read(name).Stamp).End;
        Said(end, FormattableString.Invariant($"car {n}"));
    }

    private static void Said(SaveEnd end, string what)
    {
        if (end is not (SaveEnd.Saved or SaveEnd.Unchanged))
        {
            throw new InvalidOperationException($"Not saved: {end}.");
        }

        Console.WriteLine(what);
    }
}
