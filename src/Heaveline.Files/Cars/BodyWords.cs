using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for weighing and body.</summary>
internal static class BodyWords
{
    private const string ScaleAdvice = "Give the reading of the scale under the wheel or the axle.";

    private static readonly Key<Amount<Mass>> FrontAxle = Key.Optional(
        "front", "Both front wheels together, in the state described.", Kind.Amount<Mass>(), "742 kg ± 2 kg")
        .Usually("40 kg", "3000 kg");
    private static readonly Key<Amount<Mass>> RearAxle = Key.Optional("rear", "Both rear wheels together.", Kind.Amount<Mass>(), "618 kg ± 2 kg")
        .Usually("40 kg", "3000 kg");
    private static readonly Key<Amount<Mass>> FrontLeft = Key.Optional("front-left", "Front left wheel alone.", Kind.Amount<Mass>(), "380 kg ± 1 kg")
        .Usually("20 kg", "1500 kg");
    private static readonly Key<Amount<Mass>> FrontRight = Key.Optional(
        "front-right", "Front right wheel alone.", Kind.Amount<Mass>(), "362 kg ± 1 kg")
        .Usually("20 kg", "1500 kg");
    private static readonly Key<Amount<Mass>> RearLeft = Key.Optional("rear-left", "Rear left wheel alone.", Kind.Amount<Mass>(), "312 kg ± 1 kg")
        .Usually("20 kg", "1500 kg");
    private static readonly Key<Amount<Mass>> RearRight = Key.Optional("rear-right", "Rear right wheel alone.", Kind.Amount<Mass>(), "306 kg ± 1 kg")
        .Usually("20 kg", "1500 kg");
    private static readonly Key<string> Scale = Key.Optional(
        "scale", "Name of the scale that weighed them all: its readings are off together.", Kind.Text(), "village weighbridge");

    /// <summary>Height of the sprung centre of gravity.</summary>
    public static readonly Key<Amount<Length>> CentreHeight = Key.Required(
        "centre-of-gravity-height",
        "Height of the body's centre of gravity above the ground, the unsprung parts left out.",
        Kind.Amount<Length>(),
        "0.56 m ± 3 cm",
        property: "CentreHeight")
        .Usually("0.25 m", "1.5 m");

    private static readonly Key<Amount<Length>> PitchAxis = Key.Optional(
        "pitch-axis-height",
        "Height above the ground of the axis about which the body pitches; gravity's tilting moment is left out without it.",
        Kind.Amount<Length>(),
        "0.28 m")
        .Usually("-0.5 m", "1.2 m");
    private static readonly Key<Amount<Length>> RollAxis = Key.Optional(
        "roll-axis-height",
        "Height above the ground of the axis about which the body rolls; gravity's tilting moment is left out without it.",
        Kind.Amount<Length>(),
        "0.08 m")
        .Usually("-0.5 m", "1.2 m");
    private static readonly Key<Amount<Inertia>> PitchInertia = Key.Optional(
        "pitch-inertia",
        "Pitch inertia of the body about its centre of gravity; estimated by the index when left out.",
        Kind.Amount<Inertia>(),
        "1850 kg m2 ± 8 %")
        .Usually("10 kg m2", "20000 kg m2");
    private static readonly Key<Amount<Plain>> PitchIndex = Key.Optional(
        "pitch-index",
        "Pitch inertia as k²/(b·c), radius of gyration squared over the distances to both axles; 0.998 ± "
        + "0.224 (median of measured cars) when left out.",
        Kind.Amount<Plain>(),
        "0.95 ± 10 %",
        property: "DynamicIndex")
        .Usually("0.4", "1.6");
    private static readonly Key<Amount<Inertia>> RollInertia = Key.Optional(
        "roll-inertia",
        "Roll inertia of the body about its centre of gravity; estimated from the track when left out.",
        Kind.Amount<Inertia>(),
        "450 kg m2")
        .Usually("20 kg m2", "5000 kg m2");

    /// <summary>What each wheel carries.</summary>
    public static readonly Shape<Weighing> Weighing = new Shape(
        "weighing",
        "What the scales read in the state described, by axle or by wheel.",
        FrontAxle,
        RearAxle,
        FrontLeft,
        FrontRight,
        RearLeft,
        RearRight,
        Scale)
        .WithOneOf(FrontAxle, FrontLeft).WithOneOf(RearAxle, RearLeft)
        .As(MakeWeighing);

    /// <summary>The sprung body.</summary>
    public static readonly Shape<Body> Body = new Shape(
        "body", "The body on its springs: heights and inertias.", CentreHeight, PitchAxis, RollAxis, PitchInertia, PitchIndex, RollInertia)
        .As(MakeBody);

    private static Weighing? MakeWeighing(Fields f)
    {
        var front = Pair(f, FrontAxle, FrontLeft, FrontRight);
        var rear = Pair(f, RearAxle, RearLeft, RearRight);
        if (front is not var (frontLeft, frontRight) || rear is not var (rearLeft, rearRight))
        {
            return null;
        }

        return new Weighing { FrontLeft = frontLeft, FrontRight = frontRight, RearLeft = rearLeft, RearRight = rearRight };
    }

    private static (Amount<Mass> Left, Amount<Mass> Right)? Pair(Fields f, Key<Amount<Mass>> axle, Key<Amount<Mass>> left, Key<Amount<Mass>> right)
    {
        var scale = f.Optional(Scale);
        if (f.OptionalValue(axle) is { } whole)
        {
            if (f.Has(right))
            {
                f.Refuse(
                    right, $"is given beside {axle.Name}, which is both wheels together.", $"Give {axle.Name}, or {left.Name} and {right.Name}.");
                return null;
            }

            // One reading for both halves: its error is theirs in common, whatever the scale is called.
            var half = Checked.Positive(whole, ScaleAdvice, axle.Property).Times(0.5);
            half = scale is null ? ProductDoubt.UnderOwn(half, $"{axle.Name} axle weighing") : ProductDoubt.Under(half, scale);
            return (half, half);
        }

        if (f.OptionalValue(right) is not { } other)
        {
            f.Refuse(left, $"is given without {right.Name}.", $"Weigh both wheels, or give {axle.Name} for both together.");
            return null;
        }

        return (
            ProductDoubt.Under(Checked.Positive(f.Required(left), ScaleAdvice, left.Property), scale),
            ProductDoubt.Under(Checked.Positive(other, ScaleAdvice, right.Property), scale));
    }

    private static Body? MakeBody(Fields f)
    {
        if (f.Has(PitchInertia) && f.Has(PitchIndex))
        {
            f.Refuse(PitchIndex, "is given beside pitch-inertia.", "Keep the one that was measured.");
            return null;
        }

        var body = new Body
        {
            CentreHeight = f.Required(CentreHeight),
            PitchAxisHeight = f.OptionalValue(PitchAxis),
            RollAxisHeight = f.OptionalValue(RollAxis),
            PitchInertia = f.OptionalValue(PitchInertia),
            RollInertia = f.OptionalValue(RollInertia),
        };
        return f.OptionalValue(PitchIndex) is { } index ? body with { DynamicIndex = index } : body;
    }
}
