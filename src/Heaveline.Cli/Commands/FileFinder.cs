using Heaveline.Cars;
using Heaveline.Cli.Output;
using Heaveline.Drives;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Choosing;
using Heaveline.Files.Drives;
using Heaveline.Files.Films;
using Heaveline.Files.Garages;
using Heaveline.Files.Parts;
using Heaveline.Files.Roads;
using Heaveline.Files.Ties;
using Heaveline.Files.Yaml;
using Heaveline.Films;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Ties;

namespace Heaveline.Cli.Commands;

/// <summary>Finds cars, roads and logs by the paths of their files; what their readers have to say goes beside the results.</summary>
internal sealed class FileFinder(Streams streams, CancellationToken stop) : IFinder
{
    // Where file names usually have no case, two spellings are one file.
    private readonly HashSet<string> read = new(OperatingSystem.IsLinux() ? StringComparer.Ordinal : StringComparer.OrdinalIgnoreCase);
    private readonly List<string> names = [];
    private readonly List<(string Name, IReadOnlyList<InputText> Inputs)> files = [];
    private Reading<TieSheet>? ties;

    /// <summary>The names that the owners of the cars and roads found so far gave.</summary>
    public IReadOnlyList<string> Names => names;

    /// <summary>The files of every car, road and list of parts found so far, under the name that was given for it.</summary>
    public IReadOnlyList<(string Name, IReadOnlyList<InputText> Inputs)> Files => files;

    /// <summary>Whether a path leads to one of the files that were read, through links or by another spelling: it must not be written over.</summary>
    public bool HasRead(string path) => read.Contains(Real(path));

    public Found<Car> Car(string name)
    {
        var reading = CarFile.Load(name);
        Say(reading.Format());
        read.UnionWith(reading.Sources.Select(s => Real(s.File)));
        names.AddRange(reading.Value is { } car ? LoadedCar.NamesIn(car) : []);
        return Noted(new Found<Car>
        {
            Name = name,
            ShortName = Path.GetFileNameWithoutExtension(name),
            Value = reading.Value,
            Refusal = reading.Value is null ? $"{name} is refused for {Reasons(reading.Refusals.Count)}." : "",
            Inputs = [.. reading.Sources.Select(s => s.ToInput())],
        });
    }

    public Found<Road> Road(string name)
    {
        // An obstacle that a sheet of ties names is missed where the sheet names it.
        var reading = ties is { Value.Over: var over } && over == name && TieFile.Missing(ties) is { } missing
            ? Reading<Road>.Refused(ties.Sources[0], missing)
            : NamedRoads.Find(name, stop: stop);
        Say(reading.Format());
        read.UnionWith(reading.Sources.Select(s => Real(s.File)));
        names.AddRange(reading.Value is { } road ? [road.Name] : Array.Empty<string>());
        return Noted(new Found<Road>
        {
            Name = name,
            ShortName = Path.GetFileNameWithoutExtension(name),
            Value = reading.Value,
            Refusal = reading.Value is null ? $"the road '{name}' is refused for {Reasons(reading.Refusals.Count)}." : "",
            Inputs = [.. reading.Sources.Select(s => s.ToInput(NamedRoads.All.ContainsKey(name)))],
        });
    }

    public Found<Log> Log(IReadOnlyList<string> names) => Log(names, []);

    public Found<Log> Log(IReadOnlyList<string> names, IReadOnlyList<Overruling> overrulings)
    {
        var reading = LogFile.Load([.. names.Select(NamedDrives.LogOf)], overrulings, stop);
        Say(string.Join('\n', reading.Refusals.Select(r => r.Text)));
        read.UnionWith(reading.Paths.Select(Real));
        return new Found<Log>
        {
            Name = string.Join(", ", names),
            Value = reading.Log,
            Refusal = reading.Log is null ? $"the log is refused for {Reasons(reading.Refusals.Length)}." : "",
        };
    }

    public Found<RecordedDrive> Drive(string name)
    {
        var found = NamedDrives.Find(name);
        read.UnionWith(found.Inputs.Select(i => i.Name).Append(name).Select(Real));
        names.AddRange(found.Value is { } drive
            ? [drive.Name, .. drive.Car is { } car ? LoadedCar.NamesIn(car.Car) : [], .. drive.Settings.Sites.Select(site => site.Site)]
            : Array.Empty<string>());
        return found;
    }

    public bool IsDescribed(string name) => NamedDrives.IsDescribed(name);

    public Found<KeptFilm> Film(string name, string? marks)
    {
        var isSheet = FileFormat.Described.Has(name);
        if ((isSheet ? name : marks) is not { } described)
        {
            return NoFilm(name, $"{name} needs a sheet that says the wheelbase: give it with --marks, or name the sheet itself (docs/film-file.md).");
        }

        var sheet = FilmFile.Load(described);
        Say(sheet.Format());
        read.UnionWith(sheet.Sources.Select(s => Real(s.File)));
        if (sheet.Value is not { } said)
        {
            return NoFilm(name, $"the sheet {described} is refused for {Reasons(sheet.Refusals.Count)}.");
        }

        names.AddRange([said.Name, said.Seen, said.Place]);
        var track = isSheet ? FilmFile.TrackOf(described, said) : name;
        if (FileFormat.FilmTrack.Has(track) && (File.Exists(track) || !isSheet))
        {
            var kept = TrackFile.Load(track);
            Say(kept.Format());
            read.UnionWith(kept.Sources.Select(s => Real(s.File)));
            var video = isSheet ? FilmFile.VideoOf(described, said) : null;
            if (kept.Value is { } old && FilmOrigins.Unlike(old, said, video) is { Length: > 0 } unlike)
            {
                if (video is null || !File.Exists(video) || said.Marks is null)
                {
                    return NoFilm(name, $"the kept track {track} is not used: {unlike}. Have the film followed anew, or take back what was changed.");
                }

                Say($"{track} is not used: {unlike}. The film is followed anew; --track {track} keeps that.");
                return Followed(name, video, said, sheet.Sources);
            }

            return kept.Value is null
                ? NoFilm(name, $"the track {track} is refused for {Reasons(kept.Refusals.Count)}.")
                : new Found<KeptFilm>
                {
                    Name = name,
                    ShortName = Path.GetFileNameWithoutExtension(name),
                    Value = new KeptFilm(said, kept.Value),
                    Inputs = [.. sheet.Sources.Concat(kept.Sources).Select(s => s.ToInput())],
                };
        }

        if (isSheet && said.Track is { } named && (said.Video is null || !File.Exists(FilmFile.VideoOf(described, said)!)))
        {
            return NoFilm(
                name,
                FileFormat.FilmTrack.Has(track)
                    ? $"its track: {named} is not there, and no film to follow either."
                    : $"its track: {named} does not end in {FileFormat.FilmTrack.EndingWords}.");
        }

        return Followed(name, isSheet ? FilmFile.VideoOf(described, said) : name, said, sheet.Sources);
    }

    private Found<KeptFilm> Followed(string name, string? film, FilmSheet sheet, IReadOnlyList<SourceText> sources)
    {
        if (film is null || !File.Exists(film))
        {
            return NoFilm(name, film is null ? $"{name} has neither a kept track beside it nor a film." : $"the film {film} is not there.");
        }

        if (sheet.Marks is not { } marks)
        {
            return NoFilm(name, $"{name} has no marks: mark both hubs and the body's side on one frame (docs/film-file.md).");
        }

        if (FilmCameras.Find(streams) is not { } camera)
        {
            return NoFilm(name, FilmCameras.Missing);
        }

        try
        {
            using var progress = new Progress(streams, "film, per cent", 100);
            read.Add(Real(film));
            return new Found<KeptFilm>
            {
                Name = name,
                ShortName = Path.GetFileNameWithoutExtension(name),
                Value = new KeptFilm(sheet, camera.Follow(film, marks, progress, stop)),
                Inputs = [.. sources.Select(s => s.ToInput())],
            };
        }
        catch (NoAnswerException refused)
        {
            return NoFilm(name, $"the film {film} is refused: {refused.Message}");
        }
    }

    private static Found<KeptFilm> NoFilm(string name, string why) => new() { Name = name, Refusal = why };

    public Found<LampTrack> Lamp(string name, LampMark? mark)
    {
        if (!FileFormat.FilmTrack.Has(name))
        {
            return Shone(name, mark);
        }

        var reading = LampFile.Load(name);
        Say(reading.Format());
        read.UnionWith(reading.Sources.Select(s => Real(s.File)));
        return new Found<LampTrack>
        {
            Name = name,
            ShortName = Path.GetFileNameWithoutExtension(name),
            Value = reading.Value,
            Refusal = reading.Value is null ? $"the lamp {name} is refused for {Reasons(reading.Refusals.Count)}." : "",
            Inputs = [.. reading.Sources.Select(s => s.ToInput())],
        };
    }

    private Found<LampTrack> Shone(string film, LampMark? mark)
    {
        Found<LampTrack> None(string why) => new() { Name = film, Refusal = why };
        if (!File.Exists(film))
        {
            return None($"the film {film} is not there.");
        }

        if (mark is not { } at)
        {
            return None($"{film} is no kept brightness (.csv): where it is a film, say where its lamp is with --marks \"X, Y, TIME\".");
        }

        if (FilmCameras.Find(streams) is not { } camera)
        {
            return None(FilmCameras.Missing);
        }

        try
        {
            using var progress = new Progress(streams, "film, per cent", 100);
            read.Add(Real(film));
            return new Found<LampTrack>
            {
                Name = film,
                ShortName = Path.GetFileNameWithoutExtension(film),
                Value = camera.Brightness(film, at.At, at.Time, progress, stop),
            };
        }
        catch (NoAnswerException refused)
        {
            return None($"the film {film} is refused: {refused.Message}");
        }
    }

    public Found<TieSheet> Ties(string name)
    {
        var reading = TieFile.Load(name);
        ties = reading;
        Say(reading.Format());
        read.UnionWith(reading.Sources.Select(s => Real(s.File)));
        names.AddRange(reading.Value is { } sheet ? [sheet.Name] : Array.Empty<string>());
        return new Found<TieSheet>
        {
            Name = name,
            ShortName = Path.GetFileNameWithoutExtension(name),
            Value = reading.Value,
            Refusal = reading.Value is null ? $"the sheet {name} is refused for {Reasons(reading.Refusals.Count)}." : "",
            Inputs = [.. reading.Sources.Select(s => s.ToInput())],
        };
    }

    public Found<PartsList> Parts(string name)
    {
        var reading = PartsFile.Load(name);
        Say(reading.Format());
        read.UnionWith(reading.Sources.Select(s => Real(s.File)));
        names.AddRange(reading.Value is { } list ? [list.Name, .. list.Parts.Select(part => part.Name)] : Array.Empty<string>());
        return Noted(new Found<PartsList>
        {
            Name = name,
            ShortName = Path.GetFileNameWithoutExtension(name),
            Value = reading.Value,
            Refusal = reading.Value is null ? $"the list {name} is refused for {Reasons(reading.Refusals.Count)}." : "",
            Inputs = [.. reading.Sources.Select(s => s.ToInput())],
        });
    }

    public bool IsStudy(string name) =>
        SourceText.Load(name, FileFormat.LongestText) is { Refusal: null, Source: var source } && StudyFile.IsStudy(source);

    public Found<ChooseSheet> Study(string name)
    {
        var reading = StudyFile.Load(name);
        Say(reading.Format());
        read.UnionWith(reading.Sources.Select(s => Real(s.File)));
        return Noted(new Found<ChooseSheet>
        {
            Name = name,
            ShortName = Path.GetFileNameWithoutExtension(name),
            Value = reading.Value?.Named((file, choice) => choice == ChooseSheet.Road && NamedRoads.All.ContainsKey(file)
                ? file
                : Path.Combine(Path.GetDirectoryName(name) ?? "", file)),
            Refusal = reading.Value is null ? $"the study {name} is refused for {Reasons(reading.Refusals.Count)}." : "",
            Inputs = [.. reading.Sources.Select(s => s.ToInput())],
        });
    }

    public CancellationToken Stop => stop;

    public IReadOnlyList<(string Name, string Caption)> Roads => [.. NamedRoads.All.Select(r => (r.Key, r.Value.Caption))];

    private Found<T> Noted<T>(Found<T> found)
        where T : class
    {
        files.Add((found.Name, found.Inputs));
        return found;
    }

    private static string Real(string path) =>
        string.IsNullOrWhiteSpace(path) ? "" : RealPath.Of(path) ?? Path.GetFullPath(path);

    private void Say(string remarks)
    {
        if (remarks.Length > 0)
        {
            streams.Remarks.WriteLine(remarks);
        }
    }

    private static string Reasons(int count) => count == 1 ? "1 reason" : FormattableString.Invariant($"{count} reasons");
}
