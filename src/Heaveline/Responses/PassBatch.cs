using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Responses;

/// <summary>
/// Many passes at once, one per lane of the widest register that the processor really has. Each comes out as it would alone, but for the
/// last bits of powers in curved laws: the same source, step for step.
/// </summary>
public static class PassBatch
{
    /// <summary>How many passes run side by side on this machine.</summary>
    public static int Width => LaneWidth.Best;

    /// <summary>Computes the passes, in the order asked for. All share the longest record and the shortest step among their group.</summary>
    /// <param name="requests">Cars, roads and speeds.</param>
    /// <param name="options">How to run them; a certified run is not to be had here.</param>
    /// <param name="cancellation">Stops the work between groups.</param>
    /// <exception cref="RefusedValueException">As for <see cref="Pass.Of"/>.</exception>
    public static IReadOnlyList<Pass> Of(IReadOnlyList<PassRequest> requests, PassOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(requests);
        options ??= PassOptions.Default;
        foreach (var request in requests)
        {
            Pass.RefuseSpeed(request.Speed);
        }

        var passes = new Pass[requests.Count];
        foreach (var alike in Enumerable.Range(0, requests.Count).GroupBy(i => requests[i].Model.Numbers.Laws.Needs & (Needs.ElasticLink | Needs.FluidLink)))
        {
            foreach (var group in alike.Chunk(LaneWidth.Best))
            {
                cancellation.ThrowIfCancellationRequested();
                PassRequest[] asked = [.. group.Select(i => requests[i])];
                var results = Group(asked, options, LaneWidth.Best);
                for (var k = 0; k < group.Length; k++)
                {
                    passes[group[k]] = results[k];
                }
            }
        }

        return passes;
    }

    /// <summary>One group at a stated width, for tests and measurements.</summary>
    internal static Pass[] Group(PassRequest[] asked, PassOptions options, int width)
    {
        var timing = asked.Select(r => PassTiming.Of(r.Model, r.Road, r.Speed, options)).Aggregate(PassTiming.Cover);
        RoadUnderWheels[] roads = [.. asked.Select(r => RoadUnderWheels.Of(r.Model, r.Road))];
        var fine = Samples(asked, roads, timing, width);
        var coarse = options.StatesError ? Samples(asked, roads, timing with { StepsPerSample = timing.StepsPerSample / 2 }, width) : null;
        return [.. asked.Select((r, k) =>
        {
            var (pitch, tyre) = coarse is null ? (null, null) : PassError.Of(r.Model, fine[k], coarse[k]);
            return new Pass(r.Model, r.Road, r.Speed, timing, fine[k], Pass.FixedStep(timing, pitch, tyre));
        })];
    }

    private static double[][] Samples(PassRequest[] asked, RoadUnderWheels[] roads, PassTiming timing, int width) => width switch
    {
        8 => Samples<Lane512>(asked, roads, timing),
        4 => Samples<Lane256>(asked, roads, timing),
        2 => Samples<Lane128>(asked, roads, timing),
        _ => Samples<ScalarLane>(asked, roads, timing),
    };

    private static double[][] Samples<TLane>(PassRequest[] asked, RoadUnderWheels[] roads, PassTiming timing)
        where TLane : struct, ILane<TLane>
    {
        if (asked.Length > TLane.Count)
        {
            throw new ArgumentException($"{asked.Length} passes do not fit in {TLane.Count} lanes.", nameof(asked));
        }

        var constants = RidePacking.Pack<Quad<TLane>, TLane>([.. asked.Select(r => r.Model.Numbers)]);
        var table = RoadTable<TLane>(asked, roads, timing);
        var samples = new TLane[timing.Samples * Channel.Count];
        PassStepper<Quad<TLane>, TLane>.Run(constants, table, timing.Samples, timing.StepsPerSample, TLane.Of(timing.Step), samples);
        return Unpacked(samples, asked.Length);
    }

    private static Quad<TLane>[] RoadTable<TLane>(PassRequest[] asked, RoadUnderWheels[] roads, PassTiming timing)
        where TLane : struct, ILane<TLane>
    {
        var steps = timing.Samples * timing.StepsPerSample;
        Quad<ScalarLane>[][] tables = [.. asked.Select((r, k) => roads[k].Table<Quad<ScalarLane>>(r.Speed, timing.Start, timing.Step, steps))];
        var table = new Quad<TLane>[2 * steps];
        Span<double> lanes = stackalloc double[4 * TLane.Count];
        for (var i = 0; i < table.Length; i++)
        {
            for (var lane = 0; lane < TLane.Count; lane++)
            {
                var source = tables[Math.Min(lane, tables.Length - 1)][i];
                for (var corner = 0; corner < 4; corner++)
                {
                    lanes[(corner * TLane.Count) + lane] = source.At(corner).Value;
                }
            }

            table[i] = Quad<TLane>.Of(
                TLane.From(lanes[..TLane.Count]),
                TLane.From(lanes.Slice(TLane.Count, TLane.Count)),
                TLane.From(lanes.Slice(2 * TLane.Count, TLane.Count)),
                TLane.From(lanes.Slice(3 * TLane.Count, TLane.Count)));
        }

        return table;
    }

    private static double[][] Unpacked<TLane>(TLane[] samples, int count)
        where TLane : struct, ILane<TLane>
    {
        double[][] each = [.. Enumerable.Range(0, count).Select(_ => new double[samples.Length])];
        Span<double> lanes = stackalloc double[TLane.Count];
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i].To(lanes);
            for (var k = 0; k < count; k++)
            {
                each[k][i] = lanes[k];
            }
        }

        return each;
    }
}
