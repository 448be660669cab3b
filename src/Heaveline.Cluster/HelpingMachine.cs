namespace Heaveline.Cluster;

/// <summary>A machine that helps with a study, as that of the study sees it.</summary>
/// <param name="name">What it is called.</param>
/// <param name="silo">Its address in the cluster.</param>
/// <param name="threads">On how many threads it does pieces.</param>
/// <param name="grains">Where its places are found.</param>
internal sealed class HelpingMachine(string name, SiloAddress silo, int threads, IGrainFactory grains)
{
    private int answers;
    private int failures;
    private int isGone;

    /// <summary>What it is called.</summary>
    public string Name => name;

    /// <summary>On how many threads it does pieces.</summary>
    public int Threads => threads;

    /// <summary>Its address in the cluster.</summary>
    public SiloAddress Silo => silo;

    /// <summary>How many pieces it has done.</summary>
    public int Answers => Volatile.Read(ref answers);

    /// <summary>Whether it is given up.</summary>
    public bool IsGone => Volatile.Read(ref isGone) != 0;

    /// <summary>Has a piece done at one of its places.</summary>
    public byte[] Do(int place, byte[] piece)
    {
        var slot = grains.GetGrain<ISlot>(Slot.Key(silo.ToParsableString(), place));
        var answer = Standing.At(silo, () => slot.Do(piece)).GetAwaiter().GetResult();
        Interlocked.Exchange(ref failures, 0);
        Interlocked.Increment(ref answers);
        return answer;
    }

    /// <summary>It did not answer.</summary>
    /// <returns>How often in a row.</returns>
    public int Fail() => Interlocked.Increment(ref failures);

    /// <summary>It is given up.</summary>
    /// <returns>Whether it was not yet.</returns>
    public bool GiveUp() => Interlocked.Exchange(ref isGone, 1) == 0;
}
