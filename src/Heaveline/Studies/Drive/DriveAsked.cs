using Heaveline.Drives;
using Heaveline.Drives.Events;

namespace Heaveline.Studies;

/// <summary>What is asked of a drive: what its log is good for, its bumps, its comfort.</summary>
public sealed record DriveAsked
{
    /// <summary>The log.</summary>
    public required Log Log { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>The car that was driven, under its load; null: not known.</summary>
    public LoadedCar? Car { get; init; }

    /// <summary>What is known of the drive, and what was decided about its bumps.</summary>
    public EventSettings Settings { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = new();

    /// <summary>The site whose road is wanted; null: none.</summary>
    public string? Road { get; init; }

    /// <summary>The name of the car's file, without its folder, for a variant of it; blank where it has none.</summary>
    public string CarFile { get; init => field = value ?? ""; } = "";

    /// <summary>
    /// What of the drive's own file holds by its bumps, and which options stand instead, a sentence; blank where there is no such file.
    /// </summary>
    internal Func<DriveEvents?, string> Described { get; init; } = static _ => "";

    /// <summary>Where the reader of the answer says what the log does not.</summary>
    internal DriveAdvice Advice { get; init; } = DriveAdvice.Command;

    /// <summary>Whether the roughness along the drive is wanted.</summary>
    public bool WantsRoughness { get; init; }

    /// <summary>Whether the car file is to be scaled until it moves as the drive did.</summary>
    public bool WantsTwin { get; init; }
}
