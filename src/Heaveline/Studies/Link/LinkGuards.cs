using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What a link that is tried on a car does that no cure may do, against the car as its file has it.</summary>
internal static class LinkGuards
{
    private static readonly AxleEnd[] Ends = [AxleEnd.Front, AxleEnd.Rear];

    /// <summary>All of it, standing and over the hump, a sentence each; empty where no other link is tried.</summary>
    /// <param name="asked">What was asked.</param>
    /// <param name="hump">The obstacle in words.</param>
    /// <param name="crossings">The crossings.</param>
    public static IReadOnlyList<string> Cautions(LinkAsked asked, string hump, IReadOnlyList<LinkCrossing> crossings)
    {
        if (asked.Before is not { } before)
        {
            return [];
        }

        return [.. Standing(before, asked.Car), .. Crossed(asked.Road, hump, crossings)];
    }

    /// <summary>What to check on the real car once the link is in.</summary>
    /// <param name="asked">What was asked.</param>
    public static IReadOnlyList<Sentence> Reminders(LinkAsked asked) => asked.Before is not { } before ? [] : ChangeReminders.Of(
        before.Car,
        asked.Car.Car,
        SideEffectsChange.Between(new CarAtRest(before.Model).SideEffects, new CarAtRest(asked.Car.Model).SideEffects));

    // Under every load: a link that suits the car with its driver may leave it too little damping with all that it carries.
    private static IEnumerable<string> Standing(LoadedCar before, LoadedCar after)
    {
        var worse = new List<(CureBreach Breach, string Where)>();
        var damped = new List<(bool IsWeak, bool WasOut, string Told)>();
        foreach (var load in new[] { after.Load }.Concat(after.Car.LoadStates).Append(LoadState.Reference).DistinctBy(load => load.Name))
        {
            if (Model(before.Car, load) is not { } was)
            {
                continue;
            }

            if (Model(after.Car, load) is not { } now)
            {
                worse.Add((CureBreach.NoCrossing, $"under '{load.Name}'"));
                continue;
            }

            var (rest, stands) = (new CarAtRest(was), new CarAtRest(now));
            damped.AddRange(Ends.Where(end => !CureGuard.IsDamped(rest, stands, end)).Select(end => (
                stands.DampingRatio(end) < CureGuard.LeastDamping,
                rest.DampingRatio(end) is < CureGuard.LeastDamping or > CureGuard.MostDamping,
                $"the {CornerNames.Of(end)}'s from {Ratio(rest, end)} to {Ratio(stands, end)} under '{load.Name}'")));
            worse.AddRange(CureStance.Of(now).All(CureStance.Of(was)).Where(one => one.Breach != CureBreach.Damping)
                .Select(one => (one.Breach, $"{one.Of} under '{load.Name}'")));
        }

        // What was out already is moved farther out, and a weak end wants other help than a strong one.
        foreach (var group in damped.GroupBy(one => (one.IsWeak, one.WasOut)))
        {
            yield return $"The link takes an axle's damping ratio {(group.Key.WasOut ? "farther out" : "out")} of "
                + $"{Numeral.Of(CureGuard.LeastDamping, "F2")} to {Numeral.Of(CureGuard.MostDamping, "F2")} (common practice, no source), "
                + $"{string.Join("; ", group.Select(one => one.Told))}: "
                + (group.Key.IsWeak
                    ? "it adds stiffness without as much damping. Give it a damper, or a softer spring."
                    : "it adds more damping than stiffness. Give it a weaker damper.");
        }

        foreach (var group in worse.GroupBy(one => one.Breach))
        {
            yield return $"Standing, the car with this link {CureBreachWords.Of(group.Key, "").TrimEnd(',')}: "
                + $"{string.Join("; ", group.Select(one => one.Where))}.";
        }
    }

    private static string Ratio(CarAtRest car, AxleEnd end) => Numeral.Of(car.DampingRatio(end), "F3");

    private static RideModel? Model(Car car, LoadState load)
    {
        try
        {
            return RideModel.Of(car, load);
        }
        catch (RefusedValueException)
        {
            // Told as what cannot stand.
            return null;
        }
    }

    // The same of several speeds in one sentence.
    private static IEnumerable<string> Crossed(Road road, string hump, IReadOnlyList<LinkCrossing> crossings)
    {
        var guard = CureGuard.Of(crossings[0].With.Model, road, CureAim.Settling);
        var broken = crossings
            .Where(c => c.IsPipeCounted && c is { Before.Outcome: PassOutcome.Completed, With.Outcome: not PassOutcome.Completed }).ToList();
        if (broken.Count > 0)
        {
            yield return $"Over the {hump}, at {Speeds(broken)}, the car with this link does not get across, which it does without.";
        }

        // Where the pipe is not counted the pass is that of a wider one and blames this one for nothing: the answer says so there.
        var worse = from crossing in crossings
                    where crossing.IsPipeCounted && crossing is { Before.Outcome: PassOutcome.Completed, With.Outcome: PassOutcome.Completed }
                    let was = guard.Measured.Select(measure => measure.Of(crossing.Before!)).ToArray()
                    let now = guard.Measured.Select(measure => measure.Of(crossing.With)).ToArray()
                    from one in guard.Worse(was, now)
                    let measure = guard.Measured[one.Measure]
                    select (one.Breach, crossing.SpeedWords, Told: $"{measure.Label} {measure.Print(measure.Unit.Of(was[one.Measure]))} → "
                        + $"{measure.Print(measure.Unit.Of(now[one.Measure]))}{measure.Unit.Suffix} at {crossing.SpeedWords} km/h");
        foreach (var group in worse.GroupBy(one => one.Breach))
        {
            yield return $"Over the {hump}, the car with this link {CureBreachWords.Of(group.Key, "")}: "
                + $"{string.Join("; ", group.Select(one => one.Told))}.";
        }
    }

    private static string Speeds(IReadOnlyList<LinkCrossing> some) => $"{SpeedRanges.And([.. some.Select(c => c.SpeedWords)])} km/h";
}
