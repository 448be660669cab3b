using System.Collections.Immutable;
using Heaveline.Drives;
using Heaveline.Drives.Events;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>A drive that a command was given with what was written down about it: that holds where no option says otherwise.</summary>
/// <param name="Drive">The drive.</param>
internal sealed record DescribedDrive(RecordedDrive Drive)
{
    /// <summary>The drive among the names of a log; null where they are a log alone. Its file is objected to where it is refused.</summary>
    /// <param name="reader">What was given.</param>
    /// <param name="logs">The choice of the log's files.</param>
    public static DescribedDrive? Of(AskedReader reader, Choice logs)
    {
        var names = reader.Given.All(logs);
        if (names.FirstOrDefault(reader.IsDescribed) is not { } described)
        {
            return null;
        }

        if (names.Count > 1)
        {
            reader.Object(
                logs.Name, $"{logs.Name}: {described} is a drive with a drive.yaml; give it alone, or name the files of the log, not their folder.");
            return null;
        }

        return reader.Drives(logs) is [var drive] ? new DescribedDrive(drive) : null;
    }

    /// <summary>Decisions of the reading: those given, and those written down of whose kind none is given.</summary>
    /// <param name="drive">The drive; null: a log alone.</param>
    /// <param name="given">Those given.</param>
    public static IReadOnlyList<Overruling> Taken(DescribedDrive? drive, IReadOnlyList<Overruling> given) =>
        [.. given, .. drive is null ? [] : drive.Drive.Taken.Where(own => !given.Any(own.IsOfOneKind))];

    /// <summary>The car: that of the option, else the one written down, under the load of the option where there is one.</summary>
    /// <param name="reader">What was given.</param>
    /// <param name="drive">The drive; null: a log alone.</param>
    public static LoadedCar? CarOf(AskedReader reader, DescribedDrive? drive) =>
        reader.Given.Of(DriveChoices.Car) is not null ? reader.Car(DriveChoices.Car, DriveChoices.Load)
        : drive?.Drive.Car is not { } own || reader.Given.Of(DriveChoices.Load) is null ? drive?.Drive.Car
        : reader.Load(DriveChoices.Load, own.Car) is { } load ? own with { Load = load } : null;

    /// <summary>What is known: what options gave, and what was written down where they gave nothing.</summary>
    /// <param name="drive">The drive; null: a log alone.</param>
    /// <param name="given">What options gave.</param>
    public static EventSettings Settings(DescribedDrive? drive, EventSettings given) => drive is not { Drive.Settings: var own } ? given : given with
    {
        Wheelbase = given.Wheelbase ?? own.Wheelbase,
        Phone = given.Phone ?? own.Phone,
        Sites = given.Sites.IsEmpty ? own.Sites : given.Sites,
        Rejected = given.Rejected.IsEmpty ? own.Rejected : given.Rejected,
        Added = given.Added.IsEmpty ? own.Added : given.Added,
        // Instants that options give are nowhere in it.
        Written = own.Written.RemoveRange(given.Sites.Select(s => s.At).Concat(given.Rejected).Concat(given.Added)),
    };

    /// <summary>What of it holds, and which options stand instead of it, a sentence; blank for a log alone.</summary>
    /// <param name="drive">The drive; null: a log alone.</param>
    /// <param name="words">What was given.</param>
    /// <param name="given">What options gave of this drive.</param>
    /// <param name="taken">Decisions of the reading that options gave.</param>
    /// <param name="events">Its bumps: instants at which none is do not count; null where there are none to be had.</param>
    /// <param name="isAfter">Whether it is held against the drive before, so that it counts what was the same in both.</param>
    public static string Said(
        DescribedDrive? drive, Given words, EventSettings given, IReadOnlyList<Overruling> taken, DriveEvents? events, bool isAfter = false)
    {
        if (drive is not { Drive: var own })
        {
            return "";
        }

        bool Has(Choice choice) => words.Of(choice) is not null;
        var (car, settings) = (own.Car, events is null ? own.Settings : Met(own.Settings, events.Unmet));
        // What there is, in words; the options, any of which stands instead of it.
        (string What, Choice[] Instead)[] all =
        [
            (car is null ? "" : $"car {car.Name}", [DriveChoices.Car]),
            (car is null ? "" : $"load {car.Load.Name}", [DriveChoices.Car, DriveChoices.Load]),
            (car is null && settings.Wheelbase is { } metres ? Text($"wheelbase {metres:F3} m") : "", [DriveChoices.Car, DriveChoices.Wheelbase]),
            (settings.Phone is { } phone ? "phone " + Place(phone) : "", [DriveChoices.Phone]),
            (Sites(settings), given.Sites.IsEmpty ? [] : [DriveChoices.Site]),
            (Bumps(settings.Rejected, "left out"), [DriveChoices.Reject]),
            (Bumps(settings.Added, "added"), [DriveChoices.Added]),
            (own.Same.IsEmpty || !isAfter ? "" : "the same as before: " + string.Join(", ", own.Same), []),
            .. own.Taken.Select(o => ($"{o.About} taken otherwise", taken.Any(o.IsOfOneKind) ? new[] { DriveStudy.Take } : [])),
        ];
        string[] holds = [.. all.Where(a => a.What.Length > 0 && !a.Instead.Any(Has)).Select(a => a.What)];
        string[] instead =
        [
            .. all.Where(a => a.What.Length > 0).SelectMany(a => a.Instead.Where(Has)).Select(choice => choice.Name)
                .Concat(car is not null && Has(DriveChoices.Wheelbase) ? [DriveChoices.Wheelbase.Name] : []).Distinct().Select(name => $"--{name}"),
        ];
        return (holds.Length > 0 ? $"As drive.yaml of {own.Name} says: {string.Join("; ", holds)}." : $"Of drive.yaml of {own.Name} nothing is used.")
            + (instead.Length > 0 ? $" Instead of what it says: {string.Join(", ", instead)}." : "");
    }

    // What is told beside it to be heeded nowhere is not counted.
    private static EventSettings Met(EventSettings settings, UnmetInstants unmet) => settings with
    {
        Sites = [.. settings.Sites.Where(s => !unmet.Sites.Contains(s))],
        Rejected = [.. settings.Rejected.Where(at => !unmet.Rejected.Contains(at))],
        Added = [.. settings.Added.Where(at => !unmet.Added.Contains(at))],
    };

    /// <summary>Where a phone lay, in words; nothing of a direction in which it lay in the middle or on the floor.</summary>
    /// <param name="phone">Its place.</param>
    internal static string Place(PhonePlace phone) =>
        Text($"{Math.Abs(phone.BehindFrontAxle):F2} m {(phone.BehindFrontAxle < 0.0 ? "ahead of" : "behind")} the front axle")
        + (phone.Left == 0.0 ? "" : Text($", {Math.Abs(phone.Left):F2} m {(phone.Left < 0.0 ? "right" : "left")} of the middle"))
        + (phone.Up == 0.0 ? "" : Text($", {phone.Up:F2} m above the floor"));

    private static string Sites(EventSettings settings)
    {
        string[] names = [.. settings.Sites.Select(s => s.Site).Distinct()];
        return names.Length == 0 ? "" : $"{(names.Length == 1 ? "site" : "sites")} {string.Join(", ", names)}";
    }

    private static string Bumps(ImmutableArray<double> instants, string how) =>
        instants.IsEmpty ? "" : Text($"{instants.Length} {(instants.Length == 1 ? "bump" : "bumps")} {how}");
}
