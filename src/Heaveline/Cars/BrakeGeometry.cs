using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>
/// How braking and driving forces reach the body. Part of the load that braking or driving moves from one axle to the other goes through the links
/// instead of the springs when the links slope in side view; each share below is that part over the load moved, m·a·h/L, in the reference state.
/// </summary>
public sealed record BrakeGeometry
{
    /// <summary>Front axle's part p of the whole braking force (–); null when it is not known. Above 0, at most 1.</summary>
    public Amount<Plain>? FrontBrakeShare
    {
        get;
        init => field = value is { } v
            ? Checked.Within(v, 0.01, 1.0, "Read it off a roller brake tester: front force over the sum of both; most cars lie between 0.55 and 0.8.")
            : null;
    }

    /// <summary>
    /// Part of the front axle's gain under braking that its links carry: anti-dive (–); negative where they add to it (pro-dive). −2 to 1.5. Counts
    /// when no <see cref="ForkRake"/> is given.
    /// </summary>
    public Amount<Plain> AntiDiveFront { get; init => field = Share(value, -2.0); } = new(0.0);

    /// <summary>
    /// Rake of a telescopic fork that carries its brake, from the vertical, rad; null for another front. The braking force pushes such a fork
    /// together with tan(rake) times itself: pro-dive. docs/theory/side-effects.md derives it. 0 to 60°.
    /// </summary>
    public Amount<Angle>? ForkRake
    {
        get;
        init => field = value is { } v
            ? Checked.Within(v, 0.0, Math.PI / 3.0, "Measure the slope of the fork's legs from the vertical: about 25° on a road motorcycle.")
            : null;
    }

    /// <summary>Part of the rear axle's loss under braking that its links hold back: anti-lift (–). −1 to 1.5.</summary>
    public Amount<Plain> AntiLiftRear { get; init => field = Share(value); } = new(0.0);

    /// <summary>
    /// Part of the rear axle's gain under driving that its links carry: anti-squat (–). Counts when the rear wheels drive. −1 to 1.5.
    /// </summary>
    public Amount<Plain> AntiSquatRear { get; init => field = Share(value); } = new(0.0);

    /// <summary>Part of the front axle's loss under driving that its links hold back (–). Counts when the front wheels drive. −1 to 1.5.</summary>
    public Amount<Plain> AntiLiftFront { get; init => field = Share(value); } = new(0.0);

    /// <summary>Which wheels drive.</summary>
    public DrivenAxle DrivenAxle { get; init; } = DrivenAxle.Rear;

    /// <summary>
    /// Height of the wheel centres above the ground, m: the unsprung masses are slowed down there. Default 0.30 m ± 4 cm,
    /// common practice without a source. 0.1 to 1 m.
    /// </summary>
    public Amount<Length> WheelRadius
    {
        get;
        init => field = Checked.Within(value, 0.1, 1.0, "Measure from the ground to the wheel's centre.");
    } = AssumedWheelRadius;

    /// <summary>The wheel radius taken when none is given, m.</summary>
    public static Amount<Length> AssumedWheelRadius { get; } = new(0.30, new Doubt(0.04, "wheel radius guess", OfOneCar: true));

    private static Amount<Plain> Share(
        Amount<Plain> share, double least = -1.0, [System.Runtime.CompilerServices.CallerMemberName] string what = "") =>
        Checked.Within(
            share,
            least,
            1.5,
            "Give the part of the moved load that the links carry, for instance 0.3 for 30 % anti-dive; negative when they add to it.",
            what);
}
