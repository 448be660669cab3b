using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>
/// The use cases of a study, and where their numbers stand in a row: settling and hit of each crossing, then the ride of each random road.
/// </summary>
internal sealed class ChooseUse
{
    // Below these of the car as it is nobody feels a difference, and its ratio is noise: 0.05° and 0.2 rad/s². Judged by eye, no source.
    private static readonly double LeastSettling = In.Degrees.ToSi(0.05);
    private const double LeastHit = 0.2;

    // A tyre that keeps more than nineteen parts of twenty of its load loses nothing anybody feels. Judged by eye, no source.
    private const double LeastLoadLost = 0.05;

    /// <param name="asked">What is asked.</param>
    public ChooseUse(ChooseAsked asked)
    {
        HasGrip = asked.RideSpeeds.Length > 0 && (asked.Limits.Grip is not null || asked.Wishes.Contains(ChooseWish.Grip));
        HasLoads = asked.Limits.LeastLoad is not null || asked.Wishes.Contains(ChooseWish.LoadLost);
        HasTravel = asked.Limits.BumpLeft is not null || asked.Limits.DroopLeft is not null;
        var sum = asked.Roads.Sum(road => road.Weight);
        Crossings =
        [
            .. from load in asked.Loads
               from road in asked.Roads
               from speed in road.Speeds
               select new ChooseCase(
                   load,
                   road,
                   speed,
                   Counts(road.Loads, load)
                       ? 1.0 / (road.Loads.IsEmpty ? asked.Loads.Length : road.Loads.Length) / (sum / road.Weight) / road.Speeds.Length
                       : 0.0,
                   $"{road.Name}, {Speed(speed)}, {load.Name}"),
        ];
        Rides =
        [
            .. from load in asked.Loads
               from speed in asked.RideSpeeds
               select new ChooseCase(
                   load,
                   null,
                   speed,
                   Counts(asked.RideLoads, load)
                       ? 1.0 / (asked.RideLoads.IsEmpty ? asked.Loads.Length : asked.RideLoads.Length) / asked.RideSpeeds.Length
                       : 0.0,
                   $"random road, {Speed(speed)}, {load.Name}"),
        ];
        Columns =
        [
            .. Crossings.Index().Where(one => one.Item.Weight > 0.0).SelectMany(one => new[]
            {
                new UseColumn(WishKind.Settling, 2 * one.Index, one.Item.Weight, LeastSettling, one.Item.Name),
                new UseColumn(WishKind.Hit, (2 * one.Index) + 1, one.Item.Weight, LeastHit, one.Item.Name),
            }),
            .. Rides.Index().Where(one => one.Item.Weight > 0.0)
                .Select(one => new UseColumn(WishKind.Ride, (2 * Crossings.Length) + one.Index, one.Item.Weight, 0.0, one.Item.Name)),
            .. Rides.Index().Where(one => HasGrip && one.Item.Weight > 0.0)
                .Select(one => new UseColumn(WishKind.Grip, FirstGrip + one.Index, one.Item.Weight, 0.0, one.Item.Name)),
            .. Crossings.Index().Where(one => HasLoads && one.Item.Weight > 0.0)
                .Select(one => new UseColumn(WishKind.LoadLost, FirstLoad + one.Index, one.Item.Weight, LeastLoadLost, one.Item.Name)),
        ];
    }

    // With the loads that a road does not count with it is driven all the same, so that nothing is told that is unsafe there.
    private static bool Counts(ImmutableArray<string> loads, LoadState load) => loads.IsEmpty || loads.Contains(load.Name);

    /// <summary>The crossings of obstacles.</summary>
    public ImmutableArray<ChooseCase> Crossings { get; }

    /// <summary>The random roads.</summary>
    public ImmutableArray<ChooseCase> Rides { get; }

    /// <summary>The numbers of all of them.</summary>
    public ImmutableArray<UseColumn> Columns { get; }

    /// <summary>Whether the tyre load on the random roads is asked for, a number for each of them behind their ride.</summary>
    public bool HasGrip { get; }

    /// <summary>Whether the least tyre load over the obstacles is asked for: a number for each of them at the end, what is lost of it.</summary>
    public bool HasLoads { get; }

    /// <summary>
    /// Whether the travel left is asked for: four numbers at the end, the least under any load of bump at front and rear and of droop at both, m.
    /// </summary>
    public bool HasTravel { get; }

    /// <summary>Where the bump travel that is left at the front stands; the other three behind it.</summary>
    public int FirstTravel => FirstLoad + (HasLoads ? Crossings.Length : 0);

    /// <summary>Where what is lost of the least tyre load stands, crossing by crossing.</summary>
    public IEnumerable<int> LoadLost => Enumerable.Range(FirstLoad, HasLoads ? Crossings.Length : 0);

    /// <summary>How many numbers a row has.</summary>
    public int Numbers => FirstTravel + (HasTravel ? ChooseTravel.Numbers : 0);

    private int FirstGrip => (2 * Crossings.Length) + Rides.Length;

    private int FirstLoad => FirstGrip + (HasGrip ? Rides.Length : 0);

    /// <summary>A speed in words.</summary>
    public static string Speed(double speed) => $"{SpeedRanges.Number(speed)} km/h";

    /// <summary>The same without those speeds over usual obstacles at which the car as it is does not get across under a load.</summary>
    /// <param name="asked">What is asked.</param>
    /// <exception cref="RefusedValueException">It gets across nothing, or not across all that was named.</exception>
    public static ChooseAsked Crossed(ChooseAsked asked)
    {
        RideModel[] models = [.. asked.Loads.Select(load => RideModel.Of(asked.Car, load))];
        if (!asked.IsUsualUse)
        {
            RefuseUncrossed(asked, models);
            return asked;
        }

        var (roads, left) = (ImmutableArray.CreateBuilder<ChooseRoad>(), ImmutableArray.CreateBuilder<string>());
        foreach (var road in asked.Roads)
        {
            bool IsAcross(RideModel model, double speed) => BatchedMeasures.Of(
                [new PassRequest(model, road.Road, speed)], Aims, BatchedMeasures.Usual, 1, CancellationToken.None)[0].All(double.IsFinite);
            bool Crosses(double speed) => models.All(model => IsAcross(model, speed));
            ImmutableArray<double> speeds = [.. road.Speeds.Where(Crosses)];
            left.AddRange(road.Speeds.Except(speeds).Select(speed => $"{road.Name} at {Speed(speed)}"
                + (models.FirstOrDefault(model => !IsAcross(model, speed)) is { } car ? $" ('{car.Load.Name}': {GaveOut(car, road, speed)})" : "")));
            if (!speeds.IsEmpty)
            {
                roads.Add(road with { Speeds = speeds });
            }
        }

        return roads.Count > 0
            ? asked with { Roads = roads.ToImmutable(), NotCrossed = left.ToImmutable() }
            : throw new RefusedValueException(
                "the car as it is", "not driven to the end over any of the usual obstacles", "driven to the end: everything is compared with it",
                "Name an obstacle and speeds at which it stays in range ('heaveline pass' says which).");
    }

    /// <summary>What gave out in a crossing that does not run to its end, a clause: what to do about a single one is no advice here.</summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">Speed, m/s.</param>
    public static string GaveOut(RideModel model, ChooseRoad road, double speed) => Studies.GaveOut.In(model, road.Road, speed);

    private static void RefuseUncrossed(ChooseAsked asked, RideModel[] models)
    {
        (RideModel Model, ChooseRoad Road, double Speed)[] all =
            [.. from model in models from road in asked.Roads from speed in road.Speeds select (model, road, speed)];
        var rows = BatchedMeasures.Of(
            [.. all.Select(one => new PassRequest(one.Model, one.Road.Road, one.Speed))], Aims, BatchedMeasures.Usual, 1, CancellationToken.None);
        if (Array.FindIndex(rows, row => !row.All(double.IsFinite)) is >= 0 and var at && all[at] is var (car, over, fast))
        {
            throw new RefusedValueException(
                "the car as it is", $"not driven to the end in '{over.Name}, {Speed(fast)}, {car.Load.Name}': {GaveOut(car, over, fast)}",
                "driven to the end: everything is compared with it", "Leave out that road, speed or load.");
        }
    }

    /// <summary>What is measured of a crossing for the wishes.</summary>
    public static IReadOnlyList<Measure<Pass>> Aims { get; } = [SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration];
}
