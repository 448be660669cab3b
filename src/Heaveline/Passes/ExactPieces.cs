using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Passes.Exact;

namespace Heaveline.Passes;

/// <summary>
/// Solves a pass exactly, from kink to kink, to rounding: the certified run, for cars whose laws are straight between their kinks. It takes no step
/// and has no error to state.
/// </summary>
public sealed record ExactPieces : PassMethod
{
    internal override Pass Run(PassRequest request, PassRecord record, CancellationToken cancellation)
    {
        var (model, road, speed) = request;
        // Of its clock only the samples count.
        var timing = PassTiming.Of(request, record, new StepLimit(record.SampleStep, StepCause.None, AxleEnd.Front));
        var run = ExactRun.Of(model, road, speed, timing.Start, timing.SampleStep, timing.Samples, cancellation: cancellation);
        return new Pass(request, timing, run.Samples, Statistics(run));
    }

    private static PassStatistics Statistics(ExactRun run) => new()
    {
        Method = "exact linear pieces one after the other, Taylor series of order 14",
        Step = run.Samples.Length / Channel.Count * run.OutputStep / run.Statistics.Pieces,
        Steps = run.Statistics.Pieces,
    };
}
