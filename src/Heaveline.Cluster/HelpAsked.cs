using Heaveline.Pieces;

namespace Heaveline.Cluster;

/// <summary>What a machine that helps with a study is given.</summary>
public sealed record HelpAsked
{
    /// <summary>The machine of the study: a name or an address.</summary>
    public required string Host { get; init; }

    /// <summary>The port that it listens at.</summary>
    public required int Port { get; init; }

    /// <summary>The code of the study.</summary>
    public required string Code { get; init; }

    /// <summary>Where machines are noted.</summary>
    public Membership Membership { get; init; } = Membership.Own;

    /// <summary>Which program does pieces here.</summary>
    public required string Program { get; init; }

    /// <summary>What this machine is called.</summary>
    public string Machine { get; init; } = Environment.MachineName;

    /// <summary>On how many threads pieces are done.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;

    /// <summary>How many questions in a row, one a second, a machine may leave unanswered before it is taken for dead.</summary>
    internal int MostMissed { get; init; } = 3;

    /// <summary>Makes of question and texts, and of what they are known by, who does the pieces.</summary>
    public required Func<byte[], string, IPieceDoer> Reads { get; init; }
}
