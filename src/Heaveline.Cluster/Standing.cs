using Orleans.Runtime.Placement;

namespace Heaveline.Cluster;

/// <summary>Calls of what stands at a certain machine, and comes up there when it is first called.</summary>
internal static class Standing
{
    /// <summary>Calls it.</summary>
    /// <param name="silo">Where it stands.</param>
    /// <param name="call">The call.</param>
    public static async Task<T> At<T>(SiloAddress silo, Func<Task<T>> call)
    {
        RequestContext.Set(IPlacementDirector.PlacementHintKey, silo);
        try
        {
            return await call().ConfigureAwait(false);
        }
        finally
        {
            RequestContext.Remove(IPlacementDirector.PlacementHintKey);
        }
    }
}
