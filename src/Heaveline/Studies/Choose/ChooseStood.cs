using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The car as it is under the loads of a study and under every other one, the empty car too: what setups are looked at against.</summary>
internal sealed class ChooseStood
{
    private ChooseStood(ChooseAsked asked, IReadOnlyList<CarAtRest> rests) => Standing = new(asked.Limits, rests);

    /// <summary>What must hold standing.</summary>
    public ChooseStanding Standing { get; }

    /// <summary>The loads that no use case has.</summary>
    public required ImmutableArray<LoadState> Others { get; init; }

    /// <summary>How it stands under each load of the use cases, then under the others.</summary>
    public required ImmutableArray<CureStance> Stances { get; init; }

    /// <summary>What it does over every obstacle under the others.</summary>
    public required ImmutableArray<double[]> OtherRows { get; init; }

    /// <summary>Loads under which it cannot stand or does not get across: nothing is driven under them.</summary>
    public required ImmutableArray<string> NotDriven { get; init; }

    /// <summary>Of a study.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="drive">Drives the car over every obstacle.</param>
    public static ChooseStood Of(ChooseAsked asked, Func<RideModel, double[][]> drive)
    {
        var (others, stances, rows, left) = (new List<LoadState>(), new List<CureStance>(), new List<double[]>(), new List<string>());
        CarAtRest[] own = [.. asked.Loads.Select(load => new CarAtRest(RideModel.Of(asked.Car, load)))];
        stances.AddRange(own.Select(rest => CureStance.Of(rest.Model)));
        foreach (var load in asked.Car.LoadStates.Append(LoadState.Reference).DistinctBy(load => load.Name))
        {
            if (asked.Loads.Any(one => one.Name == load.Name))
            {
                continue;
            }

            try
            {
                var model = RideModel.Of(asked.Car, load);
                var driven = drive(model);
                if (driven.All(row => double.IsFinite(row[0])))
                {
                    others.Add(load);
                    stances.Add(CureStance.Of(model));
                    rows.AddRange(driven);
                    continue;
                }
            }
            catch (RefusedValueException)
            {
                // It cannot stand under this load: said with those under which it does not get across.
            }

            left.Add(load.Name);
        }

        return new ChooseStood(asked, own) { Others = [.. others], Stances = [.. stances], OtherRows = [.. rows], NotDriven = [.. left] };
    }
}
