using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Responses;

/// <summary>Passes that run side by side, one per lane.</summary>
/// <param name="Places">Where each stood among all that were asked for.</param>
/// <param name="Requests">Cars, roads and speeds.</param>
/// <param name="Clocks">The clock of each.</param>
/// <param name="Roads">The road of each.</param>
internal sealed record PassGroup(int[] Places, PassRequest[] Requests, PassTiming[] Clocks, RoadUnderWheels[] Roads)
{
    /// <summary>
    /// Groups of at most a width. Only passes of one step stand together, so that each has the numbers it would have alone; among these such of one road and
    /// speed, which share what they read of the road.
    /// </summary>
    /// <exception cref="RefusedValueException">As for <see cref="Pass.Of"/>.</exception>
    public static IReadOnlyList<PassGroup> Of(IReadOnlyList<PassRequest> requests, PassOptions options, int width)
    {
        var asked = Ready(requests, options);
        var numbers = new Dictionary<Road, int>(ReferenceEqualityComparer.Instance);
        foreach (var request in requests)
        {
            numbers.TryAdd(request.Road, numbers.Count);
        }

        return
        [
            .. Enumerable.Range(0, requests.Count)
                .GroupBy(i => (requests[i].Model.Numbers.Laws.Needs & (Needs.ElasticLink | Needs.FluidLink), asked.Clocks[i].StepsPerSample))
                .SelectMany(alike => alike.OrderBy(i => numbers[requests[i].Road]).ThenBy(i => requests[i].Speed).Chunk(width))
                .Select(asked.Part),
        ];
    }

    /// <summary>All passes as one group, whatever their steps: the shortest serves all.</summary>
    public static PassGroup Whole(IReadOnlyList<PassRequest> requests, PassOptions options) => Ready(requests, options);

    /// <summary>Computes the passes.</summary>
    /// <param name="options">How to run them.</param>
    /// <param name="width">How many lanes stand side by side, at least as many as there are passes.</param>
    /// <param name="channels">How much is recorded: one of the lengths that <see cref="Channel"/> names; a run that states its error records all.</param>
    public Pass[] Run(PassOptions options, int width, int channels = Channel.Count)
    {
        channels = options.StatesError ? Channel.Count : channels;
        var timing = Clocks.Aggregate(PassTiming.Cover);
        var fine = Samples(timing, width, channels);
        var coarse = options.StatesError ? Samples(timing with { StepsPerSample = timing.StepsPerSample / 2 }, width, channels) : null;
        return [.. Requests.Select((r, k) =>
        {
            var clock = Clocks[k] with { StepsPerSample = timing.StepsPerSample };
            var (pitch, tyre) = coarse is null ? (null, null) : PassError.Of(r.Model, fine[k], coarse[k]);
            return new Pass(r.Model, r.Road, r.Speed, clock, fine[k], Pass.FixedStep(clock, pitch, tyre), channels);
        })];
    }

    // What the same cars and roads have in common is worked out once.
    private static PassGroup Ready(IReadOnlyList<PassRequest> requests, PassOptions options)
    {
        var steps = new Dictionary<RideModel, double>();
        var averaged = new Dictionary<Road, Dictionary<double, Road>>(ReferenceEqualityComparer.Instance);
        var clocks = new PassTiming[requests.Count];
        var roads = new RoadUnderWheels[requests.Count];
        for (var i = 0; i < clocks.Length; i++)
        {
            var (model, road, speed) = requests[i];
            Pass.RefuseSpeed(speed);
            if (!steps.TryGetValue(model, out var step))
            {
                steps[model] = step = StepChoice.Largest(model, options.LargestStep);
            }

            clocks[i] = PassTiming.Of(model, road, speed, options, step);
            roads[i] = RoadUnderWheels.Of(model, road, contact => Averaged(road, contact));
        }

        return new PassGroup([.. Enumerable.Range(0, clocks.Length)], [.. requests], clocks, roads);

        Road Averaged(Road road, Amount<Length> contact)
        {
            if (!averaged.TryGetValue(road, out var known))
            {
                averaged[road] = known = [];
            }

            if (!known.TryGetValue(contact.Si, out var result))
            {
                known[contact.Si] = result = road.AveragedOver(contact);
            }

            return result;
        }
    }

    private PassGroup Part(int[] places) => new(places, [.. places.Select(i => Requests[i])], [.. places.Select(i => Clocks[i])], [.. places.Select(i => Roads[i])]);

    private double[][] Samples(PassTiming timing, int width, int channels) => width switch
    {
        8 => PassLanes<Lane512>.Samples(this, timing, channels),
        4 => PassLanes<Lane256>.Samples(this, timing, channels),
        2 => PassLanes<Lane128>.Samples(this, timing, channels),
        _ => PassLanes<ScalarLane>.Samples(this, timing, channels),
    };
}
