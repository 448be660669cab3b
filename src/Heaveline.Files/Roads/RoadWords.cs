using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Files.Roads;

/// <summary>The words for a road.</summary>
internal static class RoadWords
{
    private static readonly Key<string> Name = Key.Required("road", "What the road is called.", Kind.Text(), "village hump", property: "Name");
    private static readonly Key<string> Note = Key.Optional("note", "Where it is, how it was measured.", Kind.Lines(), "In front of the school.");
    private static readonly Key<Tracks> OnTracks = Key.Optional(
        "tracks",
        "Which wheels meet the obstacle; both when left out.",
        Kind.Choice(("both", Tracks.Both), ("left", Tracks.Left), ("right", Tracks.Right)),
        "both");

    private static readonly Key<Amount<Length>> Amplitude = Key.Required(
        "amplitude", "Half the height from trough to crest.", Kind.Amount<Length>(), "15 mm");
    private static readonly Key<Amount<Length>> Wavelength = Key.Required("wavelength", "From crest to crest.", Kind.Amount<Length>(), "8 m");
    private static readonly Key<Amount<Plain>> Waves = Key.Required("waves", "How many waves at full amplitude.", Kind.Amount<Plain>(), "10");
    private static readonly Key<bool> LeadIn = Key.Optional(
        "lead-in", "Whether one more wave lets the amplitude grow first; true when left out.", Kind.YesNo(), "true");
    private static readonly Key<Amount<Angle>> RightLag = Key.Optional(
        "right-lag", "How far the right track's wave lies behind the left one's; 180 deg rolls the car.", Kind.Amount<Angle>(), "180 deg");

    private static readonly Shape<SineRoad> SineShape = new Shape("sine", "Waves of one length.", Amplitude, Wavelength, Waves, LeadIn, RightLag)
        .As(f => new SineRoad
        {
            Amplitude = f.Required(Amplitude),
            Wavelength = f.Required(Wavelength),
            Waves = f.Required(Waves).Si,
            LeadIn = f.OptionalValue(LeadIn) ?? true,
            RightLag = f.Optional(RightLag, default),
        });

    /// <summary>File of a measured profile.</summary>
    public static readonly Key<string> Profile = Key.Optional(
        "profile",
        "File of measured heights, relative to this file: a first line such as distance [m], left [mm], right [mm], then one point a line.",
        Kind.Text(),
        "lane.csv");

    private static readonly Key<Amount<Length>> From = Key.Required(
        "from", "Where it begins, from the first point on.", Kind.Amount<Length>(), "5 m");
    private static readonly Key<Amount<Length>> To = Key.Required("to", "Where it ends, from the first point on.", Kind.Amount<Length>(), "8.7 m");
    private static readonly Shape<MeasuredObstacle> ObstacleShape = new Shape("obstacle", "Where the obstacle of a measured road lies.", From, To)
        .As(f => new MeasuredObstacle(f.Required(From).Si, f.Required(To).Si));

    /// <summary>Where the obstacle of a measured road lies.</summary>
    public static readonly Key<MeasuredObstacle> Obstacle = Key.Optional(
        "obstacle", "Where on a measured profile one obstacle begins and ends, so that hit and settling are told apart.", ObstacleShape);

    private static readonly Key<SineRoad> Sine = Key.Optional("sine", "Waves.", SineShape);

    /// <summary>Names of the keys of what is drawn from its sizes, one of which a file has: the obstacles, and waves.</summary>
    public static IReadOnlyList<string> Drawn => [.. ObstacleWords.All.Select(key => key.Name), Sine.Name];

    /// <summary>The whole file.</summary>
    public static readonly Shape<RoadAsWritten> Shape = new Shape(
        "road file", "One road: an obstacle, waves or a measured profile.", [Name, Note, .. ObstacleWords.All, Sine, Profile, Obstacle, OnTracks])
        .WithOneOf([.. ObstacleWords.All, Sine, Profile])
        .As(Make);

    private static RoadAsWritten? Make(Fields f)
    {
        var name = f.Required(Name);
        if (ObstacleWords.All.FirstOrDefault(f.Has) is { } key)
        {
            try
            {
                var road = Road.From(f.Required(key), f.Optional(OnTracks, Tracks.Both));
                return Whole(new RoadAsWritten(name, road with { Name = name }, null, null));
            }
            catch (RefusedValueException refused)
            {
                // Sizes that do not fit one another show when the obstacle is drawn.
                f.Refuse(key, $"does not fit together: {refused.What} is {refused.Value}; it must be {refused.Limit}.", refused.Advice);
                return null;
            }
        }

        if (f.Has(OnTracks))
        {
            f.Refuse(OnTracks, "belongs to an obstacle.", "Leave it out: waves and measured roads say what each track does.");
            return null;
        }

        if (f.Optional(Sine) is not { } sine)
        {
            return new RoadAsWritten(name, null, f.Required(Profile), f.Optional(Obstacle));
        }

        try
        {
            return Whole(new RoadAsWritten(name, Road.From(sine) with { Name = name }, null, null));
        }
        catch (RefusedValueException refused)
        {
            f.Refuse(Sine, $"does not fit together: {refused.What} is {refused.Value}; it must be {refused.Limit}.", refused.Advice);
            return null;
        }

        RoadAsWritten? Whole(RoadAsWritten road)
        {
            if (!f.Has(Obstacle))
            {
                return road;
            }

            f.Refuse(Obstacle, "belongs to a measured profile.", "Leave it out: a road that is drawn says itself where its obstacle lies.");
            return null;
        }
    }
}
