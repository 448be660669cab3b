using Heaveline.Files.Crews;
using Heaveline.Files.Films;
using Heaveline.Files.Parts;
using Heaveline.Files.Ties;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Garages;

/// <summary>A file's line in a garage's list, kind by kind.</summary>
internal static class GarageLines
{
    public static GarageEntry Road(Garage garage, string name, Node root, string text)
    {
        var road = garage.Road(name);
        return Line(GarageKind.Road, name, root.At("road")!.Text, road.Refusals, road.Warnings);
    }

    public static GarageEntry Variant(Garage garage, string name, Node root, string text)
    {
        var car = garage.Car(name, text);
        return Line(GarageKind.Variant, name, root.At("variant")?.Text.Trim(), car.Refusals, car.Warnings) with
        {
            Base = Base(garage, name, root.At("of")?.Text),
        };
    }

    public static GarageEntry Car(Garage garage, string name, Node root, string text)
    {
        var car = garage.Car(name, text);
        return Line(GarageKind.Car, name, root.At("car")!.Text, car.Refusals, car.Warnings);
    }

    public static GarageEntry Drive(Garage garage, string name, Node root, string text)
    {
        var drive = garage.Drive(name, text);
        return Line(GarageKind.Drive, name, root.At("drive")!.Text, drive.Refusals, drive.Warnings);
    }

    public static GarageEntry Film(Garage garage, string name, Node root, string text)
    {
        var sheet = FilmFile.Read(new SourceText(name, text));
        return Line(GarageKind.Film, name, root.At("film")!.Text, sheet.Refusals, sheet.Warnings);
    }

    public static GarageEntry Ties(Garage garage, string name, Node root, string text)
    {
        var sheet = TieFile.Read(new SourceText(name, text));
        return Line(GarageKind.Ties, name, root.At("ties")!.Text, sheet.Refusals, sheet.Warnings);
    }

    public static GarageEntry Parts(Garage garage, string name, Node root, string text)
    {
        var list = PartsFile.Read(new SourceText(name, text));
        return Line(GarageKind.Parts, name, root.At("parts")!.Text, list.Refusals, list.Warnings);
    }

    public static GarageEntry Study(Garage garage, string name, Node root, string text)
    {
        var study = garage.Study(name, text);
        return Line(GarageKind.Study, name, root.At("study")!.Text, study.Refusals, study.Warnings);
    }

    public static GarageEntry Crew(Garage garage, string name, Node root, string text)
    {
        var sheet = CrewFile.Read(new SourceText(name, text));
        return Line(GarageKind.Crew, name, root.At("crew")!.Text, sheet.Refusals, sheet.Warnings);
    }

    public static GarageEntry Choices(Garage garage, string name, Node root, string text) => Line(GarageKind.Choices, name, name, [], []);

    private static GarageEntry Line(
        GarageKind kind, string name, string? title, IReadOnlyList<Refusal> refusals, IReadOnlyList<Warning> warnings) => new()
        {
            Name = name,
            Kind = kind,
            Title = string.IsNullOrWhiteSpace(title) ? name : title.Trim(),
            Refusals = refusals.Count,
            Warnings = warnings.Count,
            Unknown = warnings.Count(warning => warning.IsUnknown),
            Problem = refusals is [var first, ..] ? first.Message : null,
        };

    private static string? Base(Garage garage, string name, string? written)
    {
        if (string.IsNullOrWhiteSpace(written))
        {
            return written;
        }

        var (path, problem) = Confined.Resolve(garage.Folder, Path.Combine(garage.Folder, name), written);
        return problem is null ? garage.NameOf(path) : written;
    }
}
