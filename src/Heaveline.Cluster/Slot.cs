using Orleans.Placement;

namespace Heaveline.Cluster;

/// <summary>A place at this machine where one piece is done at a time.</summary>
/// <param name="work">What does them.</param>
/// <param name="silo">This machine.</param>
[RandomPlacement]
internal sealed class Slot(SlotWork work, ILocalSiloDetails silo) : Grain, ISlot
{
    private const char Apart = '|';

    /// <summary>The key of a place at a machine.</summary>
    public static string Key(string silo, int place) => FormattableString.Invariant($"{silo}{Apart}{place}");

    /// <inheritdoc/>
    public Task<byte[]> Do(byte[] piece)
    {
        // Where a machine has gone its places would come up at another one.
        if (this.GetPrimaryKeyString().Split(Apart)[0] != silo.SiloAddress.ToParsableString())
        {
            DeactivateOnIdle();
            throw new SiloUnavailableException("The machine of this place has gone.");
        }

        return work.Do(piece);
    }
}
