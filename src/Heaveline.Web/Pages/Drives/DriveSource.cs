using Heaveline.Files;
using Heaveline.Files.Drives;
using Heaveline.Files.Garages;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Web.Pages.Drives;

/// <summary>A drive of the garage as it lies there now: what was written down about it, and which files its log has.</summary>
public sealed record DriveSource
{
    /// <summary>Its folder.</summary>
    public required string Folder { get; init; }

    /// <summary>What was written down.</summary>
    public required DriveSheet Sheet { get; init; }

    /// <summary>The text of that.</summary>
    public required string Text { get; init; }

    /// <summary>Names, lengths and times of the files of its log: what can change without any of them is not looked for.</summary>
    public required string Look { get; init; }

    /// <summary>Tells this drive, as it is now, from every other.</summary>
    public string Key => $"{Folder}\u001f{Look}\u001f{Text}";

    /// <summary>What stands under a key in the file; null where nothing does.</summary>
    /// <param name="path">The keys that lead to it.</param>
    public Node? At(params ReadOnlySpan<string> path) => YamlReading.Value(new SourceText("", Text)).Root?.At(path);

    /// <summary>A drive as it lies in the garage now.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="folder">Its folder.</param>
    /// <returns>The drive; null, and why, where there is none or what was written down is refused.</returns>
    internal static (DriveSource? Drive, string Problem) Of(Garage garage, string folder)
    {
        if (!garage.Drives.Names.Contains(folder))
        {
            return (null, Missing(folder, garage.Drives.Names));
        }

        var file = DriveFolders.FileOf(folder);
        var text = garage.Read(file);
        var reading = text.Text is null ? null : garage.Drive(file, text.Text);
        if (reading?.Value is not { } sheet)
        {
            var first = text.Refusal ?? reading!.Refusals[0];
            return (null, FormattableString.Invariant($"{file}, line {first.Line}: {first.Message} {first.Advice}"));
        }

        return (new DriveSource
        {
            Folder = folder,
            Sheet = sheet,
            Text = text.Text!,
            Look = string.Join('\n', garage.Drives.LogFiles(folder)
                .Select(name => new FileInfo(Path.Combine(garage.Folder, DriveFolders.Folder, folder, name)))
                .Select(log => FormattableString.Invariant($"{log.Name}|{(log.Exists ? log.Length : 0)}|{log.LastWriteTimeUtc.Ticks}"))),
        }, "");
    }

    private static string Missing(string folder, IReadOnlyList<string> known) =>
        NearestWord.Of(folder, known) is { } near ? $"There is no drive named {folder} in this garage. Did you mean {near}?"
        : known.Count == 0 ? "There is no drive in this garage yet."
        : $"There is no drive named {folder} in this garage. There {(known.Count == 1 ? "is" : "are")} {string.Join(", ", known.Take(12))}.";
}
