using System.Collections.Immutable;

namespace Heaveline.Drives.Events;

/// <summary>Instants that a user named and that nothing of the drive answers to, s since the log's start.</summary>
internal sealed record UnmetInstants
{
    /// <summary>The part of the log that is read.</summary>
    public (double From, double To) Read { get; init; }

    /// <summary>Of <see cref="EventSettings.Added"/> those outside that part.</summary>
    public ImmutableArray<double> Added { get; init; } = [];

    /// <summary>Of <see cref="EventSettings.Rejected"/> those at no bump.</summary>
    public ImmutableArray<double> Rejected { get; init; } = [];

    /// <summary>Of <see cref="EventSettings.Sites"/> those at no bump.</summary>
    public ImmutableArray<(string Site, double At)> Sites { get; init; } = [];

    /// <summary>Names that a later one took the bump from.</summary>
    public ImmutableArray<(string Site, string By, double At)> Renamed { get; init; } = [];
}
