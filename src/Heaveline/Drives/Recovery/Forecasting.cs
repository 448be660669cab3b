using System.Collections.Immutable;
using Heaveline.Drives.Identification;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Roads;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Drives.Recovery;

/// <summary>Passes of a car before and after a change over the roads of a drive, and over draws of their humps.</summary>
internal sealed class Forecasting
{
    /// <summary>How many times the humps are drawn.</summary>
    public const int Draws = 64;

    // What a forecast of a difference was off by on planted drives, as a half-width (90 %): the recovered road and the car file, not chance.
    private const double Model = 0.02;

    private static readonly Measure<Pass>[] Measured = [SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration];

    private readonly CarFromDrive found;
    private readonly ImmutableArray<RecoveredRoad> roads;
    private readonly CancellationToken stop;

    public Forecasting(CarFromDrive found, ImmutableArray<RecoveredRoad> roads, CancellationToken stop) =>
        (this.found, this.roads, this.stop) = (found, roads, stop);

    public Forecast Of(RideModel before, RideModel after, string change)
    {
        var requests = new List<PassRequest?>();
        var draws = found.Humps.ToDictionary(h => h.Site, Drawn);
        for (var draw = -1; draw < Draws; draw++)
        {
            foreach (var recovered in roads)
            {
                var road = draw < 0 ? recovered.Road : Moved(recovered, draws[recovered.Site][draw]);
                requests.Add(new PassRequest(before, road, recovered.Speed));
                requests.Add(new PassRequest(after, road, recovered.Speed));
            }
        }

        var rows = BatchedMeasures.Of(requests, Measured, null, -1, stop);
        var n = roads.Length;
        double[] Column(int pass, int measure, bool isAfter) =>
            [.. Enumerable.Range(0, Draws + 1).Select(d => rows[(2 * ((d * n) + pass)) + (isAfter ? 1 : 0)][measure])];
        ImmutableArray<ForecastPass> passes =
        [
            .. roads.Select((road, p) => new ForecastPass(
                road.Event,
                road.Site,
                road.Speed,
                Number(Measured[0], Column(p, 0, false), Column(p, 0, true)),
                Number(Measured[1], Column(p, 1, false), Column(p, 1, true)))),
        ];
        int[] counted = [.. Enumerable.Range(0, n).Where(p => passes[p].IsCounted)];
        double[] Whole(int measure) => [.. Enumerable.Range(0, Draws + 1).Select(d => Math.Exp(counted
            .Select(p => Math.Log(rows[(2 * ((d * n) + p)) + 1][measure] / rows[2 * ((d * n) + p)][measure]))
            .Where(double.IsFinite).DefaultIfEmpty(double.NaN).Average()) - 1.0)];
        return new Forecast
        {
            Car = before.Car.Name,
            Change = change,
            Passes = passes,
            Headline = Widened(Whole(0)),
            Hit = Widened(Whole(1)),
            Draws = Draws,
        };
    }

    private static ForecastNumber Number(Measure measure, double[] before, double[] after) => new(
        measure.Key, Plain(before), Plain(after), Widened([.. before.Zip(after, (b, a) => (a / b) - 1.0)]));

    // The first is that of the road itself.
    private static Bracket Plain(double[] values) => Bracket.Of(values[0], [.. values.Skip(1).Where(double.IsFinite)]);

    private static Bracket Widened(double[] values)
    {
        var plain = Plain(values);
        double More(double half) => Math.Sqrt((half * half) + (Model * Model));
        return new(plain.Value, plain.Value - More(plain.Value - plain.Low), plain.Value + More(plain.High - plain.Value));
    }

    // What a draw adds to the hump of a site, at the hump's own distances.
    private double[][] Drawn(RecoveredHump hump)
    {
        var (_, at, splines, begin) = found.Splines.First(s => s.Site == hump.Site);
        var (n, m) = (found.Mean.Length, splines.Count);
        var covariance = Matrix<double>.Build.Dense(m, m, (i, j) => found.Covariance[((at + i) * n) + at + j]);
        var factor = covariance.Evd(Symmetricity.Symmetric);
        var size = Vector<double>.Build.Dense(m, i => Math.Sqrt(Math.Max(0.0, factor.EigenValues[i].Real)));
        return [.. Enumerable.Range(0, Draws).Select(draw =>
        {
            var chance = Vector<double>.Build.Dense(m, i => SplitMix.Normals((ulong)(1000 + at), 2UL * (ulong)((draw * m) + i)).First);
            var by = factor.EigenVectors * size.PointwiseMultiply(chance);
            return hump.Distance.Select(x => Enumerable.Range(0, m).Sum(j => by[j] * splines.At(j, begin + x))).ToArray();
        })];
    }

    private Road Moved(RecoveredRoad road, double[] by)
    {
        var hump = found.Humps.First(h => h.Site == road.Site);
        var step = hump.Distance[1] - hump.Distance[0];
        var heights = road.Height.Select((height, i) =>
        {
            var at = road.Distance[i] / step;
            var k = (int)Math.Floor(at);
            return k < 0 || k + 1 >= by.Length ? height : height + by[k] + ((at - k) * (by[k + 1] - by[k]));
        });
        return (road with { Height = [.. heights] }).Road;
    }
}
