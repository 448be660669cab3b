namespace Heaveline.Cluster;

/// <summary>A place at a machine where one piece is done at a time. Its key says at which machine, and which of its places.</summary>
public interface ISlot : IGrainWithStringKey
{
    /// <summary>Does a piece.</summary>
    /// <param name="piece">The piece.</param>
    Task<byte[]> Do(byte[] piece);
}
