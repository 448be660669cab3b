namespace Heaveline.Cluster;

/// <summary>A machine that helps with a study, as that of the study sees it.</summary>
/// <param name="name">What it is called.</param>
/// <param name="silo">Its address in the cluster.</param>
/// <param name="grains">Where its places are found.</param>
internal sealed class HelpingMachine(string name, SiloAddress silo, IGrainFactory grains)
{
    private readonly List<byte[]> done = [];
    private int failures;
    private int isGone;
    private volatile bool isDoubted;

    /// <summary>What it is called.</summary>
    public string Name => name;

    /// <summary>Its address in the cluster.</summary>
    public SiloAddress Silo => silo;

    /// <summary>How many pieces it has done.</summary>
    public int Answers
    {
        get
        {
            lock (done)
            {
                return done.Count;
            }
        }
    }

    /// <summary>Whether it is given up.</summary>
    public bool IsGone => Volatile.Read(ref isGone) != 0;

    /// <summary>Whether what it answers is not to be trusted.</summary>
    public bool IsDoubted => isDoubted;

    /// <summary>Has a piece done at one of its places.</summary>
    /// <returns>Its answer, and the how manieth of this machine it is.</returns>
    /// <exception cref="InvalidOperationException">What it answers is not to be trusted any more.</exception>
    public (byte[] Answer, int Number) Do(int place, byte[] piece)
    {
        var slot = grains.GetGrain<ISlot>(Slot.Key(silo.ToParsableString(), place));
        var answer = Standing.At(silo, () => slot.Do(piece)).GetAwaiter().GetResult();
        Interlocked.Exchange(ref failures, 0);
        lock (done)
        {
            if (isDoubted)
            {
                throw new InvalidOperationException("What this machine answers is not to be trusted.");
            }

            done.Add(piece);
            return (answer, done.Count);
        }
    }

    /// <summary>It was found to answer otherwise: nothing that it says is taken from now on.</summary>
    /// <returns>The pieces whose answers are its.</returns>
    public IReadOnlyList<byte[]> Doubt()
    {
        GiveUp();
        lock (done)
        {
            isDoubted = true;
            return [.. done];
        }
    }

    /// <summary>It did not answer.</summary>
    /// <returns>How often in a row.</returns>
    public int Fail() => Interlocked.Increment(ref failures);

    /// <summary>It is given up.</summary>
    /// <returns>Whether it was not yet.</returns>
    public bool GiveUp() => Interlocked.Exchange(ref isGone, 1) == 0;
}
