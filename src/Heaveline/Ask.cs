using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline;

/// <summary>
/// The library's door. Each member asks the question of the command of its name and is told what that command says; cars, loads and roads are records
/// that the caller makes. Everything runs on the caller's thread.
/// </summary>
public static class Ask
{
    /// <summary>How a car stands and swings empty and under each of its load states, a column for each.</summary>
    /// <param name="car">The car.</param>
    /// <exception cref="RefusedValueException">It cannot stand under one of them.</exception>
    public static Reply Describe(Car car) => new(DescribeStudy.Question.Word, DescribeStudy.Run(DescribeAsked.Of(car)));

    /// <summary>What happens when a car drives over a road at a constant speed.</summary>
    /// <param name="car">The car.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">The speed, 0.5 to 120 m/s.</param>
    /// <param name="load">What is in the car; null: its first load state, as at the command line; <see cref="LoadState.Reference"/>: nothing.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so, or cannot be driven so.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static PassReply Pass(
        Car car, Road road, Amount<Velocity> speed, LoadState? load = null, CancellationToken cancellation = default) =>
        new(
            PassStudy.Question.Word,
            PassStudy.Run(new PassAsked { Car = Loaded(car, load), Road = road, Speed = speed.Si }, Until(cancellation)));

    /// <summary>Cars over one road at one speed, a column for each.</summary>
    /// <param name="cars">The cars, at least two, each with a name of its own.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">The speed, 0.5 to 120 m/s.</param>
    /// <param name="load">What is in each of them; null: each one's first load state; <see cref="LoadState.Reference"/>: nothing.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">A car cannot stand so, or cannot be driven so; fewer than two cars, or two of one name.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Reply Compare(
        IEnumerable<Car> cars, Road road, Amount<Velocity> speed, LoadState? load = null, CancellationToken cancellation = default) =>
        new(
            CompareStudy.Question.Word,
            CompareStudy.Run(
                new CompareAsked { Cars = Apart(cars, load), Road = road, Speeds = [speed.Si] },
                Until(cancellation)));

    /// <summary>How a car rides on a random road of a class, in the frequency domain.</summary>
    /// <param name="car">The car.</param>
    /// <param name="road">The class of the road.</param>
    /// <param name="speeds">The speeds, rising, each 0.5 to 120 m/s.</param>
    /// <param name="load">What is in the car; null: its first load state, as at the command line; <see cref="LoadState.Reference"/>: nothing.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so; no speed.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Reply Ride(
        Car car, RoadClass road, IEnumerable<Amount<Velocity>> speeds, LoadState? load = null, CancellationToken cancellation = default) =>
        new(
            RideStudy.Question.Word,
            RideStudy.Run(
                new RideAsked { Cars = [Loaded(car, load)], Road = NamedSpectrum.Of(road), Speeds = [.. speeds.Select(s => s.Si)] },
                Until(cancellation)));

    /// <summary>Why a car pitches over a road: each cause with its share and, where a load can show it, a planned road test.</summary>
    /// <param name="car">The car.</param>
    /// <param name="road">A road with one obstacle.</param>
    /// <param name="speed">The speed, 0.5 to 120 m/s.</param>
    /// <param name="load">What is in the car; null: its first load state, as at the command line; <see cref="LoadState.Reference"/>: nothing.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so.</exception>
    /// <exception cref="NoAnswerException">Its pass does not run to its end: where it breaks off, why and what to do.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Reply Why(
        Car car, Road road, Amount<Velocity> speed, LoadState? load = null, CancellationToken cancellation = default) =>
        new(
            WhyStudy.Question.Word,
            WhyStudy.Run(new WhyAsked { Car = Loaded(car, load), Road = road, Speed = speed.Si }, Until(cancellation)));

    /// <summary>Where a rule of the trade holds for a car from 20 to 120 km/h, judged by the settling.</summary>
    /// <param name="car">The car.</param>
    /// <param name="road">A road with one obstacle.</param>
    /// <param name="rule">Word of the rule: ratio, damping, index, wheelbase, wheelbase-same-body, shared-springs or shared-damping.</param>
    /// <param name="load">What is in the car; null: its first load state, as at the command line; <see cref="LoadState.Reference"/>: nothing.</param>
    /// <param name="cancellation">Stops the work, which is hundreds of passes.</param>
    /// <exception cref="RefusedValueException">No such rule; the car cannot stand so; a road without an obstacle.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Reply Rule(Car car, Road road, string rule = "ratio", LoadState? load = null, CancellationToken cancellation = default) =>
        new(
            RuleStudy.Question.Word,
            RuleStudy.Run(new RuleAsked { Car = Loaded(car, load), Road = road, Rule = TradeRule.Of(rule) }, Until(cancellation)));

    /// <summary>How sure the numbers of a standing car are, from the doubts of its measurements.</summary>
    /// <param name="car">The car, with its doubts.</param>
    /// <param name="load">What is in it; null: its first load state; <see cref="LoadState.Reference"/>: nothing.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Reply Doubt(Car car, LoadState? load = null, CancellationToken cancellation = default) =>
        new(DoubtStudy.Question.Word, DoubtStudy.Run(new DoubtAsked { Car = Loaded(car, load) }, Until(cancellation)));

    /// <summary>What a change costs elsewhere: roll, dive, squat, height, travel, stress, headlamp; a column before and one after.</summary>
    /// <param name="before">The car before the change.</param>
    /// <param name="after">The car after it.</param>
    /// <param name="load">What is in both; null: each one's first load state; <see cref="LoadState.Reference"/>: nothing.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">A car cannot stand so; both bear one name.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Reply Cost(Car before, Car after, LoadState? load = null, CancellationToken cancellation = default) =>
        new(
            CostStudy.Question.Word,
            CostStudy.Run(new CostAsked { Cars = Apart([before, after], load) }, Until(cancellation)));

    // The command takes the same load where none is named.
    private static LoadedCar Loaded(Car car, LoadState? load)
    {
        ArgumentNullException.ThrowIfNull(car);
        return LoadedCar.Of(car, load ?? LoadedCar.UsualLoad(car));
    }

    // Columns are known by the names of their cars.
    private static ImmutableArray<LoadedCar> Apart(IEnumerable<Car> cars, LoadState? load)
    {
        ImmutableArray<LoadedCar> loaded = [.. cars.Select(car => Loaded(car, load))];
        return loaded.GroupBy(car => car.Name).FirstOrDefault(cars => cars.Count() > 1) is { } alike
            ? throw new RefusedValueException("name of a car", $"'{alike.Key}'", "a name of its own", "Change it: car with { Name = \"...\" }.")
            : loaded;
    }

    private static StudyRun Until(CancellationToken cancellation) => StudyRun.Plain with { Cancellation = cancellation };
}
