using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Ties;

namespace Heaveline.Tests.Ties;

/// <summary>
/// Ties of a car whose truth is known: every coordinate (dampers, friction, stops, the file's doubts, the speeds) drawn as it was thought possible,
/// the passes computed, each tie read with its doubt on a car that stands anywhere within its friction.
/// </summary>
internal sealed record PlantedTies
{
    public required TieReadings Readings { get; init; }

    /// <summary>The true numbers, in the order of the estimates.</summary>
    public required ImmutableArray<double> Truth { get; init; }

    /// <summary>Passes at speeds in km/h with front and rear ties whose travels are yet to be planted.</summary>
    public static TieReadings At(params double[] speeds) => new()
    {
        Passes = [.. speeds.Select(v => new TiePass { Speed = new Amount<Velocity>(v / 3.6), Readings = [Tie(TiePlace.Front), Tie(TiePlace.Rear)] })],
    };

    /// <param name="car">The car file's car.</param>
    /// <param name="load">The load.</param>
    /// <param name="road">The obstacle.</param>
    /// <param name="asked">Which readings there are; their numbers do not matter.</param>
    /// <param name="seed">Of the draw.</param>
    /// <param name="scales">True coordinates of the scales instead of drawn ones.</param>
    /// <returns>Null where such a car cannot cross.</returns>
    public static PlantedTies? Of(Car car, LoadState load, Road road, TieReadings asked, ulong seed, double[]? scales = null)
    {
        // Neighbouring seeds share numbers at shifted places: mixed, they do not.
        seed = SplitMix.At(seed, 0);
        var model = new TieModel(car, load, road, asked, 1, default);
        double[] point = [.. Enumerable.Range(0, model.Coordinates).Select(k => SplitMix.Normals(seed, 2 * (ulong)k).First)];
        scales?.CopyTo(point, 0);
        var shown = model.At([point])[0];
        if (shown.Any(double.IsNaN))
        {
            return null;
        }

        var next = 0;
        double Read(double spread)
        {
            // What is not the reading's own is where friction lets the car stand: uniform.
            var band = Math.Sqrt(3.0 * Math.Max(0.0, (model.Spreads[next] * model.Spreads[next]) - (spread * spread)));
            var read = shown[next] + (spread * SplitMix.Normals(seed, 100_000 + (2 * (ulong)next)).First)
                + (band * ((2.0 * SplitMix.Uniform(seed, 200_000 + (ulong)next)) - 1.0));
            next++;
            return read;
        }

        return new PlantedTies
        {
            Readings = asked with
            {
                Passes = [.. asked.Passes.Select(pass => pass with
                {
                    Readings = [.. pass.Readings.Select(tie => tie with { Travel = new(Math.Max(0.0, Read(tie.Spread)), tie.Travel.Doubt) })],
                })],
                Swings = [.. asked.Swings.Select(swings => swings with
                {
                    Time = new(swings.Count.Si / Read(swings.Frequency.Doubt.StandardDeviation), swings.Time.Doubt),
                })],
                Heights = [.. asked.Heights.Select(heights => heights with
                {
                    After = new(heights.Before.Si - Read(heights.Spread), heights.After.Doubt),
                })],
            },
            Truth = [.. model.Scales.Select((s, i) => s.ValueAt(s.Spread * point[i]))],
        };
    }

    private static TieReading Tie(TiePlace place) => new() { Place = place, Travel = new Amount<Length>(0.03) };
}
