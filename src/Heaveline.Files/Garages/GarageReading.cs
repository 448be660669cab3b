using System.Text;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Garages;

/// <summary>Reads files of a garage: as texts, as what they describe, and as lines of its list.</summary>
internal static class GarageReading
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>What a text describes, by its keys.</summary>
    public static GarageKind KindOf(Node? root) =>
        root is null ? GarageKind.Unknown
        : root.At("road") is not null ? GarageKind.Road
        : VariantWords.IsVariant(root) ? GarageKind.Variant
        : root.At("car") is not null ? GarageKind.Car
        : GarageKind.Unknown;

    /// <summary>A text with its stamp. The reasons are those of <see cref="SourceText.Load"/>.</summary>
    public static GarageText Text(string path, string name)
    {
        if (SourceText.Load(path, YamlTree.Longest) is { Refusal: { } refusal })
        {
            return new GarageText(name, null, null, refusal with { File = name });
        }

        try
        {
            // Read once more for its bytes: a mark at the start is part of the text that an edit must keep.
            var bytes = Bounded.Read(path, YamlTree.Longest);
            return new GarageText(name, Strict.GetString(bytes), Stamp.Of(bytes), null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or DecoderFallbackException)
        {
            return new GarageText(name, null, null, new Refusal(name, 1, 1, 1, "the file changed while it was read.", "Try again."));
        }
    }

    /// <summary>A file's line in the list.</summary>
    public static GarageEntry Entry(Garage garage, string name)
    {
        var text = garage.Read(name);
        if (text.Text is null)
        {
            return new GarageEntry { Name = name, Kind = GarageKind.Unknown, Title = name, Refusals = 1, Problem = text.Refusal!.Message };
        }

        var reading = YamlReading.Value(new SourceText(name, text.Text));
        var root = reading.Root;
        var kind = KindOf(root);
        if (kind == GarageKind.Road)
        {
            var road = garage.Road(name);
            return Line(root!.At("road")!.Text, road.Refusals, road.Warnings.Count);
        }

        if (kind == GarageKind.Unknown)
        {
            var problem = reading.Refusals is [var first, ..] ? first.Message : "the file is no car, no variant and no road.";
            return new GarageEntry { Name = name, Kind = kind, Title = name, Refusals = Math.Max(1, reading.Refusals.Count), Problem = problem };
        }

        var car = garage.Car(name, text.Text);
        return kind == GarageKind.Variant
            ? Line(car.Variant ?? root!.At("variant")?.Text, car.Refusals, car.Warnings.Count) with { Base = Base(garage, name, root!.At("of")?.Text) }
            : Line(root!.At("car")!.Text, car.Refusals, car.Warnings.Count);

        GarageEntry Line(string? title, IReadOnlyList<Refusal> refusals, int warnings) => new()
        {
            Name = name,
            Kind = kind,
            Title = string.IsNullOrWhiteSpace(title) ? name : title.Trim(),
            Refusals = refusals.Count,
            Warnings = warnings,
            Problem = refusals is [var first, ..] ? first.Message : null,
        };
    }

    /// <summary>A reading with names inside the garage.</summary>
    public static CarReading Named(CarReading reading, Func<string, string> nameOf) => reading with
    {
        Refusals = [.. reading.Refusals.Select(refusal => refusal with { File = nameOf(refusal.File) })],
        Warnings = [.. reading.Warnings.Select(warning => warning with { File = nameOf(warning.File) })],
        Sources = [.. reading.Sources.Select(source => new SourceText(nameOf(source.File), source.Text))],
    };

    /// <summary>A reading with names inside the garage.</summary>
    public static RoadReading Named(RoadReading reading, Func<string, string> nameOf) => reading with
    {
        Refusals = [.. reading.Refusals.Select(refusal => refusal with { File = nameOf(refusal.File) })],
        Warnings = [.. reading.Warnings.Select(warning => warning with { File = nameOf(warning.File) })],
        Sources = [.. reading.Sources.Select(source => new SourceText(nameOf(source.File), source.Text))],
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
