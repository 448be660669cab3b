using System.Globalization;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>What must be said beside the numbers of a standing car.</summary>
public static class DescribeNotes
{
    /// <summary>Id of the sentence on the trade's rule of loads.</summary>
    public const string LoadRuleId = "load-rule";

    /// <summary>Id of the sentence on the speed that a ratio suits.</summary>
    public const string SuitedSpeedId = "suited-speed";

    /// <summary>How the ids of the sentences on the body modes begin.</summary>
    public const string BodyModesId = "body-modes";

    /// <summary>The notes, a sentence or two each.</summary>
    /// <param name="rests">One car under each load state; at least one.</param>
    public static IEnumerable<Sentence> Of(IReadOnlyList<CarAtRest> rests)
    {
        ArgumentNullException.ThrowIfNull(rests);
        return All(rests);
    }

    private static IEnumerable<Sentence> All(IReadOnlyList<CarAtRest> rests)
    {
        var model = rests[0].Model;
        foreach (var sentence in SwapWords.Of([.. rests.Select(r => r.Model)]).Concat(CoilWords.Of(model, troubleOnly: false)))
        {
            yield return sentence;
        }

        var ends = rests.Select(r => Coincidence.Of(r.Model)).ToList();
        foreach (var (rest, pace) in rests.Zip(ends))
        {
            var (load, ratio) = (rest.Model.Load.Name, AxleCatalogue.FrequencyRatio.Of(rest));
            if (ratio < 1.0)
            {
                yield return new($"rear-softer-{load.Replace(' ', '-')}", string.Create(
                    CultureInfo.InvariantCulture,
                    $"Under '{load}' the rear rides softer than the front (ratio {ratio:F3})")
                    + (pace.FallsIntoStep ? "." : ": after a bump it cannot catch up with the front."));
            }
        }

        foreach (var rest in rests)
        {
            foreach (var end in StandingStops.Of(rest.Model))
            {
                yield return new($"{CornerNames.Of(end)}-on-bump-stop-{rest.Model.Load.Name.Replace(' ', '-')}",
                    $"Under '{rest.Model.Load.Name}' the {CornerNames.Of(end)} stands on its bump stops: rate, frequency and ratio there are the "
                    + "stops' as much as the springs'.");
            }
        }

        foreach (var rest in rests)
        {
            foreach (var end in StandingStops.Hanging(rest.Model))
            {
                yield return new($"{CornerNames.Of(end)}-on-rebound-stop-{rest.Model.Load.Name.Replace(' ', '-')}",
                    $"Under '{rest.Model.Load.Name}' the {CornerNames.Of(end)} stands with its rebound stops stretched: rate, frequency and ratio "
                    + "there are the stops' as much as the springs'.");
            }
        }

        foreach (var end in SpringTableEnd.Standing([.. rests.Select(r => r.Model)]))
        {
            var axle = CornerNames.Of(end.End);
            yield return new($"{axle}-spring-table", $"The table of the {axle} spring {end.WordsStanding}. {SpringTableEnd.Advice}");
        }

        // With some of its loads alone nobody knows which is the lightest and which the greatest.
        if (rests.Count(r => r.Model.Load.Loads.Count > 0) == model.Car.LoadStates.Count && LoadRule.Of(rests) is { } rule)
        {
            var pressed = rests.FirstOrDefault(r =>
                StandingStops.Of(r.Model).Any() && (r.Model.Load == rule.Lightest || r.Model.Load == rule.Heaviest));
            yield return new(LoadRuleId, pressed is null
                ? Words(rule)
                : "The trade's load rule (common practice, no source) is of springs: of a car that stands on its bump stops, as this one does "
                    + $"under '{pressed.Model.Load.Name}', it says nothing.");
        }

        yield return new(SuitedSpeedId, SuitedSpeed(rests, ends));
        foreach (var rest in rests)
        {
            var load = rest.Model.Load.Name;
            yield return new($"{BodyModesId}-{load.Replace(' ', '-')}",
                $"Under '{load}': first body mode, {BodySwings.Clause(rest.Modes.First)}; second, {BodySwings.Clause(rest.Modes.Second)}.");
        }

        yield return new($"{BodyModesId}-rule", BodySwings.Rule);
        yield return new("definitions",
            "Ride frequencies: both wheels of the axle move, the other axle is held, the tyre in series; anti-roll bars do not count. "
            + "Damping ratio: c/(2√(k·m)) with the suspension's rate and the sprung mass on the axle.");
        if (AxleRide.Of(model, AxleEnd.Front).RatesShut is not null)
        {
            yield return new("line",
                "The fluid line gives way at each frequency as far as its fluid can follow there; with the line shut is what a blow feels. Roll rate "
                + "and deflections of loads: the line at one pressure.");
        }

        if (model.Car.Body.PitchAxisHeight is null || model.Car.Body.RollAxisHeight is null)
        {
            yield return new("no-tilting-moment", "Gravity's tilting moment is left out where the car file gives no pitch or roll axis height.");
        }

        if (model.Car.Body.PitchInertia is null)
        {
            yield return new("estimated-pitch-inertia",
                model.Car.Body.DynamicIndex == InertiaEstimate.DynamicIndex
                    ? $"The pitch inertia comes from a dynamic index of {model.Car.Body.DynamicIndex} in the reference state, "
                        + "taken from 204 road vehicles (quartiles 0.927, 0.998, 1.078, range 0.816–1.298; two-wheelers are not among them)."
                    : $"The pitch inertia comes from the dynamic index that the car file states, {model.Car.Body.DynamicIndex} in the reference "
                        + "state.");
        }
    }

    private static string Words(LoadRule rule)
    {
        static string Share(double share) =>
            string.Create(CultureInfo.InvariantCulture, $"{In.Percent.Of(share):F0} % (ratio {LoadRule.Ratio(share):F2})");
        var asks = $"The rule (common practice, no source): {Share(LoadRule.LightShare)} under the lightest load, "
            + $"{Share(LoadRule.HeavyShare)} under the greatest; by effective static deflection, ratios on rigid tyres.";
        var light = LoadRule.Verdict(rule.Light, LoadRule.LightShare);
        var stands = $"The rear springs are pressed to {Share(rule.Light)} of the front ones under '{rule.Lightest.Name}'";
        if (!rule.HasTwo)
        {
            return $"{stands}, the only load: {Verdict(light)}. {asks}";
        }

        var heavy = LoadRule.Verdict(rule.Heavy, LoadRule.HeavyShare);
        return $"{stands} and to {Share(rule.Heavy)} under '{rule.Heaviest.Name}': "
            + (light == heavy ? $"{Verdict(light)} under both." : $"{Verdict(light)} under the first, {Verdict(heavy)} under the second.")
            + $" {asks}";
    }

    private static string Verdict(int side) => side switch
    {
        > 0 => "softer than the trade's load rule asks",
        < 0 => "stiffer than the trade's load rule asks",
        _ => "as the trade's load rule asks, within 3 %",
    };

    private static string SuitedSpeed(IReadOnlyList<CarAtRest> rests, IReadOnlyList<Coincidence> ends)
    {
        string[] alike =
        [
            .. rests.Zip(ends).Where(p => p.Second.SpeedFor(Coincidence.SuitedCycles) > Coincidence.FastestTold)
                .Select(p => $"'{p.First.Model.Load.Name}'"),
        ];
        return "Which speed a frequency ratio suits depends on the obstacle and on what is judged: the map of the rule shows it for each obstacle."
            + (alike.Length == 0
                ? ""
                : $" Under {string.Join(" and ", alike)} front and rear swing at so nearly the same pace that, were the car linear, its ends would "
                    + "fall into step at no speed up to 150 km/h.");
    }
}
