using System.Collections.Immutable;
using Heaveline.Drives.Events;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>
/// What can be said of a drive beside its log: the wheelbase or the car, the phone's place, sites by name, bumps added and rejected.
/// </summary>
public static class DriveChoices
{
    /// <summary>The wheelbase.</summary>
    public static Choice Wheelbase { get; } = new()
    {
        Name = "wheelbase",
        Kind = ChoiceKind.Quantity,
        Says = "Wheelbase of the car that was driven. Without it, and without --car: 2.6 m, said with the answer.",
        HelpName = "LENGTH",
    };

    /// <summary>The car that was driven.</summary>
    public static Choice Car { get; } = Choices.Car with
    {
        Says = "The car that was driven, a car file or a variant: it gives the wheelbase and the seats.",
        IsArgument = false,
        HelpName = "CAR",
    };

    /// <summary>Its load.</summary>
    public static Choice Load { get; } = Choices.Load;

    /// <summary>Where the phone lay.</summary>
    public static Choice Phone { get; } = new()
    {
        Name = "phone",
        Kind = ChoiceKind.Quantity,
        Says = "Where the phone lay, as \"1.45 m behind front axle, 0.1 m left, 0.2 m up\".",
        HelpName = "PLACE",
    };

    /// <summary>The seat that heave is wanted at.</summary>
    public static Choice Seat { get; } = new()
    {
        Name = "seat",
        Kind = ChoiceKind.Seat,
        Says = "Give heave at this seat of --car instead of at the phone; needs --phone.",
        HelpName = "NAME",
    };

    /// <summary>Names of sites.</summary>
    public static Choice Site { get; } = new()
    {
        Name = "site",
        Kind = ChoiceKind.Word,
        Says = "Name a site by bumps of it, as \"chapel: 84 s, 141 s\"; one name joins sites, several part one. May be given more than once.",
        HelpName = "SITE",
        IsRepeated = true,
    };

    /// <summary>Bumps that do not count.</summary>
    public static Choice Reject { get; } = new()
    {
        Name = "reject",
        Kind = ChoiceKind.Quantity,
        Says = "Bumps that are not to count, by their instants with commas between (\"84 s, 141 s\").",
        HelpName = "TIMES",
    };

    /// <summary>Bumps that were not found.</summary>
    public static Choice Added { get; } = new()
    {
        Name = "add",
        Kind = ChoiceKind.Quantity,
        Says = "Bumps that were not found: when the front wheels met them, to some tenths of a second, with commas between.",
        HelpName = "TIMES",
    };

    /// <summary>The site whose road is recovered.</summary>
    public static Choice Road { get; } = new()
    {
        Name = "road",
        Kind = ChoiceKind.Word,
        Says = "Recover the road of this site: the shape of its bump, and the roughness about it, as far as the car felt them.",
        HelpName = "SITE",
    };

    /// <summary>Whether the car file is scaled to the drive.</summary>
    public static Choice Twin { get; } = new()
    {
        Name = "twin",
        Kind = ChoiceKind.Tick,
        Says = "Scale springs, dampers and pitch inertia of --car until its own passes give what the drive gave; takes some seconds.",
    };

    /// <summary>Whether the roughness along the drive is told.</summary>
    public static Choice Roughness { get; } = new()
    {
        Name = "roughness",
        Kind = ChoiceKind.Tick,
        Says = "Tell how rough the road is along the drive, between its bumps, a stretch of 100 m at a time, as the car of the drive felt it.",
    };

    /// <summary>All of them, in the order of a help.</summary>
    public static IReadOnlyList<Choice> All { get; } = [Wheelbase, Car, Load, Phone, Seat, Site, Reject, Added, Road, Twin, Roughness];

    /// <summary>Reads what is known of a drive; objections go to the reader.</summary>
    /// <param name="reader">The reader.</param>
    /// <param name="drive">What was written down about the drive; null: nothing.</param>
    /// <returns>The car, and what the options alone say: what was written down is not in it.</returns>
    internal static (LoadedCar? Car, EventSettings Given) Read(AskedReader reader, DescribedDrive? drive)
    {
        var car = DescribedDrive.CarOf(reader, drive);
        var wheelbase = reader.Given.Of(Wheelbase) is null ? car?.Car.Wheelbase.Si : WheelbaseOf(reader, Wheelbase);
        if (reader.Given.Of(Load) is not null && reader.Given.Of(Car) is null && drive?.Drive.Car is null)
        {
            reader.Object(Load.Name, "load: give --car too, the car that is loaded so.");
        }

        var phone = reader.Text(Phone) is { } place ? PhoneOf(reader, place) : null;
        var seat = car is null ? null : reader.Seat(Seat, car.Car);
        var isNoSeat = car is not null && seat is null;
        if (!isNoSeat && reader.Given.Of(Seat) is not null
            && (car is null || (reader.Given.Of(Phone) is null && drive?.Drive.Settings.Phone is null)))
        {
            reader.Object(Seat.Name, "seat: give --car, which has the seats, and --phone, where the phone lay.");
        }

        (string Site, double At)[] sites = [.. reader.Texts(Site).SelectMany(words => SiteOf(reader, words))];
        foreach (var twice in sites.GroupBy(s => s.At).Where(g => g.Select(s => s.Site).Distinct().Count() > 1))
        {
            reader.Object(Site.Name, FormattableString.Invariant($"site: the bump at {twice.Key:0.0#} s is in ")
                + string.Join(" and in ", twice.Select(s => s.Site).Distinct()) + "; name it once.");
        }

        return (car, new EventSettings
        {
            Wheelbase = wheelbase,
            Phone = phone,
            Seat = seat?.Name,
            SeatBehindFrontAxle = seat?.BehindFrontAxle.Si,
            Sites = [.. sites],
            Rejected = [.. Times(reader, Reject, reader.Text(Reject))],
            Added = [.. Times(reader, Added, reader.Text(Added))],
        });
    }

    /// <summary>The wheelbase that was given; null where it was objected to.</summary>
    /// <param name="reader">The reader, to which objections go.</param>
    /// <param name="choice">The choice.</param>
    internal static double? WheelbaseOf(AskedReader reader, Choice choice)
    {
        if (reader.Amount<Length>(choice, "2.70 m") is not { Si: var given })
        {
            return null;
        }

        if (EventSettings.Refusal(given) is not { } refusal)
        {
            return given;
        }

        reader.Object(choice.Name, $"{choice.Name} '{reader.Given.Of(choice)}': {refusal}");
        return null;
    }

    /// <summary>The phone's place in words; null where they are none.</summary>
    /// <param name="reader">The reader, to which objections go.</param>
    /// <param name="words">The words.</param>
    internal static PhonePlace? PhoneOf(AskedReader reader, string words)
    {
        Amount<Length>? behind = null;
        var (left, up) = (0.0, 0.0);
        var ways = new HashSet<string>();
        foreach (var part in CommaList.Of(words))
        {
            // The quantity is what stands before the direction.
            (string Word, string Way, Action<Amount<Length>> Takes)[] known =
            [
                ("behind", "along", a => behind = a),
                ("left", "across", a => left = a.Si), ("right", "across", a => left = -a.Si),
                ("up", "upright", a => up = a.Si), ("above", "upright", a => up = a.Si),
            ];
            var (word, way, takes) = known.FirstOrDefault(w => part.Contains($" {w.Word}", StringComparison.Ordinal));
            if (word is null)
            {
                reader.Object(Phone.Name, $"phone: '{part}' says no direction; write it as 1.45 m behind front axle, 0.1 m left, 0.2 m up.");
                return null;
            }

            if (!ways.Add(way))
            {
                reader.Object(Phone.Name, $"phone: '{part}' says a second time where it lay {way}; give one place.");
                return null;
            }

            if (reader.Amount<Length>(Phone, part[..part.IndexOf($" {word}", StringComparison.Ordinal)], "1.45 m") is not { } amount)
            {
                return null;
            }

            if (PhonePlace.Refusal(amount) is { } refusal)
            {
                reader.Object(Phone.Name, $"phone: '{part}': {refusal}");
                return null;
            }

            takes(amount);
        }

        if (behind is not { } along)
        {
            reader.Object(Phone.Name, "phone: say how far behind the front axle it lay, as 1.45 m behind front axle.");
            return null;
        }

        return PhonePlace.From(along, left, up);
    }

    private static IEnumerable<(string Site, double At)> SiteOf(AskedReader reader, string words)
    {
        var colon = words.IndexOf(':', StringComparison.Ordinal);
        var name = colon < 0 ? "" : words[..colon].Trim();
        if (name.Length == 0)
        {
            reader.Object(Site.Name, $"site '{words}': write the name, a colon and instants, as chapel: 84 s, 141 s.");
            return [];
        }

        return [.. Times(reader, Site, words[(colon + 1)..]).Select(t => (name, t))];
    }

    private static ImmutableArray<double> Times(AskedReader reader, Choice choice, string? words) => words is null
        ? []
        : [.. CommaList.Of(words).Select(word => reader.Amount<Time>(choice, word, "84 s")?.Si).OfType<double>()];
}
