using Heaveline.Files;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Tests.Files;

/// <summary>A small invented file format for the tests of reading: a bench with springs on it.</summary>
internal static class Sample
{
    public enum Where
    {
        Spring,
        Wheel,
    }

    public static readonly Key<Amount<Stiffness>> Rate = Key.Required("rate", "Rate of one spring.", Kind.Amount<Stiffness>(), "24.5 N/mm ± 5 %");
    public static readonly Key<Amount<Length>> Free = Key.Required("free-length", "Length without load.", Kind.Amount<Length>(), "310 mm");
    public static readonly Key<Where> At = Key.Optional(
        "at", "Where the rate was measured.", Kind.Choice(("spring", Where.Spring), ("wheel", Where.Wheel)), "spring");
    public static readonly Shape<Coil> Spring = new Shape("spring", "One coil spring.", Rate, Free, At)
        .As(f => new Coil { Rate = f.Required(Rate), FreeLength = f.Required(Free), At = f.Optional(At, Where.Spring) });

    public static readonly Key<string> Title = Key.Required("title", "What is on the bench.", Kind.Text(), "Four springs");
    public static readonly Key<IReadOnlyList<Coil>> Springs = Key.Required("springs", "The springs.", Kind.List(Spring));
    public static readonly Key<Coil> Spare = Key.Optional("spare", "One more.", Spring);
    public static readonly Key<bool> Warm = Key.Optional("warm", "Whether the bench is heated.", Kind.YesNo(), "true");
    public static readonly Key<int> Turns = Key.Optional("turns", "Turns of the crank.", Kind.Count(1, 99), "12");
    public static readonly Key<IReadOnlyList<(Amount<Velocity>, Amount<Force>)>> Table =
        Key.Optional(
            "table",
            "Speed and force.",
            Kind.List(Kind.Pair(Kind.Amount<Velocity>(), Kind.Amount<Force>()), 2),
            "[[0.1 m/s, 250 N], [0.3 m/s, 600 N]]");

    public static readonly Key<IReadOnlyList<KeyValuePair<string, Amount<Mass>>>> Loads = Key.Optional(
        "loads", "Masses by name.", Kind.Named(Kind.Amount<Mass>()));
    public static readonly Key<Amount<Plain>> Friction = Key.Optional("friction", "Friction coefficient.", Kind.Amount<Plain>(), "0.1");
    public static readonly Key<Amount<Length>> Wire = Key.Optional("wire", "Wire diameter.", Kind.Amount<Length>(), "12 mm");
    public static readonly Key<Amount<Length>> Strip = Key.Optional("strip", "Strip thickness.", Kind.Amount<Length>(), "7 mm");

    public static readonly Shape<Bench> Bench =
        new Shape("bench", "A bench with springs.", Title, Springs, Spare, Warm, Turns, Table, Loads, Friction).As(MakeBench);
    public static readonly Shape<string> Stock = new Shape("stock", "Wire or strip.", Wire, Strip)
        .WithOneOf(Wire, Strip).As(f => f.Has(Wire) ? "wire" : "strip");

    public static Reading<Bench> Read(string text) => YamlReading.Read(new SourceText("bench.yaml", text), Bench);

    private static Bench? MakeBench(Fields f)
    {
        var springs = f.Required(Springs);
        if (springs.Count > 3)
        {
            f.Refuse(Springs, "are too many for the bench; it holds 3.", "Take the others off.");
            return null;
        }

        if (f.OptionalValue(Friction) is { Si: > 1.0 })
        {
            f.Warn(Friction, "is above 1; few pairs of surfaces reach that.", "Was it given in per cent?");
        }

        return new Bench(
            f.Required(Title), springs, f.Optional(Spare), f.OptionalValue(Warm), f.OptionalValue(Turns), f.Optional(Table), f.Optional(Loads));
    }
}
