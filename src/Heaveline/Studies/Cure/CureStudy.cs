using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Causes;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rides;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What would make a car pitch less over a road: single changes and pairs, each with its effect, its price and its chance.</summary>
public static class CureStudy
{
    // Shares of the work.
    private const double Ranked = 0.3;
    private const double Searched = 0.8;

    /// <summary>What is to be less.</summary>
    public static Choice Aim { get; } = new()
    {
        Name = "measure",
        Kind = ChoiceKind.Word,
        Says = $"What is to be less: {Settling} ({SettlingCatalogue.RmsPitch.Name}) or {Hit} ({HitCatalogue.PeakPitchAcceleration.Name}); "
            + "on a road without an obstacle the pitch of all of it, or its acceleration.",
        HelpName = "MEASURE",
        Usual = Settling,
        Words = [Settling, Hit],
        WordIs = "measure",
    };

    /// <summary>The random road on which the price in ride and grip is told: a road as most are.</summary>
    internal static NamedSpectrum Ordinary { get; } = NamedSpectrum.Of(RoadClass.All.Single(one => one.Letter == 'C'));

    private static readonly Choice Samples = Choices.Samples(200) with
    {
        Says = "How many cars to draw within the stated doubts, 10 to 100000.",
        Range = (10, 1e5),
    };

    private static readonly Choice Seed = Choices.Seed();

    private const string Settling = "settling";

    private const string Hit = "hit";

    /// <summary>The question as a command offers it.</summary>
    public static Question<CureAsked, CureAnswer> Question { get; } = new()
    {
        Word = "cure",
        Says =
            """
            Say what would make a car pitch less over a road: springs, dampers, stops and an interconnection turned one by one and in pairs, each
            no farther than it needs, with what it takes off, its price and its chance within the stated doubts. Nothing is told that lifts a
            wheel, presses a stop deeper, lets coils touch, brings a spring loose, meets a stop too soon in braking, accelerating or cornering,
            or takes an axle's damping ratio out of 0.20 to 0.50, under any load of the car.

            Examples:
              heaveline cure examples/garage/fern-saloon.yaml --load "four up with luggage" --speed "40 km/h"
              heaveline cure examples/garage/fern-saloon.yaml --road speed-table --measure hit --all
            """,
        Choices = [Choices.Car, Choices.Road, Choices.Speed, Choices.Load, Aim, Samples, Seed],
        IsShortened = true,
        HasFigure = false,
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Looks for cures.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so.</exception>
    /// <exception cref="RunFailedException">Its own pass does not run to its end.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static CureAnswer Run(CureAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var (car, model) = (asked.Car.Car, asked.Car.Model);
        var why = Why.Of(
            model, asked.Road, asked.Speed, null, run.Degree, run.Between(0.0, Ranked).Progress, run.Cancellation);
        var guard = CureGuard.Of(model, asked.Road, asked.Aim);
        ImmutableArray<PassAnswer> described = [.. Crossings(asked, asked.Car, Loads(asked.Car), run)];
        ImmutableArray<LoadState> loads = [.. described.Select(pass => pass.Model.Load)];
        var (trials, left, passes) = CureSearch.Of(
            asked, loads, guard, trial => Against(asked, described, trial, guard, run), run.Between(Ranked, Searched));
        var full = NeutralLoad.Heaviest(loads);
        var aim = guard.Measured[0];
        Cure[] cures =
        [
            .. trials.Select(trial => new Cure
            {
                Words = trial.Words,
                Act = string.Join(" and ", trial.Turns.Select(turn => turn.Act)),
                End = trial.End,
                Values = trial.Values,
                Car = Cured(trial),
                Passes = [.. Crossings(asked, Cured(trial), loads, run)],
                Full = new CarAtRest(trial.ModelOf(car, full)!),
                Ride = Ride(asked, trial.ModelOf(car, asked.Car.Load)!, run),
            }).Where(cure => cure.Passes.Count == loads.Length).OrderBy(cure => aim.Of(cure.Passes[0].Pass)),
        ];
        run.Progress?.Report(0.9);
        var chances = CureChance.Of(asked, [.. cures.Select(cure => cure.Car)], guard, run);
        run.Progress?.Report(1.0);
        cures = [.. cures.Select((cure, k) => cure with { Chance = chances?[k] })];
        // What helps in too few of the drawn cars is none.
        var vain = cures.Where(cure => cure.Chance is { IsCure: false }).Select(cure => new CureLeft(cure.Act, null) { Chance = cure.Chance });
        Cure[] kept = [.. cures.Where(cure => cure.Chance is not { IsCure: false })];
        return new CureAnswer
        {
            Asked = asked,
            Why = why,
            Measure = aim,
            Other = guard.Measured[1],
            Described = described,
            Uncrossed = [.. Loads(asked.Car).Select(load => load.Name).Except(loads.Select(load => load.Name))],
            Full = new CarAtRest(RideModel.Of(car, full)),
            Ride = Ride(asked, model, run),
            Tried = passes,
            Left = [.. left, .. vain],
            AreDoubtsStated = chances is not null,
            Cures = [.. kept.Select((cure, k) => cure with { Car = cure.Car with { Name = CureAnswer.Named(k) } })],
        };

        LoadedCar Cured(CureTrial trial) => Turned(asked, trial);
    }

    private static LoadedCar Turned(CureAsked asked, CureTrial trial) => new(trial.Words, trial.Of(asked.Car.Car), asked.Car.Load);

    // By the passes whose numbers are told: the bar and the price are of the same ones.
    private static CureEnd? Against(
        CureAsked asked, ImmutableArray<PassAnswer> described, CureTrial trial, CureGuard guard, StudyRun run)
    {
        PassAnswer[] passes = [.. Crossings(asked, Turned(asked, trial), [.. described.Select(pass => pass.Model.Load)], run)];
        if (passes.Length < described.Length)
        {
            var missing = described.First(was => passes.All(now => now.Model.Load.Name != was.Model.Load.Name));
            return CureCrossing.Told(
                asked, trial, new CureEnd(CureBreach.NoCrossing, missing.Model.Load.Name, ""), described.Select(was => was.Model.Load),
                run.Cancellation);
        }

        return described.Zip(passes, (was, now) => new CureEnd(guard.Breach(was.Pass, now.Pass), was.Model.Load.Name, ""))
            .FirstOrDefault(end => end.Breach != CureBreach.None);
    }

    // The load asked about, then the car's others and the car empty, which no file need name.
    private static IReadOnlyList<LoadState> Loads(LoadedCar car) =>
        [car.Load, .. car.Car.LoadStates.Append(LoadState.Reference).DistinctBy(load => load.Name).Where(load => load.Name != car.Load.Name)];

    // As the command 'pass' tells them; without those loads under which the car cannot stand or does not get across.
    private static IEnumerable<PassAnswer> Crossings(CureAsked asked, LoadedCar car, IReadOnlyList<LoadState> loads, StudyRun run)
    {
        foreach (var load in loads)
        {
            PassAnswer crossing;
            try
            {
                crossing = PassStudy.Run(
                    new PassAsked { Car = car with { Load = load }, Road = asked.Road, Speed = asked.Speed }, run);
            }
            catch (RefusedValueException) when (load != asked.Car.Load)
            {
                continue;
            }

            if (crossing.IsWhole)
            {
                yield return crossing;
            }
        }
    }

    private static CarOnRoad? Ride(CureAsked asked, RideModel model, StudyRun run) =>
        RandomResponse.Of(model, Ordinary.Spectrum, asked.Speed, cancellation: run.Cancellation) is { Outcome: not RandomOutcome.NotConverged } ridden
            ? new CarOnRoad(ridden)
            : null;

    private static CureAsked? Read(AskedReader reader)
    {
        var speed = reader.Speed(Choices.Speed);
        var aim = reader.Word(Aim);
        var draws = reader.Whole(Samples);
        var seed = reader.Seed(Seed);
        var road = reader.Road(Choices.Road);
        var car = reader.Car(Choices.Car, Choices.Load);
        return reader.IsRefused
            ? null
            : new CureAsked
            {
                Car = car!,
                Road = road!,
                Speed = speed!.Value,
                Aim = aim == Hit ? CureAim.Hit : CureAim.Settling,
                Draws = draws!.Value,
                Seed = seed!.Value,
            };
    }
}
