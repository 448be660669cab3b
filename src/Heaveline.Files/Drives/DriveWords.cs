using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Files.Drives;

/// <summary>The words for a drive in the garage.</summary>
internal static class DriveWords
{
    /// <summary>What the drive is called.</summary>
    public static readonly Key<string> Name = Key.Required("drive", "What the drive is called.", Kind.Text(), "Larch Lane, before");

    /// <summary>The car.</summary>
    public static readonly Key<string> Car = Key.Optional(
        "car", "The car file or variant that was driven, relative to this file.", Kind.Text(), "../../fern-saloon.yaml");

    /// <summary>Its load.</summary>
    public static readonly Key<string> Load = Key.Optional(
        "load", "Name of the load in the car file that it was driven with; as described there when left out.", Kind.Text(), "holiday");

    /// <summary>The wheelbase.</summary>
    public static readonly Key<Amount<Length>> Wheelbase = Key.Optional(
        "wheelbase", "Wheelbase of a car without a file.", Kind.Amount<Length>("m"), "2.70 m")
        .Usually("1 m", "7 m");

    /// <summary>The drive before the change.</summary>
    public static readonly Key<string> After = Key.Optional(
        "after", "Name of the folder, beside this one, of the drive before the change.", Kind.Text(), "larch-lane-before");

    /// <summary>What was the same in both drives.</summary>
    public static readonly Key<IReadOnlyList<string>> Same = Key.Optional(
        "same",
        "What was the same as in the drive before the change: each that differs can do what the change is said to have done.",
        Kind.List(Kind.Choice([.. ProveAsked.Circumstances.Select(word => (word, word))]), atLeast: 0),
        "[load, pressures]");

    /// <summary>Sites and instants of their bumps.</summary>
    public static readonly Key<IReadOnlyList<KeyValuePair<string, IReadOnlyList<Amount<Time>>>>> Sites = Key.Optional(
        "sites",
        "Bumps of the road by names of your own, each with the instants of the log at which it was driven.",
        Kind.Named(Kind.List(Kind.Amount<Time>())),
        "{chapel hump: [84 s, 141 s]}");

    /// <summary>Bumps that do not count.</summary>
    public static readonly Key<IReadOnlyList<Amount<Time>>> Rejected = Key.Optional(
        "rejected", "Instants of the log about which a bump is not to count.", Kind.List(Kind.Amount<Time>(), atLeast: 0), "[201.5 s]");

    /// <summary>Bumps that were not found.</summary>
    public static readonly Key<IReadOnlyList<Amount<Time>>> Added = Key.Optional(
        "added", "Instants of the log about which a bump is that was not found.", Kind.List(Kind.Amount<Time>(), atLeast: 0), "[95 s]");

    /// <summary>Decisions of the reading that are taken otherwise.</summary>
    public static readonly Key<IReadOnlyList<KeyValuePair<string, string>>> Take = Key.Optional(
        "take",
        "Decisions of the reading that are taken otherwise, each under what it is about, as the story of the reading says.",
        Kind.Named(Kind.Text()),
        "{acceleration: mg, lag: 0.8 s}");

    private static readonly Key<string> Note = Key.Optional(
        "note", "Where and when, the weather, what was odd.", Kind.Lines(), "Dry, 12 °C, damper oil warm.");

    private static readonly Key<string> Change = Key.Optional(
        "change", "What was changed since that drive.", Kind.Text(), "rear springs 4 N/mm stiffer");

    private static readonly Key<Amount<Length>> Behind = Key.Required(
        "behind-front-axle", "Its middle behind the front axle; ahead of it is negative.", Kind.Amount<Length>("m"), "1.45 m ± 5 cm")
        .Usually(Metres(PhonePlace.UsualBehind.Low), Metres(PhonePlace.UsualBehind.High));

    private static readonly Key<Amount<Length>> Left = Key.Optional(
        "left", "Left of the car's middle; negative to the right; the middle when left out.", Kind.Amount<Length>("m"), "0.1 m")
        .Usually(Metres(PhonePlace.UsualLeft.Low), Metres(PhonePlace.UsualLeft.High));

    private static readonly Key<Amount<Length>> Up = Key.Optional(
        "up", "Above the floor; on it when left out.", Kind.Amount<Length>("m"), "0.2 m")
        .Usually(Metres(PhonePlace.UsualUp.Low), Metres(PhonePlace.UsualUp.High));

    private static readonly Key<PhoneAsWritten> Phone = Key.Optional(
        "phone",
        "Where the phone lay.",
        new Shape("phone", "Where the phone lay.", Behind, Left, Up)
            .As(f => new PhoneAsWritten(f.Required(Behind), f.Optional(Left, default), f.Optional(Up, default))));

    private static readonly Key<Amount<Pressure>> Front = Key.Optional("front", "Of the front tyres.", Kind.Amount<Pressure>(), "2.3 bar")
        .Usually("0.5 bar", "9 bar");

    private static readonly Key<Amount<Pressure>> Rear = Key.Optional("rear", "Of the rear tyres.", Kind.Amount<Pressure>(), "2.1 bar")
        .Usually("0.5 bar", "9 bar");

    private static readonly Key<Tuple<double?, double?>> Pressures = Key.Optional(
        "pressures",
        "Pressures of the tyres, above the air's.",
        new Shape("pressures", "Pressures of the tyres, cold or warm as the note says.", Front, Rear)
            .As(f => Tuple.Create(f.OptionalValue(Front)?.Si, f.OptionalValue(Rear)?.Si)));

    /// <summary>The whole file.</summary>
    public static readonly Shape<DriveSheet> Shape = new Shape(
        "drive file",
        "One drive: what was driven, and what to make of its log. The files of the log lie beside it, untouched; nothing computed is kept in it.",
        Name, Note, Car, Load, Wheelbase, Phone, Pressures, After, Change, Same, Take, Sites, Rejected, Added)
        .As(Make);

    /// <summary>Whether a document is a drive.</summary>
    public static bool IsDrive(Node root) => root.At(Name.Name) is not null;

    /// <summary>Refuses what the values of a drive's file make impossible together, whatever else is wrong with it.</summary>
    /// <param name="root">The document.</param>
    /// <param name="said">What is refused.</param>
    internal static void Check(Node root, Reader said)
    {
        if (root.At(Wheelbase.Name) is { } wheelbase)
        {
            if (root.At(Car.Name) is not null)
            {
                said.Refuse(wheelbase.Place, "wheelbase is given beside car, whose file says it.", "Leave it out, or leave out the car.");
            }
            else if (Kind.Amount<Length>().TryRead(wheelbase, new Reader(said.Source), out var length)
                && EventSettings.Refusal(length.Si) is { } refusal)
            {
                said.Refuse(wheelbase.Place, $"wheelbase is {wheelbase.Text}: {refusal}", "Measure from axle to axle.");
            }
        }

        foreach (var key in (Key[])[Behind, Left, Up])
        {
            if (root.At(Phone.Name, key.Name) is { } place && Kind.Amount<Length>().TryRead(place, new Reader(said.Source), out var distance)
                && PhonePlace.Refusal(distance) is { } refusal)
            {
                said.Refuse(place.Place, $"{place.Path} is {place.Text}: {refusal}", "Measure in the car, with a unit: 1.45 m ± 5 cm.");
            }
        }

        if (root.At(Load.Name) is { } load && root.At(Car.Name) is null)
        {
            said.Refuse(load.Place, "load is given without car.", "Name the car file that has the load, or say it in the note.");
        }

        var rejected = Instants(root.At(Rejected.Name), said).Select(i => i.At).ToHashSet();
        foreach (var (place, at) in Instants(root.At(Added.Name), said).Where(i => rejected.Contains(i.At)))
        {
            said.Refuse(
                place,
                FormattableString.Invariant($"{at:0.###} s is added and rejected."),
                "Leave it out of one of them: a bump counts or it does not.");
        }

        var named = new Dictionary<double, string>();
        foreach (var site in root.At(Sites.Name)?.Entries ?? [])
        {
            foreach (var (place, at) in Instants(site.Value, said))
            {
                if (!named.TryAdd(at, site.Key))
                {
                    said.Refuse(
                        place,
                        FormattableString.Invariant($"the bump at {at:0.###} s is named twice, ")
                            + (named[at] == site.Key ? $"both times {site.Key}." : $"{named[at]} and {site.Key}."),
                        "Leave one of them out: a bump belongs to one site.");
                }
            }
        }

        foreach (var entry in root.At(Take.Name)?.Entries ?? [])
        {
            if (entry.Value is { Kind: NodeKind.Scalar, IsEmpty: false } words && Overruling.Of($"{entry.Key}: {words.Text}", out var whyNot) is null)
            {
                said.Refuse(
                    words.Place,
                    $"take is not understood: {whyNot}",
                    "Write what the decision is about, a colon and what is taken, or leave it out.");
            }
        }
    }

    /// <summary>Where each instant stands: its line.</summary>
    internal static IEnumerable<(double At, int Line)> InstantsIn(Node root, SourceText source)
    {
        var quiet = new Reader(source);
        return ((IEnumerable<Node?>)[root.At(Rejected.Name), root.At(Added.Name), .. root.At(Sites.Name)?.Entries.Select(e => e.Value) ?? []])
            .SelectMany(list => Instants(list, quiet)).Select(i => (i.At, i.Place.Line));
    }

    private static string Metres(double value) => FormattableString.Invariant($"{value:0.##} m");

    // Those that can be read; the others are refused with their key.
    private static IEnumerable<(Place Place, double At)> Instants(Node? list, Reader said) => (list?.Items ?? [])
        .Select(item => (item.Place, Amount: Kind.Amount<Time>().TryRead(item, new Reader(said.Source), out var at) ? at : (Amount<Time>?)null))
        .Where(i => i.Amount is not null).Select(i => (i.Place, i.Amount!.Value.Si));

    private static DriveSheet Make(Fields f)
    {
        var pressures = f.Optional(Pressures);
        return new DriveSheet
        {
            Name = f.Required(Name),
            Note = f.Optional(Note),
            Car = f.Optional(Car),
            Load = f.Optional(Load),
            Wheelbase = f.OptionalValue(Wheelbase)?.Si,
            Phone = f.Optional(Phone),
            FrontPressure = pressures?.Item1,
            RearPressure = pressures?.Item2,
            After = f.Optional(After),
            Change = f.Optional(Change),
            Same = [.. ProveAsked.Circumstances.Intersect(f.Optional(Same) ?? [])],
            Taken = [.. (f.Optional(Take) ?? []).Select(t => Overruling.Of($"{t.Key}: {t.Value}", out _)).OfType<Overruling>()],
            Sites = [.. (f.Optional(Sites) ?? []).SelectMany(site => site.Value.Select(at => (site.Key, at.Si)))],
            Rejected = [.. (f.Optional(Rejected) ?? []).Select(at => at.Si)],
            Added = [.. (f.Optional(Added) ?? []).Select(at => at.Si)],
        };
    }
}
