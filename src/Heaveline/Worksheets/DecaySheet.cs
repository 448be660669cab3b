using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>
/// Swings that die: one end pushed down and let go, the heights at which it turns read beside a ruler. The share of critical damping is that of the
/// logarithmic decrement (Rao, <em>Mechanical Vibrations</em>): λ = ln|x₀/xₙ|/n of n half swings, ζ = λ/√(π² + λ²); friction is taken out by
/// <see cref="DyingSwing"/> where it is known.
/// </summary>
public sealed record DecaySheet
{
    // Tyres of 6 to 20 times the wheel rate (common practice, no source) make (1 + k/k_t)^1.5 of 1.26 to 1.08.
    private const double UsualFactor = 1.17;
    private const double UsualFactorDoubt = 0.09;
    private const double Reading = 1e-3;
    // A wheel has no more travel either way, and a car damped beyond this does not swing: choices of what is refused.
    private const double MostSwing = 0.5;
    private const double MostDamping = 1.5;

    /// <summary>Share of critical damping of the swing as it was seen, tyres and friction in it (–).</summary>
    public required Amount<Plain> Swing { get; init; }

    /// <summary>Share of critical damping at the wheel, as a car file takes it: of the spring alone, the tyre's give taken out (–).</summary>
    public required Amount<Plain> AtWheel { get; init; }

    /// <summary>
    /// Half-width of the band of heights at which friction lets it come to rest, m: as given, or as the swings themselves say; null where nothing is
    /// known of it and it is counted as damping.
    /// </summary>
    public required Amount<Length>? Friction { get; init; }

    /// <summary>How many half swings it is taken from.</summary>
    public required int HalfSwings { get; init; }

    /// <summary>What the swings say about themselves, one sentence each.</summary>
    public required IReadOnlyList<SheetNote> Notes { get; init; }

    /// <summary>Works the sheet out.</summary>
    /// <param name="rest">Height at which it comes to rest, m. Without a doubt good to 1 mm, as the others.</param>
    /// <param name="turns">Heights at which it turns, one after another, m.</param>
    /// <param name="wheelRate">Rate of the spring at the wheel, N/m; null when not known.</param>
    /// <param name="tyre">Rate of one tyre, N/m; null when not known.</param>
    /// <param name="friction">Half-width of the band of heights at which it comes to rest, m; null when not known.</param>
    /// <exception cref="RefusedValueException">There are too few turns, or the swings do not die about the height of rest.</exception>
    public static DecaySheet Of(
        Amount<Length> rest,
        IReadOnlyList<Amount<Length>> turns,
        Amount<Stiffness>? wheelRate = null,
        Amount<Stiffness>? tyre = null,
        Amount<Length>? friction = null)
    {
        ArgumentNullException.ThrowIfNull(turns);
        if (turns.Count < 2)
        {
            throw new RefusedValueException(
                "number of turns", FormattableString.Invariant($"{turns.Count}"), "at least 2, better 3", "Read where it turns, one after another.");
        }

        double[] swings = [.. turns.Select(turn => turn.Si - rest.Si)];
        RefuseUnreadable(rest, turns, swings);
        for (var k = 1; k < swings.Length; k++)
        {
            if (!(Math.Abs(swings[k]) < Math.Abs(swings[k - 1]) && swings[k] * swings[k - 1] < 0.0))
            {
                var turn = FormattableString.Invariant($"turn {k + 1}");
                if (friction is { } width && Math.Abs(swings[k]) <= width.Si)
                {
                    throw new RefusedValueException(
                        turn,
                        turns[k].WithDoubt(0.0).ToString(),
                        FormattableString.Invariant(
                            $"farther from the height of rest than friction's half-width, {In.Millimetres.Of(width.Si):0.#} mm"),
                        "Friction has stopped it there: leave this one out.");
                }

                throw new RefusedValueException(
                    turn,
                    turns[k].WithDoubt(0.0).ToString(),
                    "on the other side of the height of rest, and nearer to it, than the turn before",
                    "Read every turn, above and below; the height of rest is where it stands when all is still.");
            }
        }

        var halves = turns.Count - 1;
        var dying = new DyingSwing([.. turns.Select(turn => turn.Si)], [.. turns.Select(Stated)], rest.Si, Stated(rest));
        var (swing, band) = friction is { } given ? (dying.Against(Band(given, swings)), given) : dying.Fitted() ?? (dying.Plain, null);
        var (factor, own) = FactorOf(wheelRate, tyre);
        var atWheel = swing.Si * factor;
        if (atWheel > MostDamping)
        {
            throw new RefusedValueException(
                "share of critical damping at the wheel",
                FormattableString.Invariant($"{atWheel:F2}"),
                FormattableString.Invariant($"at most {MostDamping}"),
                "A car damped so much does not swing back: read the turns again, and the rates of spring and tyre.");
        }

        return new DecaySheet
        {
            Swing = swing,
            AtWheel = new Amount<Plain>(atWheel, new Doubt(Math.Sqrt(Math.Pow(factor * swing.Doubt.HalfWidth, 2) + Math.Pow(swing.Si * own, 2)))),
            Friction = band,
            HalfSwings = halves,
            Notes =
            [
                FrictionNote(dying, swing, band, friction is not null),
                .. NotesOf(halves, Math.Abs(swings[^1]), Stated(turns[^1]), wheelRate is not null, tyre is not null),
            ],
        };
    }

    // More than what stops the swing within the turns that were read would leave the dampers nothing.
    private static Amount<Length> Band(Amount<Length> given, double[] swings)
    {
        var most = (Math.Abs(swings[0]) - Math.Abs(swings[^1])) / (2.0 * (swings.Length - 1));
        return given.Si >= 0.0 && given.Si < most
            ? given.WithDoubt(Stated(given))
            : throw new RefusedValueException(
                "friction's half-width",
                given.WithDoubt(0.0).ToString(),
                FormattableString.Invariant($"at least 0 and below {In.Millimetres.Of(most):0.#} mm, at which friction alone ends these swings"),
                "Let the car down gently and let it up gently: half of how far apart it comes to rest.");
    }

    private static SheetNote FrictionNote(DyingSwing dying, Amount<Plain> swing, Amount<Length>? band, bool isGiven)
    {
        if (band is { } known)
        {
            return new("friction", isGiven
                ? FormattableString.Invariant($"Friction's half-width of {Said(known)} is taken out: it takes the same off every half swing, the ")
                    + "dampers the same share."
                : FormattableString.Invariant($"The swings themselves tell friction's half-width, {Said(known)}, where bump and rebound are damped ")
                    + "alike: it takes the same off every half swing, the dampers the same share. It is taken out.");
        }

        // To first order: a millimetre of it, or a tenth of the last turn where that is less.
        var step = Math.Min(Reading, 0.1 * dying.Last);
        var less = (swing.Si - dying.RatioAgainst(step)) * Reading / step;
        return new("friction", FormattableString.Invariant(
            $"Friction is counted in as damping, and the ± does not hold it: each millimetre of its half-width takes about {less:F3} off the ")
            + "swing's share. Give it as --friction: half of how far apart the car comes to rest, let down gently and let up gently. A car file that "
            + "states friction beside this ratio counts it twice.");
    }

    private static double Stated(Amount<Length> height) => height.Doubt.IsStated ? height.Doubt.HalfWidth : Reading;

    // A light wheel between spring and tyre: of a slow swing the damper sees k_t/(k + k_t), and the car stands on both springs in a row.
    private static (double Factor, double Doubt) FactorOf(Amount<Stiffness>? wheelRate, Amount<Stiffness>? tyre)
    {
        if (wheelRate is not { } spring || tyre is not { } under)
        {
            return (UsualFactor, UsualFactorDoubt);
        }

        Checked.Positive(spring, "The rate of one spring at its wheel.", "WheelRate");
        Checked.Positive(under, "The rate of one tyre.", "Tyre");
        if (spring.Si >= under.Si)
        {
            throw new RefusedValueException(
                "wheel rate",
                spring.WithDoubt(0.0).ToString(),
                $"below that of one tyre, {under.WithDoubt(0.0)}",
                "Are the two swapped? A tyre is 6 to 20 times as stiff as the spring at its wheel (common practice, no source).");
        }

        double Of(double[] v) => Math.Pow(1.0 + (v[0] / v[1]), 1.5);
        double[] rates = [spring.Si, under.Si];
        return (Of(rates), DoubtBudget.Of(Of, rates, [spring.Doubt.HalfWidth, under.Doubt.HalfWidth]));
    }

    private static string Missing(bool hasSpring, bool hasTyre) => (hasSpring, hasTyre) switch
    {
        (true, false) => "The rate of the tyre is missing beside that of the spring: without both",
        (false, true) => "The rate of the spring at its wheel is missing beside that of the tyre: without both",
        _ => "Without the rates of spring and tyre",
    };

    // A turn that cannot be told from rest has no logarithm to be doubted: its error runs to infinity.
    private static void RefuseUnreadable(Amount<Length> rest, IReadOnlyList<Amount<Length>> turns, double[] swings)
    {
        for (var k = 0; k < swings.Length; k++)
        {
            var from = Math.Abs(swings[k]);
            if (from > MostSwing)
            {
                throw new RefusedValueException(
                    FormattableString.Invariant($"turn {k + 1}"),
                    turns[k].WithDoubt(0.0).ToString(),
                    $"within {MostSwing} m of the height of rest, {rest.WithDoubt(0.0)}",
                    "No car swings so far: look at its unit, and at that of the height of rest.");
            }

            var isRest = Stated(rest) >= Stated(turns[k]);
            if (from <= Math.Sqrt(Math.Pow(Stated(rest), 2) + Math.Pow(Stated(turns[k]), 2)))
            {
                throw new RefusedValueException(
                    isRest ? "height of rest" : FormattableString.Invariant($"turn {k + 1}"),
                    $"{Said(isRest ? rest : turns[k])}, and "
                        + FormattableString.Invariant($"turn {k + 1} lies {In.Millimetres.Of(from):0.#} mm from rest"),
                    "known better than a turn's distance from rest",
                    "Push harder, read it to a millimetre, or leave out the last turn.");
            }
        }
    }

    private static string Said(Amount<Length> height) =>
        FormattableString.Invariant($"{In.Millimetres.Of(height.Si):0.#} ± {In.Millimetres.Of(Stated(height)):0.#} mm");

    private static IEnumerable<SheetNote> NotesOf(int halves, double last, double doubt, bool hasSpring, bool hasTyre)
    {
        if (!hasSpring || !hasTyre)
        {
            yield return new("tyre-unknown", FormattableString.Invariant(
                $"{Missing(hasSpring, hasTyre)} the tyre's give is taken out as {UsualFactor} ± {UsualFactorDoubt}: tyres of 6 to 20 times ")
                + "the wheel rate (common practice, no source).");
        }

        if (halves % 2 == 1)
        {
            yield return new(
                "one-way", "One half swing more goes one way than the other: bump and rebound differ, so read one turn more, or one less.");
        }

        if (last < 3.0 * doubt)
        {
            yield return new("small", FormattableString.Invariant(
                $"The last turn lies {In.Millimetres.Of(last):F1} mm from rest, hardly more than it can be read to: push harder, or leave it out."));
        }

        yield return new("one-end", "Push and let go so that one end alone moves up and down, and nobody holds the car while it swings.");
    }
}
