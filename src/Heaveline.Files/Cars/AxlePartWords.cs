using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for tyre, friction and anti-roll bar.</summary>
internal static class AxlePartWords
{
    /// <summary>Rate of a tyre.</summary>
    public static readonly Key<Amount<Stiffness>> TyreRate = Key.Required(
        "rate", "Vertical rate of one tyre at its pressure.", Kind.Amount<Stiffness>(), "210 N/mm ± 10 %")
        .Usually("50 N/mm", "1500 N/mm");

    /// <summary>Damping.</summary>
    public static readonly Key<Amount<DampingRate>> Damping = Key.Optional(
        "damping", "Vertical damping of one tyre; none when left out.", Kind.Amount<DampingRate>(), "100 N s/m")
        .Usually("0 N s/m", "1000 N s/m");
    /// <summary>Contact patch.</summary>
    public static readonly Key<Amount<Length>> Contact = Key.Optional(
        "contact-length", "Length of the contact patch, over which the road is averaged; a point when left out.", Kind.Amount<Length>(), "120 mm")
        .Usually("0 mm", "400 mm");

    private static readonly Key<Amount<Force>> HalfWidth = Key.Required(
        "half-width",
        "Half the difference of the scale readings at one wheel when the car comes down slowly and when it rises slowly.",
        Kind.Amount<Force>(),
        "60 N")
        .Usually("0 N", "1500 N");
    private static readonly Key<Amount<Length>> PreSliding = Key.Optional(
        "pre-sliding",
        "Wheel travel from rest over which it rises to its full force: so far it sticks and gives way as a spring; 0.3 mm when left out (common "
        + "practice, no source).",
        Kind.Amount<Length>(),
        "0.3 mm")
        .Usually("0.02 mm", "5 mm");

    private static readonly Key<Amount<Velocity>> SpeedScale = Key.Optional(
        "speed-scale",
        "Wheel speed at which 71 % of it acts on a random road made straight; 5 mm/s when left out. A pass does not use it.",
        Kind.Amount<Velocity>(),
        "5 mm/s")
        .Usually("0.1 mm/s", "100 mm/s");

    private static readonly Key<Amount<Stiffness>> BarWheelRate = Key.Optional(
        "wheel-rate",
        "Force at one wheel for each difference in height between the two wheels: half the force that moves both wheels one unit against each other.",
        Kind.Amount<Stiffness>(),
        "9 N/mm")
        .Usually("0 N/mm", "150 N/mm");
    private static readonly Key<Amount<Length>> Diameter = Key.Optional(
        "diameter", "Diameter of the bar's middle part.", Kind.Amount<Length>(), "20 mm")
        .Usually("8 mm", "60 mm");
    private static readonly Key<Amount<Length>> BarLength = Key.Optional(
        "length", "Length of the part that twists.", Kind.Amount<Length>(), "900 mm")
        .Usually("200 mm", "2000 mm");
    private static readonly Key<Amount<Length>> Arm = Key.Optional(
        "arm", "Distance from the bar's axis to the link, square to the bar.", Kind.Amount<Length>(), "220 mm")
        .Usually("50 mm", "600 mm");
    private static readonly Key<Amount<Plain>> LinkPerWheel = Key.Optional(
        "link-per-wheel", "Link travel divided by wheel travel; 1 when left out.", Kind.Amount<Plain>(), "0.55", property: "MotionRatio")
        .Usually("0.1", "1.3");
    private static readonly Key<Amount<Pressure>> ShearModulus = Key.Optional(
        "shear-modulus", "Shear modulus; 79.3 GPa (spring steel) when left out.", Kind.Amount<Pressure>(), "79.3 GPa")
        .Usually("60 GPa", "90 GPa");

    /// <summary>One tyre.</summary>
    public static readonly Shape<Tyre> Tyre = new Shape("tyre", "One tyre.", TyreRate, Damping, Contact).As(f => new Tyre
    {
        Rate = f.Required(TyreRate),
        Damping = f.Optional(Damping, default),
        ContactLength = f.Optional(Contact, default),
    });

    /// <summary>Dry friction of one wheel.</summary>
    public static readonly Shape<Friction> Friction = new Shape(
        "friction", "Dry friction of one wheel's suspension.", HalfWidth, PreSliding, SpeedScale)
        .As(f => new Friction
        {
            HalfWidth = f.Required(HalfWidth),
            PreSliding = f.Optional(PreSliding, new Amount<Length>(0.0003)),
            SpeedScale = f.Optional(SpeedScale, new Amount<Velocity>(0.005)),
        });

    /// <summary>The bar's rate at the wheel.</summary>
    public static readonly Shape<AntiRollBarRate> Bar = new Shape(
        "anti-roll bar",
        "The axle's anti-roll bar, by its rate at the wheel or by its dimensions.",
        BarWheelRate,
        Diameter,
        BarLength,
        Arm,
        LinkPerWheel,
        ShearModulus)
        .WithOneOf(BarWheelRate, Diameter)
        .As(MakeBar);

    private static AntiRollBarRate? MakeBar(Fields f)
    {
        if (f.OptionalValue(BarWheelRate) is { } rate)
        {
            Checked.NotNegative(rate, "Leave the bar out when there is none.", BarWheelRate.Property);
            var beside = new Key[] { BarLength, Arm, LinkPerWheel, ShearModulus }.FirstOrDefault(f.Has);
            if (beside is null)
            {
                return new AntiRollBarRate(rate);
            }

            f.Refuse(beside, "is given beside wheel-rate, which is at the wheel already.", "Give the rate or the dimensions.");
            return null;
        }

        foreach (var key in new Key[] { BarLength, Arm }.Where(key => !f.Has(key)))
        {
            f.Refuse($"has a diameter but no {key.Name}.", $"Add {key.Name}: {key.Example} ({key.Meaning.TrimEnd('.')}).");
        }

        if (!f.Has(BarLength) || !f.Has(Arm))
        {
            return null;
        }

        var bar = new AntiRollBarDimensions
        {
            Diameter = f.Required(Diameter),
            Length = f.Required(BarLength),
            Arm = f.Required(Arm),
            MotionRatio = f.Optional(LinkPerWheel, new Amount<Plain>(1.0)),
        };
        bar = f.OptionalValue(ShearModulus) is { } modulus ? bar with { ShearModulus = modulus } : bar;
        return new AntiRollBarRate(ProductDoubt.Of<Stiffness>(
            bar.WheelRate,
            (ProductDoubt.Part(bar.Diameter), 4.0),
            (ProductDoubt.Part(bar.Length), -1.0),
            (ProductDoubt.Part(bar.Arm), -2.0),
            (ProductDoubt.Part(bar.MotionRatio), 2.0),
            (ProductDoubt.Part(bar.ShearModulus), 1.0)));
    }
}
