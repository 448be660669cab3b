using System.Collections.Immutable;
using System.Numerics;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Measures;
using Heaveline.Numerics;

namespace Heaveline.Drives.Recovery;

/// <summary>The car that a drive tells, before and after a change, over the roads of that drive; car and humps drawn together.</summary>
internal sealed class LinearForecasting
{
    // What it was off by on the planted lane, as a half-width (90 %): bump stops, friction and curved dampers do not go with factors.
    private const double Model = 0.08;

    // Samples a second, and the time after the road's end in which the car comes to rest, s.
    private const double Rate = 100.0;
    private const double Rest = 6.0;

    private readonly CarFromDrive found;
    private readonly ImmutableArray<RecoveredRoad> roads;
    private readonly CancellationToken stop;
    private readonly PosteriorDraws draws;

    public LinearForecasting(CarFromDrive found, ImmutableArray<RecoveredRoad> roads, CancellationToken stop) =>
        (this.found, this.roads, this.stop, draws) = (found, roads, stop, new PosteriorDraws(found));

    /// <summary>The forecast.</summary>
    /// <param name="change">The change.</param>
    /// <param name="words">The change in words.</param>
    public Forecast Of(LinearChange change, string words)
    {
        var samples = roads.Select(r => (int)BitOperations.RoundUpToPowerOf2((uint)(Rate * (((r.Distance[^1] - r.Distance[0]) / r.Speed) + Rest))))
            .DefaultIfEmpty(2).Max();
        var rows = new double[PosteriorDraws.Count + 1][][][];
        ParallelLoop.Each(rows.Length, -1, draw => rows[draw] = Draw(change, draw - 1, samples), stop);
        var all = new ForecastRows(roads, PosteriorDraws.Count, (draw, pass, isAfter) => rows[draw][pass][isAfter ? 1 : 0], Model);
        return all.Of("the car of the drive", words, all.Doubts);
    }

    private double[][][] Draw(LinearChange change, int draw, int samples)
    {
        double[] frequencies = [.. Enumerable.Range(1, (samples / 2) - 1).Select(k => k * Rate / samples)];
        var car = draw < 0 ? found.Mean.AsSpan()[..CarParameter.Shared].ToArray() : draws.Car(draw);
        // Of the car, not of the phone's gyro.
        car[CarParameter.Gain] = 0.0;
        RoadAnswer[] answers = [.. new[] { car, change.Of(car) }.Select(p => new RoadAnswer(p, found.Known!.Wheelbase, frequencies))];
        return [.. roads.Select(road => (draw < 0 ? road : draws.Road(road, draw))).Select(road =>
        {
            var lines = RealFourier.Of(Heights(road, samples), stop);
            return answers.Select(answer => Numbers(answer, frequencies, lines, road)).ToArray();
        })];
    }

    // Over the time of the front axle.
    private static double[] Heights(RecoveredRoad road, int samples)
    {
        var heights = new double[samples];
        var (first, step) = (road.Distance[0], road.Distance[1] - road.Distance[0]);
        for (var i = 0; i < samples; i++)
        {
            var at = i * road.Speed / Rate / step;
            var k = (int)at;
            if (k + 1 >= road.Height.Length)
            {
                break;
            }

            heights[i] = road.Height[k] + ((at - k) * (road.Height[k + 1] - road.Height[k]));
        }

        return heights;
    }

    private double[] Numbers(RoadAnswer answer, double[] frequencies, Complex[] lines, RecoveredRoad road)
    {
        var samples = 2 * (frequencies.Length + 1);
        var (angle, turning) = (new Complex[samples / 2], new Complex[samples / 2]);
        for (var k = 1; k < samples / 2; k++)
        {
            var rate = answer.At(k - 1, road.Speed).Pitch * lines[k] / samples;
            var s = new Complex(0.0, 2.0 * Math.PI * frequencies[k - 1]);
            (angle[k], turning[k]) = (rate / s, rate * s);
        }

        var pitch = RoadAnswer.Signal(angle, samples, stop);
        var acceleration = ZeroPhase.Low(RoadAnswer.Signal(turning, samples, stop), Rate, MotionCurves.Fast);
        var touch = (int)Math.Round(-road.Distance[0] / road.Speed * Rate);
        var left = (int)Math.Round((road.Hump.To + found.Known!.Wheelbase - road.Distance[0]) / road.Speed * Rate);
        var second = pitch.AsSpan(left, (int)(PitchSettling.Second * Rate));
        return [Math.Sqrt(Dot.Of(second, second) / second.Length), acceleration[touch..left].Max(Math.Abs)];
    }
}
