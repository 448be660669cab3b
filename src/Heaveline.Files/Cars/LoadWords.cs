using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for seats, headlamp and loads.</summary>
internal static class LoadWords
{
    /// <summary>The seat that a load sits in.</summary>
    public static readonly Key<string> In = Key.Optional("in", "Name of the seat that it sits in, instead of a place.", Kind.Text(), "driver");

    private static readonly Key<Amount<Length>> Behind = Key.Required(
        "behind-front-axle", "Hip point behind the front axle; ahead of it is negative.", Kind.Amount<Length>(), "1.35 m")
        .Usually("-1.5 m", "5 m");
    private static readonly Key<Amount<Length>> Left = Key.Optional(
        "left",
        "Left of the car's middle; negative to the right; the middle when left out.",
        Kind.Amount<Length>(),
        "0.37 m",
        property: "LeftOfMiddle")
        .Usually("-1.2 m", "1.2 m");
    private static readonly Key<Amount<Length>> Height = Key.Required(
        "height", "Hip point above the ground in the state described.", Kind.Amount<Length>(), "0.52 m")
        .Usually("0.1 m", "2.2 m");
    private static readonly Key<Amount<Length>> Head = Key.Optional(
        "head", "Ear above the hip point; 0.70 m when left out.", Kind.Amount<Length>(), "0.68 m", property: "HeadAboveSeat")
        .Usually("0.4 m", "1 m");

    private static readonly Key<Amount<Length>> LampHeight = Key.Required(
        "height", "Middle of the lens above the ground.", Kind.Amount<Length>(), "0.66 m")
        .Usually("0.3 m", "1.5 m");
    private static readonly Key<Amount<Length>> Ahead = Key.Optional(
        "ahead", "Lamp ahead of the front axle; above it when left out.", Kind.Amount<Length>(), "0.75 m", property: "AheadOfFrontAxle")
        .Usually("-1 m", "1.5 m");
    private static readonly Key<Amount<Plain>> Drop = Key.Required(
        "drop", "How far the cut-off falls for each distance, downwards positive.", Kind.Amount<Plain>(), "1.2 %")
        .Usually("0 %", "4 %");

    private static readonly Key<HeadlampRule> Rule = Key.Optional(
        "rule",
        "The printed rule for cars that the drop is held against, of those built in; none when left out.",
        Kind.Choice(
            ("un-r48-09", HeadlampRule.UnRegulation48Series09),
            ("un-r48-08", HeadlampRule.UnRegulation48Series08),
            ("british-inspection", HeadlampRule.BritishInspection),
            ("german-inspection", HeadlampRule.GermanInspection)),
        "un-r48-08");
    private static readonly Key<Amount<Plain>> LeastDrop = Key.Optional(
        "least-drop", "Instead of a rule: the least drop that the rule of your place allows.", Kind.Amount<Plain>(), "0.5 %")
        .Usually("0 %", "4 %");
    private static readonly Key<Amount<Plain>> GreatestDrop = Key.Optional(
        "greatest-drop", "With least-drop: the greatest.", Kind.Amount<Plain>(), "2.5 %")
        .Usually("0 %", "6 %");

    private static readonly Key<string> What = Key.Required("what", "Who or what it is.", Kind.Text(), "driver", property: "Name");
    private static readonly Key<Amount<Mass>> Mass = Key.Required(
        "mass", "Its mass; negative for something taken out.", Kind.Amount<Mass>(), "78 kg")
        .Usually("-300 kg", "3000 kg");
    private static readonly Key<Amount<Length>> LoadBehind = Key.Optional(
        "behind-front-axle", "Its middle behind the front axle; ahead of it is negative.", Kind.Amount<Length>(), "3.1 m")
        .Usually("-2 m", "7 m");
    private static readonly Key<Amount<Length>> LoadHeight = Key.Optional(
        "height", "Its middle above the ground; needed with behind-front-axle.", Kind.Amount<Length>(), "0.75 m")
        .Usually("0 m", "3 m");

    /// <summary>A seat; its name is the key it stands under.</summary>
    public static readonly Shape<Seat> Seat = new Shape("seat", "A place where a person sits.", Behind, Left, Height, Head).As(f => new Seat
    {
        Name = "seat",
        BehindFrontAxle = f.Required(Behind),
        LeftOfMiddle = f.Optional(Left, default),
        Height = f.Required(Height),
        HeadAboveSeat = f.Optional(Head, new Amount<Length>(0.70)),
    });

    /// <summary>The headlamp.</summary>
    public static readonly Shape<Headlamp> Headlamp = new Shape(
        "headlamp", "The dipped headlamp in the state described.", LampHeight, Ahead, Drop, Rule, LeastDrop, GreatestDrop)
        .As(MakeLamp);

    /// <summary>A load, in a seat or at a place.</summary>
    public static readonly Shape<LoadAsWritten> Load = new Shape(
        "load", "Somebody or something in or on the car.", What, Mass, In, LoadBehind, Left, LoadHeight)
        .WithOneOf(In, LoadBehind)
        .As(Make);

    private static Headlamp? MakeLamp(Fields f)
    {
        if (f.Has(LeastDrop) != f.Has(GreatestDrop))
        {
            f.Refuse("has one end of a range only.", $"Give {LeastDrop.Name} and {GreatestDrop.Name}, or neither.");
            return null;
        }

        if (f.Has(Rule) && f.Has(LeastDrop))
        {
            f.Refuse(LeastDrop, $"is given beside {Rule.Name}.", "Keep the rule, or the range of your own.");
            return null;
        }

        if (f.OptionalValue(LeastDrop) is { } least && f.OptionalValue(GreatestDrop) is { } greatest && !(least.Si < greatest.Si))
        {
            f.Refuse(LeastDrop, $"is not below {GreatestDrop.Name}.", "Downwards is positive: the greatest drop points lowest.");
            return null;
        }

        return new Headlamp
        {
            Height = f.Required(LampHeight),
            AheadOfFrontAxle = f.Optional(Ahead, default),
            Drop = f.Required(Drop),
            Rule = f.Has(Rule) ? f.Optional(Rule, default) : null,
            LeastDrop = f.OptionalValue(LeastDrop),
            GreatestDrop = f.OptionalValue(GreatestDrop),
        };
    }

    private static LoadAsWritten? Make(Fields f)
    {
        if (f.Optional(In) is { } seat)
        {
            foreach (var key in new Key[] { Left, LoadHeight }.Where(f.Has))
            {
                f.Refuse(key, "is given beside in, which is a place already.", "Name the seat, or give the place.");
                return null;
            }

            // A place that any load may have: the seat's own comes in when the whole car is made.
            return new LoadAsWritten(
                new Load { Name = f.Required(What), Mass = f.Required(Mass), BehindFrontAxle = default, Height = default }, seat);
        }

        if (f.OptionalValue(LoadHeight) is not { } height)
        {
            f.Refuse("has no height.", $"Add height: {LoadHeight.Example} (its middle above the ground).");
            return null;
        }

        return new LoadAsWritten(
            new Load
            {
                Name = f.Required(What),
                Mass = f.Required(Mass),
                BehindFrontAxle = f.OptionalValue(LoadBehind) ?? default,
                LeftOfMiddle = f.Optional(Left, default),
                Height = height,
            },
            null);
    }
}
