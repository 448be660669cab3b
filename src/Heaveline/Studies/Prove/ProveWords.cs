using Heaveline.Drives.Comparison;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>What before and after say, in words.</summary>
internal static class ProveWords
{
    /// <summary>A verdict for machines.</summary>
    public static string Word(ComparisonVerdict verdict) => verdict switch
    {
        ComparisonVerdict.TooFew => "too-few",
        ComparisonVerdict.NotAlike => "not-alike",
        ComparisonVerdict.Worked => "worked",
        ComparisonVerdict.FellLittle => "fell-little",
        ComparisonVerdict.NoDifference => "no-difference",
        ComparisonVerdict.RoseLittle => "rose-little",
        ComparisonVerdict.Worse => "worse",
        ComparisonVerdict.SitesDiffer => "sites-differ",
        _ => "cannot-say",
    };

    /// <summary>The verdict of the number that decides, with what it rests on.</summary>
    public static string Verdict(ProvedNumber proved)
    {
        var result = proved.Result;
        return result.Verdict switch
        {
            ComparisonVerdict.TooFew => TooFew(result),
            ComparisonVerdict.NotAlike => NotAlike(result),
            ComparisonVerdict.SitesDiffer => $"It did not do the same everywhere: {Name(proved)} {Apart(result)}; {Ground(result)}.",
            ComparisonVerdict.CannotSay =>
                $"It cannot be said yet whether it worked {At(result)}: {Name(proved)} {Changed(result.Pooled!)}, {Ground(result)}. {More(result)}",
            _ => $"{Start(result.Verdict)} {At(result)}: {Name(proved)} {Changed(result.Pooled!)}{Small(result)}, {Ground(result)}.",
        };
    }

    /// <summary>The verdict of the number beside it.</summary>
    public static string Beside(ProvedNumber proved)
    {
        var result = proved.Result;
        return result.Pooled is { } effect
            ? $"Beside it, {Name(proved)} {Changed(effect)}: {Short(result)}"
            : $"Of {Name(proved)} nothing can be said: {Plural(result.Before, "pass", "passes")} before and {result.After} after count.";
    }

    /// <summary>Of what share the intervals are; null where there are none.</summary>
    public static string? Intervals(BeforeAfter result) => result.Pooled is null
        ? null
        : $"Intervals are of {Percent(result.Settings.Confidence, 0)}{(result.Settings.Looks > 1 ? " at each of two looks" : "")}"
            + (result.AreApart ? "; those of each bump are wider, since bumps were found apart." : ".");

    /// <summary>How sure such passes make it.</summary>
    public static IEnumerable<string> Power(BeforeAfter result)
    {
        if (result.Pooled is null)
        {
            yield break;
        }

        var matters = Percent(result.Settings.Matters, 0);
        var needed = result.IsBeyondPasses ? "No number of passes as these would show it four times of five"
            : result.PassesNeeded is { } count ? Text($"{count} passes in each drive would show it four times of five")
            : "More than 200 passes in each drive would be needed to show it four times of five";
        var open = result.IsHeldByShared
            ? $": {LeftOpen(result)}, however many they are. Were the records beyond doubt, "
                + $"{(result.PassesByScatter is { } alone ? Plural(alone, "pass", "passes") : "more than 200 passes")} in each drive would. "
                + "A better speed record helps, and more bumps, whose delay between the axles checks it; speeds that match lessen the scatter."
            : ".";
        yield return Text($"One pass scatters by {Percent(result.Scatter)} about the others. A change by {matters} is found ")
            + Text($"by {100.0 * result.Power:F0} of 100 pairs of drives as these. {needed}{open}");
        if (result.AreApart && result.Verdict != ComparisonVerdict.SitesDiffer)
        {
            yield return Text($"It did not do as much everywhere ({Probability(result.ApartProbability!.Value)}): {Apart(result)}.");
        }
    }

    /// <summary>"6 passes" or "1 pass".</summary>
    public static string Plural(int count, string one, string many) =>
        InvariantText.Count(count, one, many);

    /// <summary>A share in per cent.</summary>
    public static string Percent(double share, int digits = 1) => Numeral.Of(In.Percent.Of(share), digits) + " %";

    /// <summary>"fell by 15.2 % (8.1…22.0)", or "changed by −1.0 % (−5.1…+3.2)" where the interval holds nothing.</summary>
    public static string Changed(EffectInterval effect)
    {
        string Plain(double share) => Numeral.Of(In.Percent.Of(share), 1);
        string Signed(double share) => Numeral.Change(In.Percent.Of(share), 1);
        return effect.High < 0.0 ? $"fell by {Percent(-effect.Value)} ({Plain(-effect.High)}…{Plain(-effect.Low)})"
            : effect.Low > 0.0 ? $"rose by {Percent(effect.Value)} ({Plain(effect.Low)}…{Plain(effect.High)})"
            : $"changed by {Signed(effect.Value)} % ({Signed(effect.Low)}…{Signed(effect.High)})";
    }

    /// <summary>"from 18 to 32 km/h".</summary>
    public static string Speeds(double slowest, double fastest) =>
        Text($"from {In.KilometresPerHour.Of(slowest):F0} to {In.KilometresPerHour.Of(fastest):F0} km/h");

    private static string Probability(double p) =>
        Numeral.Of(p, ProveTable.ProbabilityFormat) is var text && text.StartsWith('<') ? $"p {text}" : $"p = {text}";

    private static string Start(ComparisonVerdict verdict) => verdict switch
    {
        ComparisonVerdict.Worked => "It worked",
        ComparisonVerdict.FellLittle => "It did something, but less than matters,",
        ComparisonVerdict.RoseLittle => "It made things worse, but by less than matters,",
        ComparisonVerdict.Worse => "It made things worse",
        _ => "No difference that matters",
    };

    private static string Small(BeforeAfter result) =>
        result.Verdict is ComparisonVerdict.FellLittle or ComparisonVerdict.RoseLittle or ComparisonVerdict.NoDifference
            ? $" and {Percent(result.Settings.Matters, 0)} is the least that matters"
            : "";

    private static string Short(BeforeAfter result) => result.Verdict switch
    {
        ComparisonVerdict.Worked => "better.",
        ComparisonVerdict.Worse => "worse.",
        ComparisonVerdict.FellLittle or ComparisonVerdict.RoseLittle or ComparisonVerdict.NoDifference =>
            $"less than the {Percent(result.Settings.Matters, 0)} that matter.",
        ComparisonVerdict.SitesDiffer => "not the same everywhere.",
        _ => "no verdict yet.",
    };

    private static string Name(ProvedNumber proved) => proved.Name;

    private static string At(BeforeAfter result)
    {
        var sites = result.Sites.Where(s => s.Before > 0 && s.After > 0).Select(s => s.Site).ToList();
        return sites.Count == 1 ? $"at {sites[0]}" : Text($"over {sites.Count} bumps together ({string.Join(", ", sites)})");
    }

    private static string Ground(BeforeAfter result) =>
        $"{Speeds(result.Counted.Min(p => p.Speed), result.Counted.Max(p => p.Speed))}, {Plural(result.Before, "pass", "passes")} before, "
        + $"{Text($"{result.After}")} after";

    private static string More(BeforeAfter result)
    {
        var matters = Percent(result.Settings.Matters, 0);
        var enough = result.PassesNeeded <= Math.Min(result.Before, result.After);
        var open = result.IsHeldByShared && !enough ? LeftOpen(result) : null;
        return result.MorePasses is not { } more
            ? open is null
                ? $"Passes that scatter by {Percent(result.Scatter)} will not settle it: look for what differs from pass to pass."
                : $"More passes alone will not settle it: {open}."
            : enough
                ? $"There are passes enough for {matters}; were the change just what it looks like, {Wanted(result, more)} would settle it."
            : $"{Wanted(result, more)} would show {matters} four times of five{(open is null ? "" : $": {open}")}.";
    }

    // Where one drive has more passes already it needs fewer.
    private static string Wanted(BeforeAfter result, int more)
    {
        var all = Math.Min(result.Before, result.After) + more;
        return result.Before == result.After ? $"{Plural(more, "pass", "passes")} more in each drive"
            : Text($"{all} passes in each drive, {Math.Max(0, all - result.Before)} more before and {Math.Max(0, all - result.After)} more after,");
    }

    private static string LeftOpen(BeforeAfter result) =>
        $"what the speed records of the two drives leave open moves the change by ± {Percent(Math.Exp(result.SharedHalfWidth) - 1.0)} by itself";

    private static string Apart(BeforeAfter result) =>
        string.Join("; ", result.Sites.Where(s => s.Effect is not null).Select(s => $"at {s.Site} it {Changed(s.Effect!)}"));

    private static string NotAlike(BeforeAfter result) => result.RecordsApart is { } apart
        ? $"No verdict: by the delay between the axles the speed of the log after is {Percent(Math.Abs(apart), 0)} "
            + $"{(apart > 0.0 ? "higher" : "lower")} against the true one than that of the log before, and could not be set right. Two cars of "
            + "different wheelbases look the same: give each drive its own."
        : result.IsHiddenInSpeed
        ? "No verdict: in each drive all passes had nearly one speed, and not the same, so that what speed did is not told from what the change did."
        : "The two drives were not driven alike: " + string.Join("; ", result.Sites.Where(s => s.Before == 0 || s.After == 0 || !s.Speeds.IsAlike)
            .DefaultIfEmpty(result.Sites[0])
            .Select(s => $"{s.Site} before {Speeds(s.Speeds.Before.Slowest, s.Speeds.Before.Fastest)}, "
                + $"after {Speeds(s.Speeds.After.Slowest, s.Speeds.After.Fastest)}"))
            + Text($". {Plural(result.Before, "pass", "passes")} before and {result.After} after are at speeds of both. No verdict.");

    private static string TooFew(BeforeAfter result)
    {
        var passes = result.Counted.Concat(result.LeftOut.Where(p => !result.CrossedOnce.Contains(p.Site))).ToList();
        return Text(
            $"Too few passes over bumps that both drives crossed: {passes.Count(p => !p.IsAfter)} before, {passes.Count(p => p.IsAfter)} after; ")
            + Text($"{ComparisonSettings.LeastPasses} in each drive are the least. No verdict.");
    }
}
