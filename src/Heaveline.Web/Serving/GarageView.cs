using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Files;
using Heaveline.Files.Garages;
using Heaveline.Files.Roads;
using Heaveline.Films;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Web.Serving;

/// <summary>
/// What stands in the garage, by name. A car's name is its file's without the ending .yaml, with / between folders; one that ends in .yml keeps its
/// ending. Files are read anew whenever they are asked for; only the list is kept until a file of the folder changes.
/// </summary>
internal sealed class GarageView(ServeOptions options) : IFinder, IDisposable
{
    /// <summary>Folder of a garage in which invented cars lie beside its own.</summary>
    public const string InventedFolder = "invented/";

    private static readonly string Ending = FileFormat.Described.Endings[0];
    private readonly Lock only = new();
    private readonly Lazy<GarageWatch> watch = new(() => new GarageWatch(new Garage(options.Garage).Folder));
    private (string Look, GarageListing Listing)? kept;

    /// <summary>The garage.</summary>
    public Garage Garage { get; } = new(options.Garage, options.Clock);

    /// <summary>What finds its cars by their numbers; null where nothing does.</summary>
    public IGarageNumbers? Numbers => options.Numbers;

    /// <summary>Tells when its files change.</summary>
    public GarageWatch Watch => watch.Value;

    /// <summary>Its folder.</summary>
    public string Folder => Garage.Folder;

    /// <summary>The units that its pages are read in, the names of what stands in it left as they are; metric where it remembers none.</summary>
    public ReaderUnits Units => GarageChoices.Units(Folder).Value is { IsImperial: true } imperial
        ? imperial.Leaving(Listing.Entries.Select(entry => entry.Title))
        : ReaderUnits.Metric;

    /// <summary>Why what it remembers of its units cannot be read; null when it can.</summary>
    public string? UnitsProblem =>
        GarageChoices.Units(Folder).Refusals is [var first, ..] ? $"{GarageChoices.Name}: {first.Message} {first.Advice}" : null;

    /// <summary>Everything in it: cars, variants with their bases, roads, and how many refusals each has.</summary>
    public GarageListing Listing
    {
        get
        {
            var look = Look();
            lock (only)
            {
                if (kept is not { } known || known.Look != look)
                {
                    kept = known = (look, Garage.List());
                }

                return known.Listing;
            }
        }
    }

    /// <summary>Names of the cars and variants, in alphabetical order.</summary>
    public IReadOnlyList<string> CarNames =>
        [.. Listing.Entries
            .Where(entry => entry.Kind is GarageKind.Car or GarageKind.Variant).Select(entry => NameOf(entry.Name)).Order(StringComparer.Ordinal)];

    /// <summary>
    /// The cars and variants by their names in the garage, each with what it is called, a variant behind its car's name, in the order of the alphabet
    /// of that.
    /// </summary>
    public IReadOnlyList<(string Name, string Words)> CarTitles
    {
        get
        {
            var cars = Listing.Entries.Where(entry => entry.Kind is GarageKind.Car or GarageKind.Variant).ToDictionary(entry => entry.Name);
            return Titles(cars.Values.Select(
                entry => (NameOf(entry.Name), Called(entry, cars) + (IsInvented(entry.Name) ? ", invented" : ""))));
        }
    }

    /// <summary>The roads by their names, those that come with Heaveline and those of the garage, each with what it is called.</summary>
    public IReadOnlyList<(string Name, string Words)> RoadTitles => Titles(Listing.Roads.Select(road => (road.Name, road.Title)));

    /// <summary>Whether a car is an invented one that came with the program, put beside the garage's own to be looked at.</summary>
    /// <param name="name">Its name, or its file's.</param>
    public static bool IsInvented(string name) => name.StartsWith(InventedFolder, StringComparison.Ordinal);

    /// <summary>The car where none is named: the first one that is not refused, own ones before invented ones; null without any.</summary>
    public string? UsualCar
    {
        get
        {
            IReadOnlyList<string> names = [.. CarNames.OrderBy(IsInvented)];
            var refused = Listing.Entries.Where(entry => entry.Refusals > 0).Select(entry => NameOf(entry.Name)).ToHashSet(StringComparer.Ordinal);
            return names.FirstOrDefault(name => !refused.Contains(name)) ?? (names is [var first, ..] ? first : null);
        }
    }

    /// <summary>Names of the roads that come with Heaveline.</summary>
    public static IReadOnlyList<string> RoadNames => [.. NamedRoads.All.Keys];

    /// <summary>Names of the road files of the garage, with their ending, in alphabetical order.</summary>
    public IReadOnlyList<string> GarageRoads => [.. Listing.Roads.Where(road => !road.IsBuiltIn).Select(road => road.Name)];

    /// <summary>The lists of parts by their files, each with what it is called and whether it is refused, in the order of their files.</summary>
    public IReadOnlyList<(string Name, string Words, bool IsRefused)> PartsLists =>
        [.. Listing.Parts.Select(list => (list.Name, list.Title, list.Refusals > 0)), .. Sheets];

    /// <summary>The sheets of springs among them, by their files.</summary>
    public IReadOnlyList<(string Name, string Words, bool IsRefused)> Sheets =>
    [
        .. GarageSheets.Names(Garage).Select(name => (name, $"{Path.GetFileNameWithoutExtension(name)}, springs", Garage.Parts(name).Value is null)),
    ];

    /// <summary>The studies by their files, each with what it is called and whether it is refused, in the order of their files.</summary>
    public IReadOnlyList<(string Name, string Words, bool IsRefused)> Studies =>
        [.. Listing.Studies.Select(study => (study.Name, study.Title, study.Refusals > 0))];

    /// <summary>The drives by their folders, each with what it is called, in the order of their folders.</summary>
    public IReadOnlyList<(string Name, string Words)> DriveTitles
    {
        get
        {
            var titles = Listing.Drives.ToDictionary(entry => entry.Name, entry => entry.Title);
            return [.. Garage.Drives.Names.Select(name =>
                (name, titles.GetValueOrDefault(DriveFolders.FileOf(name), name) is var title && title == name ? name : $"{title} ({name})"))];
        }
    }

    /// <summary>The films that are described, by their files, each with what it is called, in the order of that.</summary>
    public IReadOnlyList<(string Name, string Words)> FilmTitles => Titles(Listing.Films.Select(film => (film.Name, film.Title)));

    /// <summary>The drives of which nothing that was written down is refused, by their folders: those that other pages can go on with.</summary>
    public IReadOnlyList<string> SoundDrives
    {
        get
        {
            var refused = Listing.Drives.Where(entry => entry.Refusals > 0).Select(entry => entry.Name).ToHashSet(StringComparer.Ordinal);
            return [.. Garage.Drives.Names.Where(name => !refused.Contains(DriveFolders.FileOf(name)))];
        }
    }

    /// <summary>The drive where none is named: the one brought in last; null in a garage without any.</summary>
    public string? UsualDrive => Garage.Drives.Names.MaxBy(name => Directory.GetCreationTimeUtc(Path.Combine(Folder, DriveFolders.Folder, name)));

    /// <summary>The file of a car, by its name in the garage. It need not be there.</summary>
    public static string FileOf(string name) => FileFormat.Described.Has(name) ? name : name + Ending;

    /// <summary>The name of a car, from its file's.</summary>
    public static string NameOf(string file) => file.EndsWith(Ending, StringComparison.Ordinal) ? file[..^Ending.Length] : file;

    /// <summary>
    /// A car by its name; null when there is none of that name. A file that is no road but cannot be read as a car comes with its refusals.
    /// </summary>
    public Reading<Car>? Car(string name) => IsThere(FileOf(name)) ? Garage.Car(FileOf(name)) : null;

    /// <summary>A road by its name, one that comes with Heaveline or one of the garage; null when there is none of that name.</summary>
    public Reading<Road>? Road(string name) =>
        RoadNames.Contains(name) || GarageRoads.Contains(name) ? Garage.Road(name) : null;

    /// <summary>The files that a car, a road or a drive is made of, by their names in the garage.</summary>
    /// <param name="names">Names of cars, of roads and of drives' folders; what is not there is made of the file that it would be.</param>
    public IReadOnlySet<string> FilesOf(IEnumerable<string> names) => names.Distinct(StringComparer.Ordinal)
        .SelectMany(name => (Car(name)?.Sources ?? (GarageRoads.Contains(name) ? Road(name)?.Sources : null) ?? [])
            .Select(source => source.File).Append(FileOf(name))).ToHashSet(StringComparer.Ordinal);

    public void Dispose()
    {
        if (watch.IsValueCreated)
        {
            watch.Value.Dispose();
        }
    }

    Found<Car> IFinder.Car(string name) => Found(name, Car(name));

    /// <summary>What came of looking for a car.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="reading">What was read; null where there is none of that name.</param>
    public Found<Car> Found(string name, Reading<Car>? reading) => new()
    {
        Name = name,
        ShortName = Path.GetFileNameWithoutExtension(FileOf(name)),
        Value = reading?.Value,
        Refusal = reading is { Value: not null } ? ""
            : CarNames.Count == 0 ? "There is no car file in this garage yet. Begin your own car on its first page."
            : reading is null ? Missing("car", name, " in this garage", CarNames) : $"The file of {name} is refused; its own page says why.",
        IsMissing = reading is null,
        Inputs = [.. reading?.Sources.Select(s => s.ToInput()) ?? []],
    };

    Found<Road> IFinder.Road(string name)
    {
        var reading = Road(name);
        return new Found<Road>
        {
            Name = name,
            ShortName = name,
            Value = reading?.Value,
            Refusal = reading is { Value: not null } ? ""
                : reading is null ? Missing("road", name, "", [.. RoadNames, .. GarageRoads])
                    : $"The road {name} is refused: {reading.Refusals[0].Message} {reading.Refusals[0].Advice}",
            IsMissing = reading is null,
            Inputs = [.. reading?.Sources.Select(s => s.ToInput(RoadNames.Contains(name))) ?? []],
        };
    }

    Found<PartsList> IFinder.Parts(string name)
    {
        var reading = PartsLists.Any(list => list.Name == name) ? Garage.Parts(name) : null;
        return new Found<PartsList>
        {
            Name = name,
            ShortName = name,
            Value = reading?.Value,
            Refusal = reading is { Value: not null } ? ""
                : reading is null ? Missing("list of parts", name, " in this garage", [.. PartsLists.Select(list => list.Name)])
                    : $"The list {name} is refused: {reading.Refusals[0].Message} {reading.Refusals[0].Advice}",
            IsMissing = reading is null,
            Inputs = [.. reading?.Sources.Select(s => s.ToInput()) ?? []],
        };
    }

    bool IFinder.IsStudy(string name) => Studies.Any(study => study.Name == name);

    Found<ChooseSheet> IFinder.Study(string name)
    {
        var reading = Studies.Any(study => study.Name == name) ? Garage.Study(name) : null;
        return new Found<ChooseSheet>
        {
            Name = name,
            ShortName = name,
            // A car is called without its file's ending here.
            Value = reading?.Value?.Named((file, choice) => choice == Choices.Car.Name ? NameOf(file) : file),
            Refusal = reading is { Value: not null } ? ""
                : reading is null ? Missing("study", name, " in this garage", [.. Studies.Select(study => study.Name)])
                    : $"The study {name} is refused: {reading.Refusals[0].Message} {reading.Refusals[0].Advice}",
            IsMissing = reading is null,
            Inputs = [.. reading?.Sources.Select(s => s.ToInput()) ?? []],
        };
    }

    Found<KeptFilm> IFinder.Film(string name, string? marks) => GarageFilm.Find(Garage, name);

    Found<LampTrack> IFinder.Lamp(string name, LampMark? mark) => GarageLamp.Find(Garage, name);

    Found<RecordedDrive> IFinder.Drive(string name) => NamedDrives.Find(Garage, name, file => file);

    // As the variant itself calls its car: each base before it, as far as they are here. Files that go round in a circle end at the second time.
    private static string Called(GarageEntry entry, Dictionary<string, GarageEntry> cars)
    {
        var (words, seen) = (entry.Title, new HashSet<string>([entry.Name], StringComparer.Ordinal));
        while (entry.Base is { } name && seen.Add(name) && cars.TryGetValue(name, out var basis))
        {
            (words, entry) = ($"{basis.Title}, {words}", basis);
        }

        return words;
    }

    // Two of one name are told apart by their files.
    private static IReadOnlyList<(string Name, string Words)> Titles(IEnumerable<(string Name, string Title)> entries)
    {
        var all = entries.ToList();
        return [.. NamesApart.Of([.. all.Select(one => (one.Title, one.Name))]).Select((words, i) => (all[i].Name, words))
            .OrderBy(one => one.words, StringComparer.OrdinalIgnoreCase).ThenBy(one => one.Name, StringComparer.Ordinal)];
    }

    // The nearest name first, then as many as can be taken in at a glance.
    private static string Missing(string what, string name, string where, IReadOnlyList<string> known)
    {
        const int Most = 12;
        var near = NearestWord.Of(name, known) is { } word ? $" Did you mean {word}?" : "";
        var more = known.Count > Most ? FormattableString.Invariant($" and {known.Count - Most} more") : "";
        var none = string.IsNullOrWhiteSpace(name) ? $"No {what} is named." : $"There is no {what} named {name}{where}.";
        return $"{none}{near} There {(known.Count == 1 ? "is" : "are")} {string.Join(", ", known.Take(Most))}{more}.";
    }

    private bool IsThere(string file) => Listing.Entries.Any(
        entry => entry.Name == file && !entry.IsBuiltIn
            && entry.Kind is not (GarageKind.Road or GarageKind.Choices or GarageKind.Drive or GarageKind.Film or GarageKind.Ties
                or GarageKind.Parts or GarageKind.Study or GarageKind.Crew));

    // Names, sizes and times of all files: what can change without any of them is not looked for.
    private string Look() =>
        string.Join('\n', Directory.EnumerateFiles(Folder, "*", new EnumerationOptions { RecurseSubdirectories = true, MaxRecursionDepth = 4 })
            .Order(StringComparer.Ordinal)
            .Select(path => new FileInfo(path)).Select(file => $"{file.FullName}|{(file.Exists ? file.Length : 0)}|{file.LastWriteTimeUtc.Ticks}"));
}
