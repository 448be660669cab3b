using System.Globalization;
using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;
using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Files.Films;

/// <summary>The words for a film of a passing car.</summary>
internal static class FilmWords
{
    private static readonly Kind<(Amount<Plain> First, Amount<Plain> Second)> Point = Kind.Pair(Kind.Amount<Plain>(), Kind.Amount<Plain>());

    /// <summary>What the film is called.</summary>
    public static readonly Key<string> Name = Key.Required("film", "What the film is called.", Kind.Text(), "grey estate, second pass");

    private static readonly Key<string> Note = Key.Optional(
        "note", "Who filmed it, from where, which day, how many aboard.", Kind.Lines(), "From the kerb, phone on a post, two aboard.");

    private static readonly Key<string> Place = Key.Optional(
        "place", "Where the bump is, in the same words for every film taken there.", Kind.Text(), "school hump");

    private static readonly Key<string> Seen = Key.Optional(
        "seen", "Which car is seen, in the same words for every film of it; as the film is called when left out.", Kind.Text(), "grey estate");

    private static readonly Key<string> Video = Key.Optional("video", "The film itself, relative to this file.", Kind.Text(), "school-hump-2.mp4")
        .NotCalled("file", "movie", "clip", "source");

    private static readonly Key<string> Track = Key.Optional(
        "track", "The track that was followed in it, relative to this file; under this file's name with .csv when left out.", Kind.Text(),
        "school-hump-2.csv");

    private static readonly Key<Amount<Length>> Wheelbase = Key.Required(
        "wheelbase", "Distance between the axles: the film's ruler; good to ± 1 % when no doubt is given.", Kind.Amount<Length>("m"), "2.70 m ± 1 cm")
        .Usually("1 m", "7 m");

    private static readonly Key<Amount<Velocity>> Speed = Key.Optional(
        "speed", "Speed of the pass where it is known, by which slow motion is found out; the film's own when left out.", Kind.Amount<Velocity>(),
        "25 km/h");

    private static readonly Key<Amount<Plain>> Slower = Key.Optional(
        "played-slower", "How many times slower the film is played than it was taken; by the speed, or what the camera wrote, when left out.",
        Kind.Amount<Plain>(), "8");

    private static readonly Key<Amount<Plain>> FrontShare = Key.Optional(
        "front-share", "Share of the car's sprung mass on the front axle, from its weights; what cars have when left out.", Kind.Amount<Plain>(),
        "0.54 ± 0.02");

    private static readonly Key<Amount<Time>> At = Key.Required("at", "Time of the marked frame in the film.", Kind.Amount<Time>(), "1.35 s");

    private static readonly Key<(Amount<Plain> First, Amount<Plain> Second)> Front = Key.Required(
        "front", "Front hub in that frame, pixels to the right and down from the upper left.", Point, "[1204.5, 611]");

    private static readonly Key<(Amount<Plain> First, Amount<Plain> Second)> Rear = Key.Required(
        "rear", "Rear hub, likewise.", Point, "[1018, 613.5]");

    private static readonly Key<(Amount<Plain> First, Amount<Plain> Second)> From = Key.Required(
        "from", "Upper left corner of a box round the body's side, without the wheels.", Point, "[1010, 480]");

    private static readonly Key<(Amount<Plain> First, Amount<Plain> Second)> To = Key.Required("to", "Its lower right corner.", Point, "[1230, 585]");

    private static readonly Key<Amount<Plain>> OffBy = Key.Optional(
        "off-by", "How far a hub's mark may be off, pixels; 2 when left out.", Kind.Amount<Plain>(), "2");

    private static readonly Key<FilmMarks> Marks = Key.Optional(
        "marks",
        "What was marked on one frame; needed to follow the film, not to read its kept track.",
        new Shape("marks", "Both hubs and a box round the body's side on one frame.", At, Front, Rear, From, To, OffBy).As(Make));

    /// <summary>The whole file.</summary>
    public static readonly Shape<FilmSheet> Shape = new Shape(
        "film file",
        "One film of a car that passes a bump, from the roadside: which car, where, its wheelbase, the marks. Its track is kept beside it by "
            + "--track or by the page, so that nothing need be followed twice; nothing else that is computed is kept.",
        Name, Note, Place, Seen, Video, Track, Wheelbase, Speed, Slower, FrontShare, Marks)
        .As(MakeSheet);

    /// <summary>Whether a document is of a film.</summary>
    public static bool IsFilm(Node root) => root.At(Name.Name) is not null;

    /// <summary>The edit by which a film has these marks, to a tenth of a pixel and of a millisecond.</summary>
    public static KeyEdit Marking(FilmMarks marks)
    {
        Node Point(PicturePoint p) => Node.List([Node.Scalar(Digits(p.X, "0.#")), Node.Scalar(Digits(p.Y, "0.#"))]);
        List<KeyValuePair<string, Node>> group =
        [
            new(At.Name, Node.Scalar(Digits(marks.Time, "0.####") + " s")), new(Front.Name, Point(marks.Front)), new(Rear.Name, Point(marks.Rear)),
            new(From.Name, Point(marks.BoxFrom)), new(To.Name, Point(marks.BoxTo)),
        ];
        if (marks.Doubt != 2.0)
        {
            group.Add(new(OffBy.Name, Node.Scalar(Digits(marks.Doubt, "0.###"))));
        }

        return KeyEdit.Put([Marks.Name], Node.Group(group));
    }

    private static string Digits(double value, string form) => value.ToString(form, CultureInfo.InvariantCulture);

    private static FilmSheet? MakeSheet(Fields f)
    {
        var (length, slower, share) = (f.Required(Wheelbase), f.OptionalValue(Slower), f.OptionalValue(FrontShare));
        // The record refuses what no car has; the reader says where it stands.
        var sheet = new FilmSheet
        {
            Name = f.Required(Name),
            Place = f.Optional(Place) ?? "",
            Seen = f.Optional(Seen)!,
            Video = f.Optional(Video),
            Track = f.Optional(Track),
            Wheelbase = length,
            Speed = f.OptionalValue(Speed),
            Slowness = slower?.Si,
            FrontShare = share,
            Marks = f.Optional(Marks),
        };
        return Tried(f, Wheelbase, () => new FilmGiven { Wheelbase = length })
            && Tried(f, Speed, () => new FilmGiven { Wheelbase = new(2.7), Speed = f.OptionalValue(Speed) })
            && Tried(f, Slower, () => new FilmGiven { Wheelbase = new(2.7), Slowness = slower?.Si })
            && Tried(f, FrontShare, () => new FilmGiven { Wheelbase = new(2.7), FrontShare = share })
            ? sheet
            : null;
    }

    private static FilmMarks? Make(Fields f)
    {
        PicturePoint At2((Amount<Plain> First, Amount<Plain> Second) p) => new(p.First.Si, p.Second.Si);
        var (front, rear, from, to) = (At2(f.Required(Front)), At2(f.Required(Rear)), At2(f.Required(From)), At2(f.Required(To)));
        if (Math.Abs(front.X - rear.X) < FilmMarks.ShortestWheelbase)
        {
            f.Refuse(
                Front, $"lies less than {FilmMarks.ShortestWheelbase:F0} pixels beside the rear hub.",
                "Mark the middle of each wheel in a frame that shows the car from the side.");
            return null;
        }

        if (!(to.X > from.X && to.Y > from.Y))
        {
            f.Refuse(To, "does not lie below and to the right of the box's other corner.", "Give the upper left corner, then the lower right one.");
            return null;
        }

        if (new[] { front, rear, from, to }.Any(p => p.X < 0.0 || p.Y < 0.0))
        {
            f.Refuse("has a mark outside the picture.", "Count pixels from the upper left corner.");
            return null;
        }

        var time = f.Required(At).Si;
        var doubt = f.OptionalValue(OffBy)?.Si ?? 2.0;
        return Tried(f, At, () => new FilmMarks { Time = time, Front = front, Rear = rear, BoxFrom = from, BoxTo = to })
            && Tried(f, OffBy, () => new FilmMarks { Time = 0.0, Front = front, Rear = rear, BoxFrom = from, BoxTo = to, Doubt = doubt })
            ? new FilmMarks { Time = time, Front = front, Rear = rear, BoxFrom = from, BoxTo = to, Doubt = doubt }
            : null;
    }

    private static bool Tried(Fields f, Key key, Func<object> make)
    {
        try
        {
            _ = make();
            return true;
        }
        catch (RefusedValueException refused)
        {
            f.Refuse(key, ValueLimit.Of(refused), refused.Advice);
            return false;
        }
    }
}
