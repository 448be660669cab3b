using System.Net;

namespace Heaveline.Cluster;

/// <summary>What a study that others may help with is given.</summary>
public sealed record HelpedAsked
{
    /// <summary>Where it listens.</summary>
    public required IPEndPoint At { get; init; }

    /// <summary>The code that whoever helps must have.</summary>
    public required string Code { get; init; }

    /// <summary>Where machines are noted.</summary>
    public Membership Membership { get; init; } = Membership.Own;

    /// <summary>The question and the texts of its files.</summary>
    public required byte[] Texts { get; init; }

    /// <summary>What the study is known by.</summary>
    public required string Hash { get; init; }

    /// <summary>Which program does its pieces.</summary>
    public required string Program { get; init; }

    /// <summary>What this machine is called.</summary>
    public string Machine { get; init; } = Environment.MachineName;

    /// <summary>Told the pieces that a machine did which was found to answer otherwise: whoever keeps their answers lets them go.</summary>
    public Action<IReadOnlyList<byte[]>> Withdraw { get; init; } = _ => { };

    /// <summary>On how many threads pieces are done here.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;

    /// <summary>How many questions in a row, one a second, a machine may leave unanswered before it is taken for dead.</summary>
    internal int MostMissed { get; init; } = 3;
}
