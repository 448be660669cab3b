using Heaveline.Quantities;

namespace Heaveline.Files.Crews;

/// <summary>What the file of a crew says: machines that stand by for whatever study one of them begins.</summary>
public sealed record CrewSheet
{
    /// <summary>The most threads of a machine.</summary>
    public const int MostThreads = 1024;

    /// <summary>What the crew is called.</summary>
    public required string Name { get; init; }

    /// <summary>The database in which machines and studies are noted, in words.</summary>
    public required string NotedIn { get; init; }

    /// <summary>The file with the code that all machines have, as seen from the crew's file.</summary>
    public required string CodeFile { get; init; }

    /// <summary>On how many threads a machine does pieces; null: on as many as it has processors.</summary>
    public int? Threads { get; init => field = value is { } count ? (int)Checked.Within(count, 1.0, MostThreads) : null; }
}
