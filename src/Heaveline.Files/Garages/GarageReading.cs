using System.Text;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Garages;

/// <summary>Reads files of a garage: as texts, as what they describe, and as lines of its list.</summary>
internal static class GarageReading
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

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
    public static GarageEntry Entry(Garage garage, string name) => Entry(garage, garage.Read(name));

    /// <summary>The line of a file whose text was read.</summary>
    public static GarageEntry Entry(Garage garage, GarageText text)
    {
        var name = text.Name;
        if (text.Text is null)
        {
            return new GarageEntry { Name = name, Kind = GarageKind.Unknown, Title = name, Refusals = 1, Problem = text.Refusal!.Message };
        }

        var reading = YamlReading.Value(new SourceText(name, text.Text));
        if (GarageFormat.Of(reading.Root) is { } format)
        {
            return format.Line(garage, name, reading.Root!, text.Text) with
            {
                Note = reading.Root!.At("note") is { Kind: NodeKind.Scalar } note ? note.Text.Trim() : "",
                Stamp = text.Stamp,
            };
        }

        // What lies where a drive's file does was meant as one.
        var drive = DriveFolders.DriveOf(name) is null ? [] : garage.Drive(name, text.Text).Refusals;
        var problem = drive is [var refused, ..] ? refused.Message
            : reading.Refusals is [var first, ..] ? first.Message : "the file is no car, no variant and no road.";
        return new GarageEntry
        {
            Name = name,
            Kind = GarageKind.Unknown,
            Title = name,
            Refusals = Math.Max(1, reading.Refusals.Count),
            Problem = problem,
            Stamp = text.Stamp,
        };
    }
}
