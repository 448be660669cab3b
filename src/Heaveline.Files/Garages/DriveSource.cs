using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using Heaveline.Answers;
using Heaveline.Drives.Events;
using Heaveline.Files.Drives;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Files.Garages;

/// <summary>A drive of the garage as it lies there now: what was written down about it, and which files its log has.</summary>
public sealed record DriveSource
{
    /// <summary>Its folder.</summary>
    public required string Folder { get; init; }

    /// <summary>What was written down.</summary>
    public required DriveSheet Sheet { get; init; }

    /// <summary>The text of that.</summary>
    public required string Text { get; init; }

    /// <summary>The car that was driven, under its load; null where none is named.</summary>
    public LoadedCar? Car { get; private init; }

    /// <summary>The drive before the change; null where there is none.</summary>
    public DriveSource? Before { get; private init; }

    /// <summary>Names, lengths and times of the files of its log: what can change without any of them is not looked for.</summary>
    public required string Look { get; init; }

    /// <summary>Tells this drive, as it is now, from every other.</summary>
    public string Key => $"{Folder}\u001f{Look}\u001f{Text}\u001f{CarDigest}\u001f{Before?.Key}";

    /// <summary>Tells its log from every other.</summary>
    public string LogKey => $"{Folder}\u001f{Look}\u001f{string.Join('|', At("take")?.Entries.Select(e => $"{e.Key}: {e.Value.Text}") ?? [])}";

    /// <summary>Tells what its car is told by from every other: neither notes nor what was changed are among it.</summary>
    public string FitKey
    {
        get
        {
            var phone = Settings.Phone is { } place
                ? string.Create(
                    CultureInfo.InvariantCulture, $"{place.BehindFrontAxle:R} {place.BehindFrontAxleSpread:R} {place.Left:R} {place.Up:R}")
                : "";
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{LogKey}\u001f{CarDigest}\u001f{Sheet.Load}\u001f{Settings.Wheelbase:R}\u001f{phone}\u001f")
                + string.Join(' ', Sheet.Sites.Select(s => Instant(s.At) + s.Site))
                + $"\u001f{string.Join(' ', Sheet.Rejected.Select(Instant))}\u001f{string.Join(' ', Sheet.Added.Select(Instant))}";

            static string Instant(double at) => at.ToString("R", CultureInfo.InvariantCulture);
        }
    }

    /// <summary>What was written down, as it is asked of the drive.</summary>
    public EventSettings Settings => new()
    {
        Wheelbase = Car?.Car.Wheelbase.Si ?? Sheet.Wheelbase,
        Phone = Sheet.Phone is { } phone ? PhonePlace.From(phone.BehindFrontAxle, phone.Left.Si, phone.Up.Si) : null,
        Sites = Sheet.Sites,
        Rejected = Sheet.Rejected,
        Added = Sheet.Added,
        Written = DriveFile.InstantsIn(new SourceText("", Text)).GroupBy(i => i.At).ToImmutableDictionary(
            i => i.Key, i => FormattableString.Invariant($"{DriveFolders.FileOf(Folder)}, line {i.First().Line}")),
    };

    // What was written down, and the car's files, by their names in the garage.
    private ImmutableArray<InputText> Inputs { get; init; } = [];

    private string CarDigest { get; init; } = "";

    /// <summary>What stands under a key in the file; null where nothing does.</summary>
    /// <param name="path">The keys that lead to it.</param>
    public Node? At(params ReadOnlySpan<string> path) => YamlReading.Value(new SourceText("", Text)).Root?.At(path);

    /// <summary>A drive as it lies in the garage now.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="folder">Its folder.</param>
    /// <returns>The drive; null, and why, where there is none or what was written down is refused.</returns>
    public static (DriveSource? Drive, string Problem) Of(Garage garage, string folder)
    {
        ArgumentNullException.ThrowIfNull(garage);
        return Of(garage, folder, withBefore: true);
    }

    /// <summary>It as a report takes it; its log is read when it is asked for.</summary>
    /// <param name="garage">The garage that it lies in.</param>
    /// <param name="nameOf">How a file or a folder of the garage is called, from its name in it.</param>
    public RecordedDrive Recorded(Garage garage, Func<string, string> nameOf)
    {
        ArgumentNullException.ThrowIfNull(garage);
        ArgumentNullException.ThrowIfNull(nameOf);
        return new RecordedDrive
        {
            Name = Sheet.Name,
            Path = nameOf($"{DriveFolders.Folder}/{Folder}"),
            Note = Sheet.Note ?? "",
            Change = Sheet.Change ?? "",
            IsDescribed = true,
            Car = Car,
            FrontPressure = Sheet.FrontPressure,
            RearPressure = Sheet.RearPressure,
            Settings = Settings,
            Taken = Sheet.Taken,
            Same = Sheet.Same,
            Before = Before?.Recorded(garage, nameOf),
            Inputs = [.. Inputs.Select(i => i with { Name = nameOf(i.Name) })],
            Look = LogKey,
            Read = stop => LogOf(garage.Drives.Log(Folder, Sheet.Taken, stop), stop),
        };
    }

    /// <summary>The log that was read, with the digests of its files.</summary>
    /// <param name="reading">What came of the reading.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="LogRefusedException">It was refused.</exception>
    internal static RecordedLog LogOf(LogReading reading, CancellationToken stop)
    {
        var log = reading.Log ?? throw new LogRefusedException(reading.Refusals);
        return new RecordedLog(log, [.. reading.Paths.Select(Digest)]);

        InputDigest Digest(string path)
        {
            stop.ThrowIfCancellationRequested();
            using var file = File.OpenRead(path);
            return new InputDigest { Name = Path.GetFileName(path), Sha256 = Convert.ToHexStringLower(SHA256.HashData(file)) };
        }
    }

    private static (DriveSource? Drive, string Problem) Of(Garage garage, string folder, bool withBefore)
    {
        if (!garage.Drives.Names.Contains(folder))
        {
            return (null, GarageNames.Problem(DriveFolders.FileOf(folder)) is { } problem && Directory.Exists(Path.Combine(
                garage.Folder, DriveFolders.Folder, folder))
                ? $"The drive {folder} is not read: its folder's name {problem}. Give the folder another name."
                : Missing(folder, garage.Drives.Names));
        }

        var file = DriveFolders.FileOf(folder);
        var text = garage.Read(file);
        var reading = text.Text is null ? null : garage.Drive(file, text.Text);
        if (reading?.Value is not { } sheet)
        {
            var first = text.Refusal ?? reading!.Refusals[0];
            return (null, FormattableString.Invariant($"{file}, line {first.Line}: {first.Message} {first.Advice}"));
        }

        var car = DriveFile.CarOf(Path.Combine(garage.Folder, file), sheet, garage.Folder) is { } path
            ? garage.Car(Path.GetRelativePath(garage.Folder, path).Replace(Path.DirectorySeparatorChar, '/')) : null;
        return (new DriveSource
        {
            Car = car?.Value is { } found ? LoadedCar.Of(found, sheet.Load is { } load ? LoadedCar.LoadNamed(found, load) : null) : null,
            Inputs = [.. reading.Sources.Concat(car?.Sources ?? []).Select(source => source.ToInput())],
            CarDigest = car is null ? "" : string.Join(' ', car.Sources.Select(source => source.Sha256)),
            Before = withBefore && sheet.After is { } before ? Of(garage, before, withBefore: false).Drive : null,
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
