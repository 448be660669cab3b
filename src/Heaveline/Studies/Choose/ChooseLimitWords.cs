using Heaveline.Quantities;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>Limits and reasons against setups, in words.</summary>
internal static class ChooseLimitWords
{
    /// <summary>The limit on each use case.</summary>
    public static string WorstRoad(ChooseLimits limits) => $"no use case's settling more than {Share(limits.WorstRoad)} worse";

    /// <summary>The limit on the hit.</summary>
    public static string Hit(ChooseLimits limits) => $"the mean hit at most {Share(limits.Hit)} more";

    /// <summary>The limit on the grip.</summary>
    public static string Grip(double more) => $"the mean change of tyre load on the random road at most {Share(more)} more";

    /// <summary>The limit on the least tyre load.</summary>
    public static string LeastLoad(double least) =>
        $"least tyre load over the obstacles at least {Share(least)} of that at rest, or no less than now";

    /// <summary>A limit on travel, standing.</summary>
    /// <param name="what">Of what it is left.</param>
    /// <param name="limit">The limit.</param>
    public static string Travel(string what, ChooseTravelLimit limit)
    {
        string?[] axles =
        [
            limit.Front is { } front ? $"{Millimetres(front)} at the front" : null,
            limit.Rear is { } rear ? $"{Millimetres(rear)} at the rear" : null,
        ];
        return $"{what} left at least {string.Join(" and ", axles.OfType<string>())}, standing, under any load";
    }

    /// <summary>The limit that always holds of what may be chosen, held to a share of its own.</summary>
    public const string NeverMetal = "never metal to metal: across every obstacle at every speed, within the travel that stops and coils leave";

    /// <summary>What holds standing.</summary>
    public static IReadOnlyList<string> Standing(ChooseLimits limits) =>
    [
        $"roll in a bend at most {Share(limits.Roll)} more", $"pitch in braking at most {Share(limits.Braking)} more",
        FormattableString.Invariant($"beam's swing between loads at most {In.Percent.Of(limits.LampSwingInAll ?? limits.LampSwing):0.##} % ")
            + (limits.LampSwingInAll is null ? "of the distance more" : "of the distance in all"),
        .. limits.Cost is { } most ? new[] { $"at most {most}" } : [],
    ];

    /// <summary>Why a setup is none to choose, a clause.</summary>
    /// <param name="reason">The reason's number.</param>
    /// <param name="task">What was searched.</param>
    /// <param name="limits">The limits.</param>
    public static string Reason(int reason, SearchTask task, ChooseLimits limits) => reason switch
    {
        >= DrivenSetup.FirstLimit => $"breaks '{task.Limits[reason - DrivenSetup.FirstLimit].Says}'",
        (int)ChooseRefusal.Breach + (int)CureBreach.NoCrossing => "does not get across",
        >= (int)ChooseRefusal.Breach => CureBreachWords.Of((CureBreach)(reason - (int)ChooseRefusal.Breach), "hit").TrimEnd(','),
        (int)ChooseRefusal.Misfit => "does not fit",
        (int)ChooseRefusal.NoGrip => "has no tyre load to tell on the random road, which is too rough for it",
        (int)ChooseRefusal.CannotStand => "cannot stand under a load",
        (int)ChooseRefusal.Cost => $"costs more than {limits.Cost}",
        (int)ChooseRefusal.Roll => $"rolls more than {Share(limits.Roll)} more in a bend",
        (int)ChooseRefusal.Braking => $"pitches more than {Share(limits.Braking)} more in braking",
        (int)ChooseRefusal.LampSwing => $"swings the beam {(limits.LampSwingInAll is null ? "more" : "too far")} between loads",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "No such reason."),
    };

    private static string Millimetres(double length) => $"{Numeral.Of(In.Millimetres.Of(length), "0.##")} mm";

    private static string Share(double share) => $"{Numeral.Of(In.Percent.Of(share), "0.#")} %";
}
