using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Ties;

/// <summary>
/// All that was read without an instrument: ties of some passes over one obstacle, swings counted, heights before and after loading.
/// </summary>
public sealed record TieReadings
{
    /// <summary>The passes, at least one, at most 60.</summary>
    public required ImmutableArray<TiePass> Passes
    {
        get;
        init => field = value.Length is > 0 and <= 60
            ? value
            : throw new RefusedValueException("passes with ties", $"{value.Length}", "1 to 60", "Cross the obstacle at three speeds or more.");
    }

    /// <summary>Swings counted, at most once for each end.</summary>
    public ImmutableArray<AxleSwings> Swings
    {
        get;
        init => field = Once(value, s => s.End, "swings");
    } = [];

    /// <summary>Heights, at most once for each axle.</summary>
    public ImmutableArray<AxleHeights> Heights
    {
        get;
        init => field = Once(value, h => h.End, "heights");
    } = [];

    /// <summary>How far the front dampers move with their wheels, where the car file does not say it; null: as the car file says.</summary>
    public MotionRatio? FrontRatio { get; init; }

    /// <summary>The same at the rear.</summary>
    public MotionRatio? RearRatio { get; init; }

    /// <summary>How many ties were read in all.</summary>
    public int Count => Passes.Sum(p => p.Readings.Length);

    /// <summary>The same readings as if front and rear had been mixed up.</summary>
    internal TieReadings Swapped => this with
    {
        Passes = [.. Passes.Select(p => p with { Readings = [.. p.Readings.Select(r => r with { Place = TiePlaces.Other(r.Place) })] })],
    };

    /// <summary>Whether any tie of an axle was read.</summary>
    internal bool Has(AxleEnd end) => Passes.Any(p => p.Readings.Any(r => TiePlaces.EndOf(r.Place) == end));

    private static ImmutableArray<T> Once<T>(ImmutableArray<T> all, Func<T, AxleEnd> end, string what) =>
        all.Select(end).Distinct().Count() == all.Length
            ? all
            : throw new RefusedValueException($"{what} of an end", "given twice", "given once", "Give the mean of both.");
}
