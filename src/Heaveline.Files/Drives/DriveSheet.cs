using System.Collections.Immutable;
using Heaveline.Drives;

namespace Heaveline.Files.Drives;

/// <summary>
/// What a person wrote down about a drive: which car it was, how it was loaded, where the phone lay, what to make of its bumps. Nothing in it is
/// computed; the logs lie beside it, as they were brought in.
/// </summary>
public sealed record DriveSheet
{
    /// <summary>What the drive is called.</summary>
    public required string Name { get; init; }

    /// <summary>Where, when, the weather, what was odd; null for nothing.</summary>
    public string? Note { get; init; }

    /// <summary>The car file or variant, relative to the drive's own file, as written; null where none is named.</summary>
    public string? Car { get; init; }

    /// <summary>Name of the load it was driven with; null where none is named.</summary>
    public string? Load { get; init; }

    /// <summary>Wheelbase of a car without a file, m; null where the car's file says it, or nobody.</summary>
    public double? Wheelbase { get; init; }

    /// <summary>Where the phone lay; null where it is not said.</summary>
    public PhoneAsWritten? Phone { get; init; }

    /// <summary>Pressure of the front tyres above the air's, Pa; null where it is not said.</summary>
    public double? FrontPressure { get; init; }

    /// <summary>Pressure of the rear tyres above the air's, Pa; null where it is not said.</summary>
    public double? RearPressure { get; init; }

    /// <summary>Name of the drive before the change, a folder beside this one's; null where this drive follows on none.</summary>
    public string? After { get; init; }

    /// <summary>What was changed between the two; null where it is not said.</summary>
    public string? Change { get; init; }

    /// <summary>What was the same in both, each a word of <see cref="Studies.ProveAsked.Circumstances"/>.</summary>
    public ImmutableArray<string> Same { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Decisions of the reading that are taken otherwise.</summary>
    public ImmutableArray<Overruling> Taken { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Which bumps belong to one site: its name and an instant about which one is, s since the log's start.</summary>
    public ImmutableArray<(string Site, double At)> Sites { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Instants about which a bump is not to count, s since the log's start.</summary>
    public ImmutableArray<double> Rejected { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Instants about which a bump is that was not found, s since the log's start.</summary>
    public ImmutableArray<double> Added { get; init => field = value.IsDefault ? [] : value; } = [];
}
