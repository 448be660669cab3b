using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Heaveline.Drives.Identification;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// Windows as a drive has them, of computed passes: each road met at its own speed, white noise added, the same noise whatever the car.
/// </summary>
internal sealed class PassWindows
{
    private readonly IReadOnlyList<(Road Road, double Speed, DriveWindow Like)> passes;
    private readonly double lead;

    /// <summary>Windows to be computed.</summary>
    /// <param name="passes">The road of each, level where the car begins, its obstacle at x = 0; its speed; and the window it is to be like.</param>
    /// <param name="lead">Time from a car's start to where its front wheels meet x = 0, s.</param>
    public PassWindows(IReadOnlyList<(Road Road, double Speed, DriveWindow Like)> passes, double lead) => (this.passes, this.lead) = (passes, lead);

    /// <summary>Where the phone lies: behind the front axle and left of the middle, m.</summary>
    public required (double Behind, double Left) Phone { get; init; }

    /// <summary>Noise of a sample of the vertical acceleration, m/s² RMS.</summary>
    public double VerticalNoise { get; init; }

    /// <summary>Noise of a sample of the pitch rate, rad/s RMS.</summary>
    public double PitchNoise { get; init; }

    /// <summary>Where the noise comes from.</summary>
    public ulong Seed { get; init; }

    /// <summary>The windows of a car; null where a pass left the range of its model.</summary>
    /// <param name="model">Car and load.</param>
    /// <param name="stop">Stops it.</param>
    public DriveWindow[]? Of(RideModel model, CancellationToken stop)
    {
        var results = Passes(model, stop);
        return results.All(r => r.Outcome == PassOutcome.Completed) ? [.. results.Select((pass, w) => Window(pass, w))] : null;
    }

    /// <summary>In which windows a car's wheels stay on the road and its pass in the range of the model.</summary>
    /// <param name="model">Car and load.</param>
    /// <param name="stop">Stops it.</param>
    public bool[] Holds(RideModel model, CancellationToken stop) =>
        [.. Passes(model, stop).Select(p => p.Outcome == PassOutcome.Completed && Enumerable.Range(0, 4).All(i => p.TyreLoad(i).All(f => f > 0.0)))];

    private IReadOnlyList<Pass> Passes(RideModel model, CancellationToken stop)
    {
        var rate = passes.Max(p => p.Like.Rate);
        var after = passes.Max(p => (p.Like.Vertical.Length / p.Like.Rate) - p.Like.Before);
        var options = new PassOptions
        {
            // Twice the usual step: the estimator reads up to 12 Hz.
            Method = new FixedStep { StatesError = false, LargestStep = 1.25e-3 },
            Record = new PassRecord { SamplesPerSecond = Math.Max(rate, 50.0), LeadTime = lead, Duration = after + 0.1 },
        };
        return PassBatch.Of([.. passes.Select(p => new PassRequest(model, p.Road, p.Speed))], options, stop);
    }

    private DriveWindow Window(Pass pass, int number)
    {
        var like = passes[number].Like;
        var count = like.Vertical.Length;
        var stride = 1.0 / (like.Rate * pass.SampleStep);
        var first = (int)Math.Round((-like.Before - pass.Start) / pass.SampleStep);
        var (vertical, pitch) = (pass.VerticalAcceleration(Phone.Behind, Phone.Left), pass.PitchRate);
        return like with
        {
            Vertical = Sampled(vertical, VerticalNoise, 0),
            PitchRate = like.PitchRate.IsEmpty ? [] : Sampled(pitch, PitchNoise, 1),
            Speed = pass.Speed,
        };

        ImmutableArray<double> Sampled(ImmutableArray<double> trace, double noise, int channel)
        {
            var result = new double[count];
            var seed = Seed + (ulong)((2 * number) + channel);
            for (var k = 0; k < count; k++)
            {
                var at = Math.Clamp(first + (int)Math.Round(k * stride), 0, trace.Length - 1);
                result[k] = trace[at] + (noise > 0.0 ? noise * SplitMix.Normals(seed, 2UL * (ulong)k).First : 0.0);
            }

            return ImmutableCollectionsMarshal.AsImmutableArray(result);
        }
    }
}
