using Heaveline.Drives;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Events;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>Where a comparison of two drives must be doubted.</summary>
internal static class ProveCautions
{
    // Phones are put down again by eye: within this it is the same place.
    private static readonly double Moved = 5.0 / In.Degrees.Factor;

    /// <summary>A sentence each.</summary>
    public static IEnumerable<string> Of(ProveAnswer answer)
    {
        var result = answer.Main.Result;
        foreach (var odd in result.Odd)
        {
            yield return Text(
                $"Bump {odd.Pass.Number} {State(odd.Pass.IsAfter)} ({odd.Pass.Site}) lies {Math.Abs(odd.Distance):F1} standard errors ")
                + $"{(odd.Distance > 0.0 ? "above" : "below")} all others. It counts; look at it, and leave it out "
                + "only for a reason that you can name.";
        }

        foreach (var sentence in Names(answer))
        {
            yield return sentence;
        }

        foreach (var sentence in Strangers(answer))
        {
            yield return sentence;
        }

        foreach (var own in Wheelbases(answer))
        {
            yield return own;
        }

        PhonePlace?[] phones = [answer.Asked.OfBefore.Phone, answer.Asked.OfAfter.Phone];
        foreach (var sentence in phones.Distinct().SelectMany(PhoneWords.Unusual))
        {
            yield return sentence;
        }

        // Pitch is the same all over a stiff floor; the cars and the forecast go by the place.
        if (answer.Asked.WhatChanged || answer.Asked.Forecast is not null)
        {
            foreach (var sentence in Phones(answer))
            {
                yield return sentence;
            }
        }

        foreach (var (drive, name) in new[] { (answer.Before, "before"), (answer.After, "after") })
        {
            foreach (var caution in InstantWords.Cautions(drive.Events))
            {
                yield return $"Of the log {name}: {caution}";
            }

            if (FastHump.Caution(new SiteNames(answer.Matches, name == "after").Of(drive.Events), $" {name}", answer.Asked.Advice) is { } fast)
            {
                yield return fast;
            }

            if (!drive.Events.HasSpeed)
            {
                yield return $"The log {name} has no speed: that of each pass was guessed from how the car moved.";
            }

            if (drive.Drive.SpeedScale is { } scale)
            {
                yield return $"Of the log {name}: {scale.Said}";
            }

            if (drive.Trust.IsFolded)
            {
                yield return $"Vibration of the log {name} may have folded down: the hit is not compared.";
            }

            foreach (var caution in DriveWords.Cautions(drive.Drive, drive.Trust, answer.Asked.Advice))
            {
                yield return $"Of the log {name}: {caution}";
            }
        }

        if (Turned(answer.Before.Drive.Mount, answer.After.Drive.Mount) is { } angle && angle > Moved)
        {
            yield return Text($"The phone lay otherwise: turned by {In.Degrees.Of(angle):F0}° between the drives. ")
                + "Pitch is the same all over a stiff floor, if its place is as stiff as the first.";
        }

        foreach (var sentence in answer.Asked.Contradicted)
        {
            yield return sentence;
        }

        string[] open = [.. ProveAsked.Circumstances.Except(answer.Asked.Same)];
        if (open.Length > 0)
        {
            yield return $"Not said to be the same in both drives: {string.Join(", ", open)}. Each can do what the change is said to have done; "
                + $"{answer.Asked.Advice.Same}.";
        }
    }

    /// <summary>Which bumps of the two drives were taken for one, and what each drive calls them.</summary>
    public static IEnumerable<string> Names(ProveAnswer answer)
    {
        // Where the names are one, nothing needs to be said.
        SiteMatch[] placed = [.. answer.Matches.All.Where(m => m.Basis == SiteBasis.Position && m.Before.Name != m.After.Name)];
        if (placed.Length > 0)
        {
            yield return $"Bumps were taken for the same by where they lie: {string.Join("; ", placed.Select(m => Match(answer, m)))}.";
        }

        if (answer.Matches.All.Any(m => m.Basis == SiteBasis.Order))
        {
            yield return "Bumps were taken for the same by their order and likeness: "
                + string.Join("; ", answer.Matches.All.Where(m => m.Basis == SiteBasis.Order).Select(m => Match(answer, m)))
                + $". {answer.Asked.Advice.Sites}";
        }
    }

    // One sentence where neither says it.
    private static IEnumerable<string> Phones(ProveAnswer answer)
    {
        var (asked, advice) = (answer.Asked, answer.Asked.Advice);
        string[] before = [.. PhoneWords.Missing(asked.OfBefore, advice)], after = [.. PhoneWords.Missing(asked.OfAfter, advice)];
        return before.SequenceEqual(after) ? before
            : before.Select(said => $"Of the drive before: {said}").Concat(after.Select(said => $"Of the drive after: {said}"));
    }

    // One sentence where it is one of both drives.
    private static IEnumerable<string> Wheelbases(ProveAnswer answer)
    {
        var (asked, before, after) = (answer.Asked, answer.Before.File, answer.After.File);
        var (first, second) = (InstantWords.Wheelbase(asked.OfBefore, before), InstantWords.Wheelbase(asked.OfAfter, after));
        return first == second ? first is null ? [] : [first]
            : new[] { ("before", first), ("after", second) }.Where(said => said.Item2 is not null)
                .Select(said => $"Of the drive {said.Item1}: {said.Item2}");
    }

    private static IEnumerable<string> Strangers(ProveAnswer answer)
    {
        foreach (var (sites, name) in new[] { (answer.Matches.OnlyBefore, "before"), (answer.Matches.OnlyAfter, "after") })
        {
            var some = sites.Where(s => s.Kept > 1).ToList();
            if (some.Count > 0)
            {
                var names = new SiteNames(answer.Matches, name == "after");
                yield return $"Only the drive {name} crossed {string.Join(", ", some.Select(s => names.Of(s.Name)))}: not compared.";
            }
        }

        var left = answer.Main.Result.LeftOut.Count(p => !answer.Main.Result.CrossedOnce.Contains(p.Site));
        if (left > 0 && answer.Main.Result.Pooled is not null)
        {
            yield return left == 1
                ? "1 pass at a speed that only one drive has does not count."
                : Text($"{left} passes at speeds that only one drive has do not count.");
        }
    }

    private static string Match(ProveAnswer answer, SiteMatch match) => match.Before.Name == match.After.Name
        ? match.Name
        : $"{match.Before.Name} before, {match.After.Name} after";

    // The angle of the rotation that takes one mount to the other; null where a forward is not known.
    private static double? Turned(Mount before, Mount after)
    {
        if (before.Forward is not { } first || after.Forward is not { } second)
        {
            return null;
        }

        var trace = before.Up.Dot(after.Up) + first.Dot(second) + before.Up.Cross(first).Dot(after.Up.Cross(second));
        return Math.Acos(Math.Clamp(0.5 * (trace - 1.0), -1.0, 1.0));
    }

    private static string State(bool isAfter) => isAfter ? "after" : "before";
}
