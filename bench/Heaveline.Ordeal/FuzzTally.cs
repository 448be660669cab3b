namespace Heaveline.Ordeal;

/// <summary>What came of spoilt texts so far.</summary>
internal sealed class FuzzTally
{
    /// <summary>What was wrong.</summary>
    public List<string> Faults { get; } = [];

    /// <summary>How many were read all the same.</summary>
    public int Accepted { get; set; }

    /// <summary>Most processor time for one.</summary>
    public TimeSpan Slowest { get; set; }

    /// <summary>Most memory asked for by one, bytes.</summary>
    public long MostBytes { get; set; }
}
