using System.Collections.Immutable;
using Heaveline.Drives;

namespace Heaveline.Files.Drives;

/// <summary>What came of reading a log: the log, or why it is refused.</summary>
public sealed record LogReading
{
    /// <summary>The log; null where it is refused.</summary>
    public Log? Log { get; init; }

    /// <summary>Why it is refused, each with the file that it is about.</summary>
    public ImmutableArray<LogRefusal> Refusals { get; init; } = [];

    /// <summary>Files that were read, by the paths on this machine.</summary>
    public ImmutableArray<string> Paths { get; init; } = [];

    internal static LogReading Refused(IEnumerable<LogRefusal> refusals) => new() { Refusals = [.. refusals] };
}
