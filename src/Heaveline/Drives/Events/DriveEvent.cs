namespace Heaveline.Drives.Events;

/// <summary>One bump of a drive.</summary>
public sealed record DriveEvent
{
    /// <summary>Below this length, m, bumps are short: how short is hardly told by a car.</summary>
    public const double Short = 1.5;

    /// <summary>Whether its length is known: to half of itself, or to be short.</summary>
    public bool IsLengthKnown => LengthHalfWidth <= 0.5 * Length || Length + LengthHalfWidth < Short;

    /// <summary>Its number, 1 for the first in time.</summary>
    public required int Number { get; init; }

    /// <summary>The name of its site.</summary>
    public required string Site { get; init; }

    /// <summary>When it was noticed, s since the log's start: late by some tenths of a second.</summary>
    public required double Seen { get; init; }

    /// <summary>By how many times it stands above what is usual about it; 0 where a user added it.</summary>
    public required double Score { get; init; }

    /// <summary>The greatest share of the motion about it that a usual car over a usual bump accounts for; 1 where nobody asked.</summary>
    public double Explained { get; init; } = 1.0;

    /// <summary>When the front wheels first touch it, s since the log's start.</summary>
    public required double Onset { get; init; }

    /// <summary>Half-width of that (90 %), s.</summary>
    public required double OnsetHalfWidth { get; init; }

    /// <summary>Speed at the onset, m/s.</summary>
    public required double Speed { get; init; }

    /// <summary>Half-width of that (90 %), m/s.</summary>
    public required double SpeedHalfWidth { get; init; }

    /// <summary>Rate at which the speed changes over it, over the speed, 1/s.</summary>
    public required double SpeedChange { get; init; }

    /// <summary>How far the car had come at the onset since the log's start, m; not finite without a speed.</summary>
    public required double Distance { get; init; }

    /// <summary>Where the car was at the onset; null where that is not known. Never printed nor drawn: it tells where somebody drove.</summary>
    public GroundPlace? Place { get; init; }

    /// <summary>What it looks like.</summary>
    public required EventKind Kind { get; init; }

    /// <summary>Length of the rise or hollow along the road, m.</summary>
    public required double Length { get; init; }

    /// <summary>Half-width of that (90 %), m.</summary>
    public required double LengthHalfWidth { get; init; }

    /// <summary>When the rear wheels have left it, s since the log's start: the hit ends and the settling begins.</summary>
    public required double HitUntil { get; init; }

    /// <summary>When the settling ends: at the next bump, at most 3 s after it began, s since the log's start.</summary>
    public required double SettlingUntil { get; init; }

    /// <summary>Whether it counts.</summary>
    public bool IsKept => Reason.Length == 0;

    /// <summary>Why it does not count, a sentence; blank where it does.</summary>
    public required string Reason { get; init; }

    /// <summary>Whether a user added or rejected it.</summary>
    public required bool ByHand { get; init; }

    /// <summary>Its numbers.</summary>
    public required EventNumbers Numbers { get; init; }
}
