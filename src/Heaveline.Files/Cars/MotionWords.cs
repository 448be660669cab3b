using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>
/// The ways to say how far a spring or damper moves with its wheel. For a solid axle the "wheel" is the axle at the element's own place.
/// </summary>
internal sealed class MotionWords
{
    /// <summary>The greatest travel of an element for that of its wheel (–).</summary>
    public const double Steepest = 2.0;

    private static readonly UsualRange UsualRatio = new(0.2, 1.3, "a ratio of 0.2 to 1.3");

    /// <summary>Words for one kind of element.</summary>
    /// <param name="element">Its name ("spring").</param>
    public MotionWords(string element)
    {
        Element = element;
        Moves = Key.Optional(
            "moves",
            $"Travel of the {element} for a travel of the wheel, both measured over one movement. On a solid axle: of the axle at the {element}.",
            Kind.Phrase(Travels.Words, Travels.Pattern, Travels.Parse),
            "31 mm for 50 mm at the wheel").With(
            UsualRatio,
            (node, value, reader) =>
            {
                // What is not above zero is refused where the ratio is made.
                if (((Travels)value) is { Element.Si: > 0.0 and var element, Wheel.Si: > 0.0 and var wheel })
                {
                    var travels = (Travels)value;
                    var apart = Math.Sqrt(
                        Math.Pow(travels.Element.Doubt.HalfWidth / element, 2.0) + Math.Pow(travels.Wheel.Doubt.HalfWidth / wheel, 2.0));
                    UsualRatio.Check(node, element / wheel, apart * element / wheel, reader);
                }
            });
        PerWheel = Key.Optional(
            $"{element}-per-wheel",
            $"Motion ratio as {element} travel divided by wheel travel; 1 when the {element} stands at the wheel.",
            Kind.Amount<Plain>(),
            "0.62 ± 3 %").Usually("0.2", "1.3");
        WheelPer = Key.Optional(
            $"wheel-per-{element}", $"Motion ratio the other way up: wheel travel divided by {element} travel.", Kind.Amount<Plain>(), "1.61")
            .Usually("0.75", "5");
        Sweep = Key.Optional(
            "sweep",
            $"Motion ratio that changes with travel, as rows [wheel travel, {element} travel] from the state "
            + "described, bump positive; three rows or more.",
            Kind.List(Kind.Pair(Kind.Amount<Length>().Usually("-400 mm", "400 mm"), Kind.Amount<Length>().Usually("-400 mm", "400 mm")), 3),
            "[[-40 mm, -24 mm], [20 mm, 12.6 mm], [40 mm, 25.6 mm]]");
        Change = Key.Optional(
            "ratio-change",
            $"How much {element} travel per wheel travel grows for each metre of bump.",
            Kind.Amount<RatioPerLength>(),
            "0.5 1/m",
            property: "PerTravel").Usually("-20 1/m", "20 1/m");
    }

    /// <summary>Name of the element.</summary>
    public string Element { get; }

    /// <summary>Two measured travels.</summary>
    public Key<Travels> Moves { get; }

    /// <summary>Element travel per wheel travel.</summary>
    public Key<Amount<Plain>> PerWheel { get; }

    /// <summary>Wheel travel per element travel.</summary>
    public Key<Amount<Plain>> WheelPer { get; }

    /// <summary>Measured pairs.</summary>
    public Key<IReadOnlyList<(Amount<Length> First, Amount<Length> Second)>> Sweep { get; }

    /// <summary>Change with travel.</summary>
    public Key<Amount<RatioPerLength>> Change { get; }

    /// <summary>All keys, for the shape.</summary>
    public Key[] Keys => [Moves, PerWheel, WheelPer, Sweep, Change];

    private Key[] Ways => [Moves, PerWheel, WheelPer, Sweep];

    /// <summary>The ratio as written; null when it is missing, one too many or not possible, with the refusal at the group.</summary>
    public MotionRatio? Read(Fields f)
    {
        var given = Ways.Where(f.Has).ToList();
        if (given.Count != 1)
        {
            var names = string.Join(", ", Ways.Select(key => key.Name));
            if (given.Count == 0)
            {
                f.Refuse(
                    $"has none of {names}; it must have one.",
                    $"Measure both travels over one movement: moves: {Moves.Example}. Write {PerWheel.Name}: 1 when it stands at the wheel.");
            }
            else
            {
                f.Refuse(given[1], $"is given beside {given[0].Name}; it must have one of {names}.", "Keep the one that was measured.");
            }

            return null;
        }

        if (f.Has(Sweep))
        {
            return FromSweep(f);
        }

        var (key, ratio) = f.Has(Moves)
            ? (Moves, FromMoves(f))
            : f.Has(PerWheel) ? ((Key)PerWheel, f.Required(PerWheel)) : (WheelPer, Inverse(f.Required(WheelPer)));
        if (!(ratio.Si > 0.0 && ratio.Si <= Steepest))
        {
            const string Advice = "Measure both travels over the same movement, and check which one was divided by which.";
            var limit = new ValueLimit(FormattableString.Invariant($"above 0 and at most {Steepest}"), 0.0, Steepest, IsOpenBelow: true);
            if (key == PerWheel)
            {
                f.Refuse(key, limit, Advice);
            }
            else
            {
                f.Refuse(
                    key,
                    $"is {f.Node.At(key.Name)?.Text}, {(double.IsFinite(ratio.Si) ? $"a ratio of {ratio.Si:G3}" : "no ratio")}; "
                    + $"{Element} travel per wheel travel must be {limit.Words}.",
                    Advice);
            }

            return null;
        }

        return new MotionRatio { AtReference = ratio, PerTravel = f.Optional(Change, default) };
    }

    /// <summary>Refuses a ratio beside a value that is at the wheel already.</summary>
    /// <param name="f">The group.</param>
    /// <param name="value">The value's key.</param>
    /// <param name="else">What else is to be known of it, before the full stop.</param>
    public bool RefuseBeside(Fields f, string value, string @else = "")
    {
        foreach (var key in Keys.Where(f.Has))
        {
            f.Refuse(
                key,
                $"is given beside {value}, which is at the wheel already.",
                $"Leave {key.Name} out; a variant takes it out of its base with {key.Name}: ~{@else}.");
        }

        return Keys.Any(f.Has);
    }

    private static Amount<Plain> Inverse(Amount<Plain> ratio) => ProductDoubt.Of<Plain>(1.0 / ratio.Si, (ProductDoubt.Part(ratio), -1.0));

    private Amount<Plain> FromMoves(Fields f)
    {
        var travels = f.Required(Moves);
        return travels is { Element.Si: > 0.0, Wheel.Si: > 0.0 } && double.IsFinite(travels.Element.Si / travels.Wheel.Si)
            ? MotionRatio.FromTravels(travels.Element, travels.Wheel).AtReference
            : new Amount<Plain>(travels.Element.Si / travels.Wheel.Si);
    }

    private MotionRatio? FromSweep(Fields f)
    {
        if (f.Has(Change))
        {
            f.Refuse(Change, "is given beside sweep, which holds the change.", "Leave it out.");
            return null;
        }

        var rows = f.Required(Sweep);
        for (var i = 1; i < rows.Count; i++)
        {
            if (!(rows[i].First.Si > rows[i - 1].First.Si && rows[i].Second.Si > rows[i - 1].Second.Si))
            {
                f.Refuse(
                    Sweep,
                    $"does not rise from row {i} to row {i + 1}; wheel and {Element} travel must both rise.",
                    "Sort the rows from droop to bump; both travels are positive in bump.");
                return null;
            }
        }

        if (rows.Any(row => row.First.Doubt.IsStated || row.Second.Doubt.IsStated))
        {
            f.Warn(
                Sweep,
                "has rows with a doubt of their own, which is not followed.",
                "The ratio's doubt comes from the scatter of the rows about their curve: leave the others out.");
        }

        var ratio = MotionRatio.FromSweep([.. rows.Select(row => row.First.Si)], [.. rows.Select(row => row.Second.Si)]);
        var worst = rows.Max(row => Math.Abs(ratio.Travel(row.First.Si) - row.Second.Si));
        // A tape reads to a millimetre.
        if (worst > 0.0015)
        {
            f.Warn(
                Sweep,
                string.Create(CultureInfo.InvariantCulture, $"misses a smooth curve through zero by {In.Millimetres.Of(worst):0.#} mm."),
                "Likely a misread row, or travels not counted from the state described.");
        }

        return ratio;
    }
}
