using Heaveline.Quantities;

namespace Heaveline.Cluster;

/// <summary>What a machine that stands by for a crew is given.</summary>
public sealed record StandByAsked
{
    /// <summary>The crew.</summary>
    public required Crew Crew { get; init; }

    /// <summary>Which Heaveline does pieces here.</summary>
    public required string Program { get; init; }

    /// <summary>What this machine is called. A study that was begun at a machine of the same name has this machine's threads already.</summary>
    public string Machine { get; init; } = Environment.MachineName;

    /// <summary>On how many threads pieces are done, of each study.</summary>
    public int Threads { get; init => field = (int)Checked.Within(value, 1.0, HelpedStudy.MostThreads); } = Environment.ProcessorCount;

    /// <summary>Makes a reader for a study.</summary>
    public required Func<IStudyReader> Reader { get; init; }

    /// <inheritdoc cref="HelpAsked.MostMissed"/>
    internal int MostMissed { get; init; } = 3;
}
