using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// Steps the equations of motion of cars side by side at a fixed step, from rest at trim on a flat road, where the past accelerations are exactly
/// zero. Disposed of when the run is over.
/// </summary>
/// <typeparam name="TSample">A recorded number, one place a car.</typeparam>
internal abstract class BlockStepper<TSample> : IDisposable
    where TSample : unmanaged, ILane<TSample>
{
    private protected BlockStepper()
    {
    }

    /// <summary>Goes on from where the run stands.</summary>
    /// <param name="road">Road heights and rates for these steps, and the sharp steps of the whole run.</param>
    /// <param name="outputs">Number of recorded samples.</param>
    /// <param name="samples">Receives as many numbers per output as there are channels.</param>
    /// <param name="cancellation">Stops the run.</param>
    public abstract void Run(RoadSteps<TSample> road, int outputs, Span<TSample> samples, CancellationToken cancellation = default);

    /// <summary>
    /// Goes on together with others that stand where this run stands and meet the same road: while one waits for its forces the other goes on. The
    /// bits are those of each alone.
    /// </summary>
    /// <param name="other">The others.</param>
    /// <param name="road">Road heights and rates for these steps.</param>
    /// <param name="outputs">Number of recorded samples.</param>
    /// <param name="samples">Receives as many numbers per output as there are channels.</param>
    /// <param name="others">The same of the others.</param>
    /// <param name="cancellation">Stops the run.</param>
    public abstract void RunBeside(
        BlockStepper<TSample> other,
        RoadSteps<TSample> road,
        int outputs,
        Span<TSample> samples,
        Span<TSample> others,
        CancellationToken cancellation = default);

    public abstract void Dispose();
}
