using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for one axle.</summary>
internal static class AxleWords
{
    /// <summary>Track.</summary>
    public static readonly Key<Amount<Length>> Track = Key.Optional(
        "track", "Distance between the middles of the two tyres. A two-wheeler has none.", Kind.Amount<Length>(), "1.52 m")
        .Usually("0.8 m", "2.3 m");

    /// <summary>Unsprung mass of the axle.</summary>
    public static readonly Key<Amount<Mass>> Unsprung = Key.Required(
        "unsprung-mass",
        "Mass of both wheels with hubs and brakes and half of each arm and spring; a solid axle in full.",
        Kind.Amount<Mass>(),
        "84 kg ± 6 kg")
        .Usually("5 kg", "500 kg");

    /// <summary>Independent or solid.</summary>
    public static readonly Key<SuspensionKind> Suspension = Key.Optional(
        "suspension",
        "Whether each wheel moves by itself (when left out) or one beam carries both.",
        Kind.Choice(("independent", SuspensionKind.Independent), ("solid-axle", SuspensionKind.SolidAxle)),
        "independent");

    /// <summary>Roll inertia of a solid axle.</summary>
    public static readonly Key<Amount<Inertia>> AxleInertia = Key.Optional(
        "axle-inertia",
        "Roll inertia of a solid axle with its wheels about its middle. Needed for a solid axle.",
        Kind.Amount<Inertia>(),
        "48 kg m2",
        property: "RollInertia")
        .Usually("3 kg m2", "400 kg m2");

    /// <summary>Spring base.</summary>
    public static readonly Key<Amount<Length>> SpringBase = Key.Optional(
        "spring-base", "Distance between the two springs along a solid axle; the track when left out.", Kind.Amount<Length>(), "1.00 m")
        .Usually("0.2 m", "2.2 m");

    /// <summary>Damper base.</summary>
    public static readonly Key<Amount<Length>> DamperBase = Key.Optional(
        "damper-base", "Distance between the two dampers along a solid axle; as the springs when left out.", Kind.Amount<Length>(), "0.95 m")
        .Usually("0.2 m", "2.2 m");

    /// <summary>Stop base.</summary>
    public static readonly Key<Amount<Length>> StopBase = Key.Optional(
        "stop-base", "Distance between the two stops along a solid axle; as the springs when left out.", Kind.Amount<Length>(), "1.00 m")
        .Usually("0.2 m", "2.2 m");

    /// <summary>One spring.</summary>
    public static readonly Key<Spring> Spring = Key.Required(
        "spring", "One of its springs.", SpringWords.Shape, "{rate: 24.5 N/mm, moves: 31 mm for 50 mm at the wheel}");

    /// <summary>One spring that was bought.</summary>
    public static readonly Key<BoughtSpring> Bought = Key.Optional(
        "bought-spring",
        "A coil spring that now stands where spring stood when the car was weighed; spring itself when left out.",
        BoughtSpringWords.Shape,
        "{rate: 24 N/mm ± 3 %, free-length: 371 mm ± 2 mm}");

    /// <summary>One damper.</summary>
    public static readonly Key<Damper> Damper = Key.Required(
        "damper", "One of its dampers.", DamperWords.Shape, "{damping-ratio: 0.28, rebound-per-bump: 2.2}");

    /// <summary>Bump stop.</summary>
    public static readonly Key<Stop> BumpStop = Key.Optional(
        "bump-stop", "The stop that each wheel meets in bump; none when left out.", StopWords.Shape);

    /// <summary>Rebound stop.</summary>
    public static readonly Key<Stop> ReboundStop = Key.Optional(
        "rebound-stop", "The stop that each wheel meets in rebound (droop); none when left out.", StopWords.Shape);

    /// <summary>Friction.</summary>
    public static readonly Key<Friction> Friction = Key.Optional(
        "friction", "Dry friction of each wheel's suspension; none when left out.", AxlePartWords.Friction);

    /// <summary>Anti-roll bar.</summary>
    public static readonly Key<AntiRollBarRate> Bar = Key.Optional("anti-roll-bar", "The anti-roll bar; none when left out.", AxlePartWords.Bar);

    /// <summary>One tyre.</summary>
    public static readonly Key<Tyre> Tyre = Key.Required("tyre", "One of its tyres.", AxlePartWords.Tyre);

    /// <summary>The group.</summary>
    public static readonly Shape<Axle> Shape = new Shape(
        "axle",
        "An axle: its wheels and what stands between them and the body. Both sides are alike.",
        Track,
        Unsprung,
        Suspension,
        AxleInertia,
        SpringBase,
        DamperBase,
        StopBase,
        Spring,
        Bought,
        Damper,
        BumpStop,
        ReboundStop,
        Friction,
        Bar,
        Tyre)
        .As(Make);

    private static Axle? Make(Fields f)
    {
        var suspension = f.Optional(Suspension, SuspensionKind.Independent);
        var isSolid = suspension == SuspensionKind.SolidAxle;
        if (isSolid && !f.Has(AxleInertia))
        {
            f.Refuse(
                Suspension,
                "is solid-axle, but the axle has no axle-inertia.",
                "Add it: two wheels of mass m at half the track y have 2·m·y²; add the beam's mass times track²/12.");
            return null;
        }

        foreach (var key in new Key[] { AxleInertia, SpringBase, DamperBase, StopBase }.Where(key => !isSolid && f.Has(key)))
        {
            f.Refuse(key, "belongs to a solid axle, and this one is independent.", "Write suspension: solid-axle, or leave it out.");
            return null;
        }

        if (f.Has(Bought) && BoughtSpringWords.Refuse(f, Bought, Spring, ReboundStop))
        {
            return null;
        }

        return new Axle
        {
            Track = f.Optional(Track, default),
            UnsprungMass = f.Required(Unsprung),
            Suspension = suspension,
            RollInertia = f.OptionalValue(AxleInertia),
            SpringBase = f.OptionalValue(SpringBase),
            DamperBase = f.OptionalValue(DamperBase),
            StopBase = f.OptionalValue(StopBase),
            Spring = f.Optional(Bought)?.InPlaceOf(f.Required(Spring)) ?? f.Required(Spring),
            Damper = f.Required(Damper),
            BumpStop = f.Optional(BumpStop),
            ReboundStop = f.Optional(ReboundStop),
            Friction = f.Optional(Friction, Heaveline.Cars.Friction.None),
            AntiRollBar = f.Optional(Bar)?.AtWheel ?? default,
            Tyre = f.Required(Tyre),
        };
    }
}
