using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What no cure may do, in words.</summary>
internal static class CureBreachWords
{
    /// <summary>A clause ("lifts a wheel for longer").</summary>
    /// <param name="breach">What it does.</param>
    /// <param name="other">The number that may not get much worse beside that which is to be less.</param>
    public static string Of(CureBreach breach, string other) => breach switch
    {
        CureBreach.Damping => FormattableString.Invariant(
            $"takes an axle's damping ratio out of {CureGuard.LeastDamping:F2} to {CureGuard.MostDamping:F2}"),
        CureBreach.Coils => "lets the coils of a spring touch before the bump stop is solid",
        CureBreach.Loose => "brings a spring loose from its seats",
        CureBreach.FirstStop => $"meets a stop sooner, below {CureStance.Print(CureStance.LeastFirstStop)} of braking, accelerating or cornering,",
        CureBreach.Lift => "lifts a wheel for longer",
        CureBreach.Stop => "presses a stop deeper",
        CureBreach.Spoilt => FormattableString.Invariant(
            $"makes the {other} more than {In.Percent.Of(CureGuard.Spoilt):F0} % worse"),
        _ => "cannot stand or does not get across",
    };
}
