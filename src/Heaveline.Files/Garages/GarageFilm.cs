using System.Text;
using Heaveline.Files.Editing;
using Heaveline.Files.Films;
using Heaveline.Films;
using Heaveline.Studies;

namespace Heaveline.Files.Garages;

/// <summary>A film as it lies in a garage: what was written down about it, its track, the film itself.</summary>
public sealed record GarageFilm
{
    private GarageFilm()
    {
    }

    /// <summary>Its file's name in the garage.</summary>
    public required string Name { get; init; }

    /// <summary>The file's text.</summary>
    public required SourceText Text { get; init; }

    /// <summary>What was written down.</summary>
    public required FilmSheet Sheet { get; init; }

    /// <summary>Where its track is, or would be; null where its file names a place outside the garage.</summary>
    public required string? TrackPath { get; init; }

    /// <summary>Why there can be no track where its file names one; blank where there can.</summary>
    public string TrackProblem { get; init; } = "";

    /// <summary>Whether the track is kept.</summary>
    public bool HasTrack => TrackPath is not null && File.Exists(TrackPath);

    /// <summary>Where the film itself lies; null where none is named, or it is not there.</summary>
    public required string? Video { get; init; }

    /// <summary>Why the film itself is not looked at; blank where it is, or none is named.</summary>
    public string VideoProblem { get; init; } = "";

    /// <summary>Reads one.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="name">Its file's name there.</param>
    /// <returns>The film, or why there is none.</returns>
    public static (GarageFilm? Film, string Problem) Of(Garage garage, string name)
    {
        ArgumentNullException.ThrowIfNull(garage);
        var text = garage.Read(name);
        if (text.Text is not { } found || garage.Find(name).Path is not { } path)
        {
            return (null, text.Refusal is { } why ? $"{name}: {why.Message} {why.Advice}" : $"There is no film named {name} in this garage.");
        }

        var source = new SourceText(name, found);
        var reading = FilmFile.Read(source);
        if (reading.Value is not { } sheet)
        {
            return (null, $"{name} is refused: {reading.Refusals[0].Message} {reading.Refusals[0].Advice}");
        }

        string? Inside(string beside) => Confined.Resolve(garage.Folder, path, beside) is { Problem: null, Path: var full } ? full : null;
        var video = sheet.Video is { } named ? Inside(named) : null;
        var isThere = video is not null && FileFormat.Film.Has(video) && File.Exists(video);
        return (
            new GarageFilm
            {
                Name = name,
                Text = source,
                Sheet = sheet,
                TrackPath = Inside(sheet.Track ?? Path.GetFileNameWithoutExtension(name) + FileFormat.FilmTrack.Endings[0]),
                TrackProblem = sheet.Track is { } kept && Confined.Resolve(garage.Folder, path, kept) is { Problem: { } why2 }
                    ? $"its track: {kept} {why2}; name one in the folder of the garage." : "",
                Video = isThere ? video : null,
                VideoProblem = isThere || sheet.Video is null ? ""
                    : video is null ? $"{sheet.Video} lies outside the garage: put the film into its folder."
                    : !FileFormat.Film.Has(video) ? $"The name of {sheet.Video} does not end in {FileFormat.Film.EndingWords}."
                    : $"The film {sheet.Video} is not there.",
            },
            "");
    }

    /// <summary>The film of a name with its kept track.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="name">Its file's name there.</param>
    public static Found<KeptFilm> Find(Garage garage, string name)
    {
        var (film, problem) = Of(garage, name);
        if (film is null)
        {
            return new Found<KeptFilm> { Name = name, Refusal = problem, IsMissing = true };
        }

        if (!film.HasTrack)
        {
            return new Found<KeptFilm>
            {
                Name = name,
                Refusal = film.Sheet.Track is not { } named ? $"{film.Sheet.Name}: the car has not been followed yet, so there is no track."
                    : film.TrackProblem.Length > 0 ? $"{film.Sheet.Name}: {film.TrackProblem}"
                    : $"{film.Sheet.Name}: its track: {named} is not there. Have the car followed, or put the track back.",
            };
        }

        var track = TrackFile.Load(film.TrackPath!);
        if (track.Value is { } old && FilmOrigins.Unlike(old, film.Sheet, film.Video) is { Length: > 0 } unlike)
        {
            return new Found<KeptFilm>
            {
                Name = name, Refusal = $"{film.Sheet.Name}: its kept track is not used, {unlike}. Have the car followed anew.",
            };
        }

        return new Found<KeptFilm>
        {
            Name = name,
            ShortName = Path.GetFileNameWithoutExtension(name),
            Value = track.Value is { } kept ? new KeptFilm(film.Sheet, kept) : null,
            Refusal = track.Value is null
                ? $"The track of {film.Sheet.Name} is refused: {track.Refusals[0].Message} {track.Refusals[0].Advice}" : "",
            Inputs = [film.Text.ToInput(), .. track.Sources.Select(s => s.Named(garage.NameOf(film.TrackPath!)).ToInput())],
        };
    }

    /// <summary>Names of the films in a garage that no file describes, in the order of the alphabet.</summary>
    /// <param name="garage">The garage.</param>
    public static IReadOnlyList<string> Undescribed(Garage garage)
    {
        ArgumentNullException.ThrowIfNull(garage);
        var options = new EnumerationOptions
        {
            RecurseSubdirectories = true,
            MaxRecursionDepth = Garage.DeepestFolder,
            AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
        };
        string[] films =
        [
            .. Directory.EnumerateFiles(garage.Folder, "*", options).Where(FileFormat.Film.Has).Select(garage.NameOf)
                .Where(name => GarageNames.Problem(name, FileFormat.Film) is null).Order(StringComparer.Ordinal),
        ];
        if (films.Length == 0)
        {
            return [];
        }

        var described = garage.List().Films.Select(entry => Of(garage, entry.Name).Film?.Video).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return [.. films.Where(name => !described.Contains(Path.GetFullPath(Path.Combine(garage.Folder, name))))];
    }

    /// <summary>Begins the file of a film that none describes, beside it.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="video">The film's name in the garage, one of <see cref="Undescribed"/>.</param>
    /// <param name="wheelbase">The wheelbase as it is to stand there, with unit and doubt.</param>
    /// <param name="seen">Which car; blank for nothing.</param>
    /// <param name="place">Where; blank for nothing.</param>
    /// <returns>The file's name, or why it was not made.</returns>
    public static (string? Name, string Problem) Begin(Garage garage, string video, string wheelbase, string seen, string place)
    {
        ArgumentNullException.ThrowIfNull(garage);
        ArgumentNullException.ThrowIfNull(video);
        if (!Undescribed(garage).Contains(video))
        {
            return (null, $"There is no film {video} in this garage that no file describes.");
        }

        var stem = Path.GetFileNameWithoutExtension(video);
        var text = new StringBuilder();
        (string Key, string Value)[] lines =
            [("film", stem), ("video", Path.GetFileName(video)), ("seen", seen), ("place", place), ("wheelbase", wheelbase)];
        foreach (var (key, value) in lines)
        {
            if (!string.IsNullOrWhiteSpace(value))
            {
                text.Append(key).Append(": ").Append(ScalarText.Of(value.Trim(), inFlow: false)).Append('\n');
            }
        }

        var folder = Path.GetDirectoryName(video) is { Length: > 0 } inside ? inside + "/" : "";
        for (var number = 1; number < 100; number++)
        {
            var name = folder + stem + (number > 1 ? FormattableString.Invariant($"-{number}") : "") + FileFormat.Described.Endings[0];
            if (FilmFile.Read(new SourceText(name, text.ToString())) is { Value: null, Refusals: [var first, ..] })
            {
                return (null, $"{first.Message} {first.Advice}");
            }

            var saved = garage.Save(name, text.ToString(), null);
            if (saved.End is SaveEnd.Saved or SaveEnd.Unchanged)
            {
                return (name, "");
            }

            if (saved.End != SaveEnd.Conflict)
            {
                return (null, $"{saved.Message} {saved.Advice}");
            }
        }

        return (null, "A hundred files have that name: give the film another.");
    }

    /// <summary>What stands under a key of its file; blank for nothing.</summary>
    /// <param name="key">The key.</param>
    public string Written(string key) => Yaml.YamlReading.Value(Text).Root?.At(key)?.Text ?? "";

    /// <summary>Edits its file, if the result is sound and nobody changed it meanwhile.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="edits">The edits, all or none.</param>
    /// <returns>Why it was not done, with what to do; blank when it was.</returns>
    public string Edit(Garage garage, params IEnumerable<KeyEdit> edits)
    {
        ArgumentNullException.ThrowIfNull(garage);
        var edited = FilmFile.Edit(Text.Text, edits);
        if (edited.Text is null)
        {
            return $"{edited.Refusal!.Message} {edited.Refusal.Advice}";
        }

        if (FilmFile.Read(new SourceText(Name, edited.Text)) is { Value: null, Refusals: [var first, ..] })
        {
            return $"{first.Message} {first.Advice}";
        }

        var saved = garage.Save(Name, edited.Text, new Stamp(Text.Sha256));
        return saved.End switch
        {
            SaveEnd.Saved or SaveEnd.Unchanged => "",
            SaveEnd.Conflict => "The file was changed meanwhile by somebody else; what it says now is shown. Do it again.",
            _ => $"{saved.Message} {saved.Advice}",
        };
    }

    /// <summary>Keeps a track that was followed, in place of one that was kept before.</summary>
    /// <param name="track">The track.</param>
    /// <returns>Why it was not kept; blank when it was.</returns>
    public string Keep(FilmTrack track)
    {
        ArgumentNullException.ThrowIfNull(track);
        if (TrackPath is null || !FileFormat.FilmTrack.Has(TrackPath))
        {
            return $"Its file keeps the track in {Sheet.Track}: name a file of the garage that ends in {FileFormat.FilmTrack.EndingWords}.";
        }

        // What is no track is somebody's own file.
        try
        {
            if (HasTrack && TrackFile.Load(TrackPath) is { Sources: [var there, ..] } && !TrackFile.IsTrack(there.Text))
            {
                return $"{Path.GetFileName(TrackPath)} is there already and is no track: give the track another name in the film's file.";
            }

            WholeFile.Write(TrackPath, Encoding.UTF8.GetBytes(TrackText.Of(track)));
            return "";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"The track was not kept: {e.Message}";
        }
    }
}
