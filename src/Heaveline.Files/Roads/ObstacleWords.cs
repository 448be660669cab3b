using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Files.Roads;

/// <summary>The words for the sizes of obstacles.</summary>
internal static class ObstacleWords
{
    private static readonly Key<Amount<Length>> Top = Key.Required("height", "Height of the top above the road.", Kind.Amount<Length>(), "75 mm");
    private static readonly Key<Amount<Length>> Rise = Key.Required("height", "Rise of the road, negative for down.", Kind.Amount<Length>(), "60 mm");
    private static readonly Key<Amount<Length>> Depth = Key.Required(
        "depth", "Depth below the road, as a positive number.", Kind.Amount<Length>(), "50 mm");
    private static readonly Key<Amount<Length>> Long = Key.Required(
        "length", "Length along the road from beginning to end, edges included.", Kind.Amount<Length>(), "3.7 m");
    private static readonly Key<Amount<Length>> Edge = Key.Required(
        "edge",
        "Distance over which an edge rises or falls; 0 mm for a sharp one, which a tyre needs a contact length for.",
        Kind.Amount<Length>(),
        "20 mm");
    private static readonly Key<Amount<Length>> Plateau = Key.Required("plateau", "Length of the level part.", Kind.Amount<Length>(), "2.5 m");
    private static readonly Key<Amount<Length>> RampUp = Key.Required("ramp-up", "Length of the ramp up.", Kind.Amount<Length>(), "1 m");
    private static readonly Key<Amount<Length>> RampDown = Key.Optional(
        "ramp-down", "Length of the ramp down; as the ramp up when left out.", Kind.Amount<Length>(), "1 m");

    private static readonly Shape<Obstacle> RoundTop = new Shape("round-top hump", "A hump whose section is an arc of a circle.", Top, Long)
        .As<Obstacle>(f => new RoundTopHump { Height = f.Required(Top), Length = f.Required(Long) });
    private static readonly Shape<Obstacle> FlatTop =
        new Shape("flat-top hump", "A table with a ramp up and a ramp down.", Top, Plateau, RampUp, RampDown).As<Obstacle>(f => new FlatTopHump
        {
            Height = f.Required(Top),
            Plateau = f.Required(Plateau),
            RampUp = f.Required(RampUp),
            RampDown = f.Optional(RampDown, f.Required(RampUp)),
        });

    private static readonly Shape<Obstacle> PlankShape = new Shape("plank", "A plank or cable cover.", Top, Long, Edge)
        .As<Obstacle>(f => new Plank { Height = f.Required(Top), Length = f.Required(Long), Edge = f.Required(Edge) });
    private static readonly Shape<Obstacle> Hole = new Shape("pothole", "A hole with a level bottom.", Depth, Long, Edge)
        .As<Obstacle>(f => new Pothole { Depth = f.Required(Depth), Length = f.Required(Long), Edge = f.Required(Edge) });
    private static readonly Shape<Obstacle> StepShape = new Shape("step", "A change of level that stays, such as a kerb.", Rise, Edge)
        .As<Obstacle>(f => new Step { Height = f.Required(Rise), Edge = f.Required(Edge) });
    private static readonly Shape<Obstacle> RampShape = new Shape("ramp", "A straight slope to another level.", Rise, Long)
        .As<Obstacle>(f => new Ramp { Height = f.Required(Rise), Length = f.Required(Long) });
    private static readonly Shape<Obstacle> HalfSineShape = new Shape("half-sine", "Half a sine wave.", Rise, Long)
        .As<Obstacle>(f => new HalfSine { Height = f.Required(Rise), Length = f.Required(Long) });
    private static readonly Shape<Obstacle> VersineShape = new Shape("versine", "One whole wave that begins and ends level.", Rise, Long)
        .As<Obstacle>(f => new Versine { Height = f.Required(Rise), Length = f.Required(Long) });

    /// <summary>All obstacles by key.</summary>
    public static readonly IReadOnlyList<Key<Obstacle>> All =
    [
        Key.Optional("round-top-hump", "A round-top speed hump.", RoundTop),
        Key.Optional("flat-top-hump", "A flat-top speed hump (speed table).", FlatTop),
        Key.Optional("plank", "A plank.", PlankShape),
        Key.Optional("pothole", "A pothole.", Hole),
        Key.Optional("step", "A step.", StepShape),
        Key.Optional("ramp", "A ramp.", RampShape),
        Key.Optional("half-sine", "A half-sine bump or, with a negative height, dip.", HalfSineShape),
        Key.Optional("versine", "A versine bump or dip.", VersineShape),
    ];
}
