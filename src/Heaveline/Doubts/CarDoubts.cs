using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Doubts;

/// <summary>Everything about a car and its load that is stated with a doubt, sorted into independent sources of error.</summary>
public sealed class CarDoubts
{
    private static readonly string?[] Guesses =
        [InertiaEstimate.DynamicIndex.Doubt.Shared, InertiaEstimate.RollGyrationPerTrack.Doubt.Shared, BrakeGeometry.AssumedWheelRadius.Doubt.Shared];

    private readonly int[] sourceOf;

    private CarDoubts(Car car, LoadState load, IReadOnlyList<DoubtSource> sources, int[] sourceOf)
    {
        Car = car;
        Load = load;
        Sources = sources;
        this.sourceOf = sourceOf;
    }

    /// <summary>The car as stated.</summary>
    public Car Car { get; }

    /// <summary>The load as stated.</summary>
    public LoadState Load { get; }

    /// <summary>The independent errors, in the car's order.</summary>
    public IReadOnlyList<DoubtSource> Sources { get; }

    /// <summary>Whether the car's own measurements state a doubt, beside the guesses that stand in for what nobody measured.</summary>
    public bool AreStated => Sources.Any(s => !Guesses.Contains(s.Name));

    /// <summary>The doubts of a car under a load state; of the loads only those in it count.</summary>
    public static CarDoubts Of(Car car, LoadState? load = null)
    {
        ArgumentNullException.ThrowIfNull(car);
        load ??= LoadState.Reference;
        var list = new Listing();
        new CarAmounts(list).Through(car, load);
        return new CarDoubts(car, load, list.Sources, [.. list.SourceOf]);
    }

    /// <summary>The car and load with errors in them.</summary>
    /// <param name="errors">Error of each source in standard deviations, shape (sources).</param>
    /// <exception cref="RefusedValueException">A value that such a car cannot have.</exception>
    public (Car Car, LoadState Load) At(IReadOnlyList<double> errors)
    {
        if (errors.Count != Sources.Count)
        {
            throw new ArgumentException($"{errors.Count} errors for {Sources.Count} sources.", nameof(errors));
        }

        return new CarAmounts(new Shifting(sourceOf, errors)).Through(Car, Load);
    }

    private sealed class Listing : IAmountVisitor
    {
        private readonly Dictionary<string, int> shared = [];

        private ForceTable? table;
        private readonly List<(string Name, bool IsInstrument, List<DoubtfulAmount> Amounts)> found = [];

        public IReadOnlyList<DoubtSource> Sources => [.. found.Select(s => new DoubtSource(s.Name, s.Amounts) { IsInstrument = s.IsInstrument })];

        public List<int> SourceOf { get; } = [];

        public Amount<TDimension> Visit<TDimension>(string path, Amount<TDimension> amount)
            where TDimension : struct, IDimension
        {
            if (amount.Doubt.IsStated)
            {
                var source = found.Count;
                if (amount.Doubt.Shared is { } name && !shared.TryAdd(name, source))
                {
                    source = shared[name];
                }

                if (source == found.Count)
                {
                    found.Add((amount.Doubt.Shared ?? path, amount.Doubt.Shared is not null && !amount.Doubt.OfOneCar, []));
                }

                found[source].Amounts.Add(new DoubtfulAmount(path, amount.Si, amount.Doubt.StandardDeviation, TDimension.Symbol) { Table = table });
                SourceOf.Add(source);
            }

            return amount;
        }

        public ForceTable Visit(string path, ForceTable table) => Of(path, table.Factor, table, table);

        public TableDamper Visit(string path, TableDamper damper) => Of(path, damper.Factor, damper.Whole, damper);

        private T Of<T>(string path, Amount<Plain> factor, ForceTable moved, T given)
        {
            table = moved;
            Visit(path, factor);
            table = null;
            return given;
        }
    }

    private sealed class Shifting(int[] sourceOf, IReadOnlyList<double> errors) : IAmountVisitor
    {
        private int next;

        // Sees the doubtful amounts in the order in which they were listed.
        public Amount<TDimension> Visit<TDimension>(string path, Amount<TDimension> amount)
            where TDimension : struct, IDimension =>
            amount.Doubt.IsStated ? amount with { Si = amount.Si + (amount.Doubt.StandardDeviation * errors[sourceOf[next++]]) } : amount;
    }
}
