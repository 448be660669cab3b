using System.Collections.Immutable;
using Heaveline.Tuning;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.WebUtilities;

namespace Heaveline.Web.Tuning;

/// <summary>
/// What is in hand: a car, its load, the road, the speed and what is tried on the car. Every page's address says it with the same keys, and
/// every link from page to page carries it. It holds words as they stand in an address; the pages read and refuse them.
/// </summary>
public sealed record CurrentCar
{
    /// <summary>Address key of the speed, km/h where no unit is said.</summary>
    public const string SpeedKey = "speed";

    /// <summary>Address key of the obstacle's height, mm where no unit is said.</summary>
    public const string HeightKey = "height";

    /// <summary>Address key of how springs are set.</summary>
    public const string SpringsKey = "springs";

    /// <summary>Address key of what a longer wheelbase does to the body.</summary>
    public const string InertiaKey = "inertia";

    /// <summary>Address key of the trials that are pinned on the pass.</summary>
    public const string PinsKey = "pins";

    /// <summary>The page whose road is a long one: there the road in hand stands beside its own.</summary>
    public const string Ride = "ride";

    /// <summary>The road by this word is a random one of the reader's own density.</summary>
    public const string OwnDensity = "density";

    /// <summary>Before the letter of a random road's class.</summary>
    public const string ClassWord = "class-";

    /// <summary>Address key of the drive in hand; on the page of the report <see cref="DriveKey"/>.</summary>
    public const string LogKey = "log";

    /// <summary>Address key of a report's drives.</summary>
    public const string DriveKey = "drive";

    /// <summary>The page that tells of drives beside what the rest of its address says.</summary>
    public const string Report = "report";

    private const string OverKey = "over";
    private const string AtKey = "at";
    private const string BesideKey = "beside";

    /// <summary>Keys of what is tried on a car, in the order of an address.</summary>
    public static ImmutableArray<string> TrialKeys { get; } = [.. Settings.All(false).Select(setting => setting.Key), Luggage.Key];

    /// <summary>Nothing is tried.</summary>
    public static ImmutableSortedDictionary<string, string> NoTrial { get; } =
        ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    /// <summary>Name of the car in the garage; null where none is named.</summary>
    public string? Car { get; init; }

    /// <summary>Name of the load state; null: the first one of the car's own.</summary>
    public string? Load { get; init; }

    /// <summary>Name of the road; null: the usual one.</summary>
    public string? Road { get; init; }

    /// <summary>The random road that is ridden on; null for none.</summary>
    public string? Ground { get; init; }

    /// <summary>The speed in words; null: that which is usual on a page.</summary>
    public string? Speed { get; init; }

    /// <summary>Height of the road's obstacle in words; null: as the road says.</summary>
    public string? Height { get; init; }

    /// <summary>Name of the car that it is held against; null for none.</summary>
    public string? Beside { get; init; }

    /// <summary>The drives in hand, by their folders: one, or the one before a change and the one after it; none is none.</summary>
    public ImmutableArray<string> Drives { get; init; } = [];

    /// <summary>What is tried on the car, and how it is set, by the keys of the address, in words.</summary>
    public ImmutableSortedDictionary<string, string> Trial { get; init; } = NoTrial;

    /// <summary>The trials of this car that are pinned, in the words of the address; null for none.</summary>
    public string? Pins { get; init; }

    /// <summary>How many settings of the car are tried.</summary>
    public int Tried => Trial.Keys.Count(key => TrialKeys.Contains(key));

    /// <summary>What an address says.</summary>
    /// <param name="query">Its query, with or without the question mark.</param>
    public static CurrentCar Of(string query)
    {
        var said = QueryHelpers.ParseQuery(query);
        string? Text(string key) => said.TryGetValue(key, out var words) && words.LastOrDefault(w => w is { Length: > 0 }) is { } text ? text : null;
        string[] All(string key) => [.. said.TryGetValue(key, out var names) ? names.OfType<string>().Where(name => name.Length > 0) : []];
        var cars = All("car");
        var road = Text("road");
        var trial = TrialKeys.Append(SpringsKey).Append(InertiaKey).Select(key => (Key: key, Words: Text(key))).Where(one => one.Words is not null)
            .ToImmutableSortedDictionary(one => one.Key, one => one.Words!, StringComparer.Ordinal);
        return new CurrentCar
        {
            Car = cars.FirstOrDefault(),
            Load = Text("load"),
            Road = road is null || IsRandom(road) ? Text(OverKey) : road,
            Ground = road is not null && IsRandom(road) ? road : null,
            Speed = Text(SpeedKey) ?? Text(AtKey),
            Height = Text(HeightKey),
            Beside = Text(BesideKey) ?? cars.ElementAtOrDefault(1),
            Pins = Text(PinsKey),
            Drives = All(DriveKey) is { Length: > 0 } drives ? [.. drives] : Text(LogKey) is { } log ? [log] : [],
            Trial = trial.IsEmpty ? NoTrial : trial,
        };
    }

    /// <summary>Whether a road is a random one, on which a car rides, but passes no bump.</summary>
    /// <param name="road">Its word in an address.</param>
    public static bool IsRandom(string road) => road == OwnDensity || road.StartsWith(ClassWord, StringComparison.Ordinal);

    /// <summary>
    /// The same with the drives that an address says, as far as they are here. A page other than that of the report says one of two alone: the other
    /// stays in hand beside it.
    /// </summary>
    /// <param name="said">The drives of the address.</param>
    /// <param name="page">The page.</param>
    /// <param name="known">Those of the garage.</param>
    public CurrentCar With(ImmutableArray<string> said, string page, IReadOnlyCollection<string> known)
    {
        var next = page == Report ? said
            : said is [] || (said is [var one] && Drives is [_, var after] && after == one) ? Drives
            : said;
        return this with { Drives = [.. next.Where(known.Contains)] };
    }

    /// <summary>Another car in hand: it brings its own loads and settings, and what is about the drive stays. The same car stays as it is.</summary>
    /// <param name="name">Its name in the garage.</param>
    public CurrentCar For(string name) => name == Car ? this : AsDescribed() with { Car = name, Load = null, Beside = null, Pins = null };

    /// <summary>The car as its file describes it: nothing is tried.</summary>
    public CurrentCar AsDescribed() => this with { Trial = Trial.RemoveRange(TrialKeys) };

    /// <summary>The address of a page with all this, from the base of the pages.</summary>
    /// <param name="page">The page; blank for the garage.</param>
    /// <param name="isBump">Whether the road has a single bump, so that nobody rides on it for long.</param>
    public string On(string page, bool isBump = true) =>
        page + PageAddress.Query(Words(page, isBump).Where(pair => pair.Word is { Length: > 0 }));

    /// <summary>The keys and words of a page's address that say all this; null or blank for what is not said.</summary>
    /// <param name="page">The page.</param>
    /// <param name="isBump">Whether the road has a single bump.</param>
    public IEnumerable<(string Key, string? Word)> Words(string page, bool isBump) =>
    [
        ("car", Car),
        ("load", Load),
        ("road", page == Ride && isBump ? Ground : Road),
        (OverKey, page == Ride && isBump ? Road : null),
        (SpeedKey, page == Ride ? null : Speed),
        (AtKey, page == Ride ? Speed : null),
        (BesideKey, Beside),
        (HeightKey, Height),
        (PinsKey, Pins),
        .. page == Report ? Drives.Select(name => (DriveKey, (string?)name)) : [(LogKey, Drives.LastOrDefault())],
        .. Trial.Select(one => (one.Key, (string?)one.Value)),
    ];
}
