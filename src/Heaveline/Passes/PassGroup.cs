using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Passes;

/// <summary>Passes that run side by side, one per lane.</summary>
/// <param name="Places">Where each stood among all that were asked for.</param>
/// <param name="Requests">Cars, roads and speeds.</param>
/// <param name="Clocks">The clock of each.</param>
/// <param name="Roads">The road of each.</param>
internal sealed record PassGroup(int[] Places, PassRequest[] Requests, PassTiming[] Clocks, RoadUnderWheels[] Roads)
{
    // Links that cannot stand side by side, and elements that are worked out in another way where a car beside needs it.
    private const Needs Apart =
        Needs.ElasticLink | Needs.FluidLink | Needs.ResistiveLine | Needs.SolidAxle | Needs.VaryingRatio | Needs.Gas;

    /// <summary>Whether they are computed in single precision, twice as many side by side, where there are such lanes.</summary>
    public bool InSingle { get; init; }

    /// <summary>
    /// Groups of at most a width. Only passes of one step that begin at one time stand together, so that each has the bits it would have alone in
    /// such lanes; among these such of one road and speed, which share what they read of the road.
    /// </summary>
    /// <param name="requests">Cars, roads and speeds.</param>
    /// <param name="options">How to run them.</param>
    /// <param name="width">How many lanes stand side by side.</param>
    /// <param name="recorded">Whether they are recorded, which limits how many long ones stand together.</param>
    /// <exception cref="RefusedValueException">As for <see cref="PassBatch.Of"/>.</exception>
    public static IReadOnlyList<PassGroup> Of(IReadOnlyList<PassRequest> requests, PassOptions options, int width, bool recorded = true)
    {
        var asked = Ready(requests, options);
        var numbers = new Dictionary<Road, int>(ReferenceEqualityComparer.Instance);
        foreach (var request in requests)
        {
            numbers.TryAdd(request.Road, numbers.Count);
        }

        var lanes = asked.InSingle ? 2 * width : width;
        return
        [
            .. Enumerable.Range(0, requests.Count)
                .GroupBy(i => (
                    requests[i].Model.Numbers.Slots.Needs & Apart,
                    asked.Clocks[i].StepsPerSample,
                    asked.Clocks[i].AgainstHalf,
                    asked.Clocks[i].First))
                .SelectMany(alike => alike
                    .OrderBy(i => numbers[requests[i].Road])
                    .ThenBy(i => requests[i].Speed)
                    .Chunk(recorded ? PassLimit.Width(alike.Max(i => asked.Clocks[i].Samples), lanes) : lanes))
                .Select(asked.Part),
        ];
    }

    /// <summary>All passes as one group, whatever their steps: the shortest serves all.</summary>
    public static PassGroup Whole(IReadOnlyList<PassRequest> requests, PassOptions options) => Ready(requests, options);

    /// <summary>Computes the passes with all their traces.</summary>
    /// <param name="options">How to run them.</param>
    /// <param name="width">How many lanes stand side by side, at least as many as there are passes.</param>
    /// <param name="cancellation">Stops the work.</param>
    public Pass[] Run(PassOptions options, int width, CancellationToken cancellation = default)
    {
        var timing = Clocks.Aggregate(PassTiming.Cover);
        var fine = Samples(timing, width, cancellation);
        // Where there are no lanes of single precision they have run in double.
        var single = InSingle && PassLimit.Width(this, timing, 2 * width) >= 4;
        double[][][]? others = options.Steps.StatesError
            ? [.. timing.Compared(Roads.Any(road => road.HasJump)).Select(other => Samples(other, width, cancellation))]
            : null;
        return [.. Requests.Select((r, k) =>
        {
            var (pitch, tyre) = others is null
                ? (null, null)
                : PassError.Of(r.Model, Roads[k], timing.AgainstHalf, fine[k], [.. others.Select(run => run[k])]);
            return single
                ? Made(k, timing, fine[k], pitch + PassError.PitchInSingle, tyre + PassError.TyreLoadInSingle)
                : Made(k, timing, fine[k], pitch, tyre);
        })];
    }

    /// <summary>Computes the passes without their error and hands on their samples as they come: none is kept.</summary>
    /// <param name="width">How many lanes stand side by side, at least as many as there are passes.</param>
    /// <param name="folds">What becomes of the samples.</param>
    /// <param name="beside">Another group in such lanes, to run beside this one; null for none.</param>
    /// <param name="memory">Of the road that the group before has met; null for none.</param>
    /// <param name="cancellation">Stops the work.</param>
    public void Fold(
        int width,
        ISampleFolds folds,
        (PassGroup Group, ISampleFolds Folds)? beside,
        RoadMemory? memory,
        CancellationToken cancellation)
    {
        // Nothing is recorded: however long they are, as many run side by side.
        switch (InSingle, InSingle ? 2 * width : width)
        {
            case (true, 16):
                Run<FloatLane512>();
                break;
            case (true, 8):
                Run<FloatLane256>();
                break;
            case (true, 4):
                Run<FloatLane128>();
                break;
            case (_, 8):
                Run<Lane512>();
                break;
            case (_, 4):
                Run<Lane256>();
                break;
            case (_, 2):
                Run<Lane128>();
                break;
            default:
                Run<ScalarLane>();
                break;
        }

        void Run<TLane>()
            where TLane : unmanaged, ILane<TLane>
        {
            var flown = Flown<TLane>(folds);
            if (beside is { } other)
            {
                PassFlight<TLane>.Run(flown, other.Group.Flown<TLane>(other.Folds), memory, cancellation);
            }
            else
            {
                PassFlight<TLane>.Run(flown, memory, cancellation);
            }
        }
    }

    private FlownGroup<TLane> Flown<TLane>(ISampleFolds folds)
        where TLane : unmanaged, ILane<TLane>
    {
        var timing = Clocks.Aggregate(PassTiming.Cover);
        return new(this, timing, folds.Channels, folds.Of<TLane>(timing));
    }

    // What the same cars and roads have in common is worked out once.
    private static PassGroup Ready(IReadOnlyList<PassRequest> requests, PassOptions options)
    {
        var steps = new Dictionary<RideModel, StepLimit>();
        var averaged = new Dictionary<Road, Dictionary<double, Road>>(ReferenceEqualityComparer.Instance);
        var clocks = new PassTiming[requests.Count];
        var roads = new RoadUnderWheels[requests.Count];
        for (var i = 0; i < clocks.Length; i++)
        {
            var (model, road, speed) = requests[i];
            _ = DrivingSpeed.Checked(speed);
            if (!steps.TryGetValue(model, out var step))
            {
                steps[model] = step = StepChoice.Of(model, options.Steps.LargestStep);
            }

            clocks[i] = PassTiming.Of(requests[i], options.Record, step, options.Steps.StatesError);
            roads[i] = RoadUnderWheels.Of(model, road, contact => Averaged(road, contact));
        }

        return new PassGroup([.. Enumerable.Range(0, clocks.Length)], [.. requests], clocks, roads) { InSingle = options.Steps.InSingle };

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

    private PassGroup Part(int[] places) =>
        new(places, [.. places.Select(i => Requests[i])], [.. places.Select(i => Clocks[i])], [.. places.Select(i => Roads[i])])
        {
            InSingle = InSingle,
        };

    private Pass Made(int k, PassTiming timing, double[] samples, double? pitchError, double? tyreError)
    {
        var clock = Clocks[k] with { StepsPerSample = timing.StepsPerSample };
        return new Pass(Requests[k], clock, samples, FixedStep.Statistics(clock, pitchError, tyreError));
    }

    private double[][] Samples(PassTiming timing, int width, CancellationToken cancellation) =>
        (InSingle, PassLimit.Width(this, timing, InSingle ? 2 * width : width)) switch
        {
            (true, 16) => PassLanes<FloatLane512>.Samples(this, timing, cancellation),
            (true, 8) => PassLanes<FloatLane256>.Samples(this, timing, cancellation),
            (true, 4) => PassLanes<FloatLane128>.Samples(this, timing, cancellation),
            (_, 8) => PassLanes<Lane512>.Samples(this, timing, cancellation),
            (_, 4) => PassLanes<Lane256>.Samples(this, timing, cancellation),
            (_, 2) => PassLanes<Lane128>.Samples(this, timing, cancellation),
            _ => PassLanes<ScalarLane>.Samples(this, timing, cancellation),
        };
}
