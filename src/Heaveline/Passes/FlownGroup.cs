using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Passes;

/// <summary>Passes side by side whose samples are handed on as they come.</summary>
/// <param name="Group">The passes.</param>
/// <param name="Timing">The clock that covers all of theirs.</param>
/// <param name="Channels">How much of a sample is recorded.</param>
/// <param name="Fold">Is given the samples.</param>
internal sealed record FlownGroup<TLane>(PassGroup Group, PassTiming Timing, int Channels, ISampleFold<TLane> Fold)
    where TLane : unmanaged, ILane<TLane>
{
    /// <summary>What steps them.</summary>
    public BlockStepper<TLane> Stepper() => Group.Requests.Length <= TLane.Count
        ? Steps.Stepper.Of<TLane>(Array.ConvertAll(Group.Requests, r => r.Model.Numbers), Timing.StepsPerSample, Timing.Step, Channels)
        : throw new InvalidOperationException($"{Group.Requests.Length} passes do not fit in {TLane.Count} lanes.");
}
