using Heaveline.Studies;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Drives;

/// <summary>Works out what else a car that is told by a drive tells, for all readers in their turn.</summary>
/// <param name="queue">Where it waits for its turn.</param>
internal sealed class DriveDetails(StudyQueue queue)
{
    /// <summary>One thing more that the car tells; what was worked out before is there at once.</summary>
    /// <param name="detail">What the car tells.</param>
    /// <param name="kind">Which of it.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="Heaveline.Web.Serving.QueueFullException">Too many wait already.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public Task<DriveDetailPart> Of(DriveDetail detail, DriveDetailKind kind, CancellationToken stop) => queue.Run(() => detail.Of(kind, stop), stop);
}
