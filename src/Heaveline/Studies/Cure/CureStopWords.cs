using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>When a stop is first met before and after, in words.</summary>
internal static class CureStopWords
{
    // What is left to a stop that the car has just come off is told to a tenth of a millimetre.
    private const int Digits = 1;

    /// <summary>
    /// When a stop is first met in braking, accelerating and cornering, each under the load at which that is soonest of those under which it changes;
    /// null where it changes under none. A load under which it is sooner and stays so is named beside it.
    /// </summary>
    /// <param name="loads">Each load, with the car as described and the car with the change under it.</param>
    public static string? Of(IReadOnlyList<(string Load, CureStance Was, CureStance Now)> loads)
    {
        string[] told =
        [
            .. from k in Enumerable.Range(0, loads[0].Was.FirstStops.Count)
               let changed = loads.Where(one => CureStance.Print(At(one.Was, k)) != CureStance.Print(At(one.Now, k))).ToArray()
               where changed.Length > 0
               let worst = changed.MinBy(one => At(one.Now, k))
               select $"in {worst.Was.FirstStops[k].Doing} {Of(worst.Was, worst.Now, k)} under '{worst.Load}'{Sooner(loads, k, At(worst.Now, k))}",
        ];
        return told.Length == 0 ? null : $"a stop is first met, by the slope at rest: {string.Join("; ", told)}";
    }

    // What changes is not the soonest that there is: the reader's limit is the other.
    private static string Sooner(IReadOnlyList<(string Load, CureStance Was, CureStance Now)> loads, int k, double at)
    {
        var soonest = loads.MinBy(one => At(one.Now, k));
        return At(soonest.Now, k) >= at || CureStance.Print(At(soonest.Now, k)) == CureStance.Print(at) ? ""
            : At(soonest.Now, k) > 0.0 ? $", soonest under '{soonest.Load}', {CureStance.Print(At(soonest.Now, k))} as before"
            : $", and under '{soonest.Load}' it stands on one as before";
    }

    private static double At(CureStance stance, int k) => stance.FirstStops[k].At;

    /// <summary>"0.62 g → 0.58 g", or how a car comes off the stop that it stood on.</summary>
    /// <param name="was">The car as described.</param>
    /// <param name="now">The car with the cure, under the same load.</param>
    /// <param name="k">Which of <see cref="CureStance.FirstStops"/>.</param>
    public static string Of(CureStance was, CureStance now, int k)
    {
        var (before, after) = (was.FirstStops[k].At, now.FirstStops[k].At);
        if (before > 0.0)
        {
            return $"{CureStance.Print(before)} → {CureStance.Print(after)}";
        }

        var free = now.FreeBy(was) is { } left ? $"comes free by {Numeral.Of(In.Millimetres.Of(left), Digits)} mm and " : "";
        return $"it stands on one as described; {free}meets {(double.IsFinite(after) ? $"it at {CureStance.Print(after)}" : "none below 1 g")}";
    }
}
