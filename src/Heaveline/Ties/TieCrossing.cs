using System.Collections.Immutable;
using Heaveline.Drives.Planning;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Ties;

/// <summary>
/// What a crossing asks of a car, by its own passes at the speed and 5 % above it: whether people may be sent over the obstacle so fast. Stops may be
/// touched, since where they touch is what ties tell.
/// </summary>
public sealed record TieCrossing
{
    private static readonly PassOptions Options = BatchedMeasures.Usual with { Record = new() { SettlingTime = 1.1 } };

    /// <summary>Its speed, m/s.</summary>
    public required double Speed { get; init; }

    /// <summary>Least load of any tyre over what it bears at rest (–); 0 where a pass left the model's range.</summary>
    public required double LeastLoad { get; init; }

    /// <summary>How far a wheel goes beyond the contact with a stop, m; 0 where none touches.</summary>
    public required double IntoStop { get; init; }

    /// <summary>Whether the speed is no higher than anyone is sent over an obstacle.</summary>
    public bool IsSlowEnough => Speed <= PlankWish.Fastest * (1.0 + 1e-9);

    /// <summary>Whether every tyre keeps a fifth of its load at rest.</summary>
    public bool Bears => LeastLoad >= PlankWish.LeastLoad;

    /// <summary>Whether it may be advised.</summary>
    public bool IsWithin => IsSlowEnough && Bears;

    /// <summary>The crossings at some speeds, the worst of all cars in each.</summary>
    internal static ImmutableArray<TieCrossing> Of(
        IReadOnlyList<RideModel> cars, Road road, IReadOnlyList<double> speeds, CancellationToken stop)
    {
        PassRequest[] requests =
        [
            .. speeds.SelectMany(v => cars.SelectMany(car => SafePass.Tried(v).Select(tried => new PassRequest(car, road, tried)))),
        ];
        var passes = PassBatch.Of(requests, Options, stop).Chunk(requests.Length / Math.Max(1, speeds.Count)).ToArray();
        return
        [
            .. speeds.Select((v, k) => new TieCrossing
            {
                Speed = v,
                LeastLoad = passes[k].Min(p => p.Outcome == PassOutcome.Completed ? Math.Max(0.0, SafePass.LeastLoad(p)) : 0.0),
                IntoStop = Math.Max(0.0, passes[k].Max(p => -SafePass.TravelLeft(p))),
            }),
        ];
    }
}
