using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;

namespace Heaveline.Tests.Passes;

/// <summary>Steps as another does, counts the steps done, and asks for the stop itself after so many: no clock and no thread.</summary>
internal sealed class StoppedStepper(BlockStepper<ScalarLane> own, int stepsPerSample, int after, CancellationTokenSource stop)
    : BlockStepper<ScalarLane>
{
    /// <summary>Steps that were done to the end of a stretch.</summary>
    public int Stepped { get; private set; }

    public override void Run(RoadSteps<ScalarLane> road, int outputs, Span<ScalarLane> samples, CancellationToken cancellation = default)
    {
        own.Run(road, outputs, samples, cancellation);
        Stepped += outputs * stepsPerSample;
        if (Stepped >= after)
        {
            stop.Cancel();
        }
    }

    public override void RunBeside(
        BlockStepper<ScalarLane> other,
        RoadSteps<ScalarLane> road,
        int outputs,
        Span<ScalarLane> samples,
        Span<ScalarLane> others,
        CancellationToken cancellation = default) => throw new NotSupportedException("One car alone is stepped here.");

    public override void Dispose() => own.Dispose();
}
