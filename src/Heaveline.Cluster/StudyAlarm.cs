
namespace Heaveline.Cluster;

/// <summary>
/// What a machine does when the cluster has given it up, or it the cluster: it stays where it is, and whoever asks is told. Left alone it would end
/// the whole process.
/// </summary>
internal sealed class StudyAlarm : IFatalErrorHandler
{
    private volatile bool isRaised;

    /// <summary>Whether this machine stands alone now.</summary>
    public bool IsRaised => isRaised;

    /// <inheritdoc/>
    public void OnFatalException(object? sender = null, string? context = null, Exception? exception = null) => isRaised = true;

    /// <inheritdoc/>
    public bool IsUnexpected(Exception exception) => exception is not ThreadAbortException;
}
