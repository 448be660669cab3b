using System.Collections.Immutable;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Parts;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>
/// Where a refused setup does what no setup may do: of which stop, spring or wheel, over what, how fast, under which load; and why it does not get
/// across.
/// </summary>
/// <param name="asked">What is asked.</param>
/// <param name="parts">The setups.</param>
/// <param name="doer">Knows what is compared, and with what.</param>
/// <param name="found">What was searched.</param>
internal sealed class ChooseWhere(ChooseAsked asked, ChooseParts parts, ChooseDoer doer, FoundSetups found)
{
    // A setup that is refused standing was not driven: one is looked for among so many.
    private const long MostLooked = 20_000;

    /// <summary>Of a setup, without a full stop; null where the reason is of no place.</summary>
    /// <param name="one">The setup.</param>
    /// <param name="at">The place that is spoken of: its part need not be named again.</param>
    public string? Of(DrivenSetup one, PartPlace? at = null) => Of(one.Setup, one.Refusal, one.Row, at);

    /// <summary>For each reason against setups the same of one of them: of those driven that which settles least.</summary>
    public ImmutableDictionary<int, string> Instances()
    {
        var words = found.Driven.Where(one => !one.IsAllowed).GroupBy(one => one.Refusal).ToDictionary(
            same => same.Key,
            same => Of(same.OrderBy(one => double.IsNaN(one.Wishes[0]) ? double.PositiveInfinity : one.Wishes[0]).ThenBy(one => one.Setup).First()));
        HashSet<int> missing = [.. found.RefusedStanding.Keys.Where(reason => !words.ContainsKey(reason))];
        for (var setup = 1L; setup < Math.Min(found.Task.Space.Count, MostLooked) && missing.Count > 0; setup++)
        {
            if (found.Task.Standing(setup) is var reason && missing.Remove(reason))
            {
                words[reason] = Of(setup, reason, null);
            }
        }

        return words.Where(one => one.Value is not null).ToImmutableDictionary(one => one.Key, one => one.Value!);
    }

    private string? Of(long setup, int refusal, SetupRow? row, PartPlace? at = null)
    {
        if (refusal >= DrivenSetup.FirstLimit)
        {
            return found.Task.Limits[refusal - DrivenSetup.FirstLimit] is var limit && limit.Wish == WishKind.WorstRoad
                ? WorstCase(row)
                : parts.Fit(setup) is Fitted driven ? Travel(driven.Car, limit) : null;
        }

        return (parts.Fit(setup), (ChooseRefusal)refusal) switch
        {
            (Misfit misfit, ChooseRefusal.Misfit) when misfit.Place == at => misfit.Reason,
            (Misfit misfit, ChooseRefusal.Misfit) => $"{misfit.Part} as {misfit.Place.Name()}: {misfit.Reason}",
            (Fitted fitted, ChooseRefusal.CannotStand) => Standing(fitted),
            (Fitted fitted, ChooseRefusal.Roll) => Worst(fitted, ChooseStanding.Roll, asked.Limits.Roll),
            (Fitted fitted, ChooseRefusal.Braking) => Worst(fitted, ChooseStanding.Braking, asked.Limits.Braking),
            (Fitted fitted, >= ChooseRefusal.Breach) => Breach(fitted, (CureBreach)(refusal - (int)ChooseRefusal.Breach)),
            _ => null,
        };
    }

    private string? Travel(Cars.Car car, SetupLimit limit) => ChooseTravel.Broken(
        asked.Limits, limit, asked.Loads.Concat(doer.Stood.Others).Select(load => RideModel.Of(car, load)));

    private string? WorstCase(SetupRow? row)
    {
        if (row is not { IsDriven: true })
        {
            return null;
        }

        var (more, name) = found.Scores.Counted.Where(column => column.Kind == WishKind.Settling)
            .Select(column => (UseScores.Ratio(column, row, found.Present) - 1.0, column.Name)).Max();
        return $"'{name}' by {Numeral.Of(In.Percent.Of(more), 1)} %";
    }

    private string? Standing(Fitted fitted)
    {
        foreach (var load in asked.Loads.Concat(doer.Stood.Others))
        {
            try
            {
                _ = RideModel.Of(fitted.Car, load);
            }
            catch (RefusedValueException why)
            {
                return $"under '{load.Name}': {why.Message.TrimEnd('.')}";
            }
        }

        return null;
    }

    private string? Worst(Fitted fitted, Func<CarAtRest, double> of, double limit)
    {
        var (more, name) = asked.Loads.Select(load => (Before: new CarAtRest(RideModel.Of(asked.Car, load)), Load: load))
            .Where(one => !ChooseStanding.IsOnStops(one.Before))
            .Select(one => (of(At(fitted, one.Load)) / of(one.Before), one.Load.Name)).DefaultIfEmpty().Max();
        return more > 1.0 + limit ? $"under '{name}' by {Numeral.Of(In.Percent.Of(more - 1.0), 1)} %" : null;
    }

    // Over the roads under the loads that count, then standing, then over the roads under the other loads: as it was looked for.
    private string? Breach(Fitted fitted, CureBreach breach)
    {
        try
        {
            return Crossing(fitted, breach, asked.Loads) ?? Stance(fitted, breach) ?? Crossing(fitted, breach, doer.Stood.Others);
        }
        catch (RefusedValueException why)
        {
            return why.Message.TrimEnd('.');
        }
    }

    private string? Crossing(Fitted fitted, CureBreach breach, ImmutableArray<Cars.LoadState> loads)
    {
        foreach (var load in loads)
        {
            var (before, after) = (RideModel.Of(asked.Car, load), At(fitted, load).Model);
            foreach (var road in asked.Roads)
            {
                foreach (var speed in road.Speeds)
                {
                    var (kind, of) = doer.Guard.Found(Measured(before, road, speed), Measured(after, road, speed));
                    if (kind == breach)
                    {
                        var at = $"'{road.Name}, {ChooseUse.Speed(speed)}, {load.Name}'";
                        return kind == CureBreach.NoCrossing ? $"{at}: {ChooseUse.GaveOut(after, road, speed)}" : $"{of} in {at}";
                    }
                }
            }
        }

        return null;
    }

    private double[] Measured(RideModel model, ChooseRoad road, double speed) => BatchedMeasures.Of(
        [new PassRequest(model, road.Road, speed)], doer.Guard.Measured, BatchedMeasures.Usual, 1, CancellationToken.None)[0];

    private string? Stance(Fitted fitted, CureBreach breach) => asked.Loads.Concat(doer.Stood.Others)
        .Select(load => (load.Name, Found: CureStance.Of(At(fitted, load).Model).Found(CureStance.Of(RideModel.Of(asked.Car, load)))))
        .Where(one => one.Found.Breach == breach).Select(one => $"{one.Found.Of} under '{one.Name}'").FirstOrDefault();

    private static CarAtRest At(Fitted fitted, Cars.LoadState load) => new(RideModel.Of(fitted.Car, load));
}
