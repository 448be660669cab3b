using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Drives;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Events;
using Heaveline.Drives.Recovery;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What is asked of two drives: whether what was changed between them worked.</summary>
public sealed record ProveAsked
{
    /// <summary>What may differ between two drives besides the change, each of which can do what the change is said to have done.</summary>
    public static ImmutableArray<string> Circumstances { get; } = ["load", "pressures", "temperature", "fuel", "tyres", "phone"];

    /// <summary>The log of the drive before the change.</summary>
    public required Log Before { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>The log of the drive after it.</summary>
    public required Log After { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>What is known of the drive before.</summary>
    public EventSettings OfBefore { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = new();

    /// <summary>What is known of the drive after.</summary>
    public EventSettings OfAfter { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = new();

    /// <summary>How they are compared.</summary>
    public ComparisonSettings Comparison { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = new();

    /// <summary>
    /// Whether the car that moves most like each drive is worked out too, to say what changed in it: some seconds; needs the wheelbase.
    /// </summary>
    public bool WhatChanged { get; init; }

    /// <summary>The car file of the car before, under the load that was driven; null: none.</summary>
    public LoadedCar? Car { get; init; }

    /// <summary>The car file of the car that was driven after the change, where it is another; null: as before.</summary>
    public LoadedCar? CarAfter { get; init; }

    /// <summary>
    /// What of each drive's own file holds by the bumps of both, and which options stand instead, a sentence each; none where there is no such file.
    /// </summary>
    internal Func<DriveEvents, DriveEvents, IReadOnlyList<string>> Described { get; init; } = static (_, _) => [];

    /// <summary>
    /// Where what was written down about the drives contradicts that they were alike, a sentence each: see <see cref="AsWrittenDown"/>.
    /// </summary>
    internal ImmutableArray<string> Contradicted { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>
    /// The same car after the change, by its file: what it would do is forecast on the drive before, and held against the drive after.
    /// </summary>
    public Car? Change { get; init; }

    /// <summary>The car of the drive after by its file: the changed one where that is given.</summary>
    internal LoadedCar? DrivenAfter => CarAfter ?? (Car is { } before && Change is { } change ? before with { Car = change } : Car);

    /// <summary>Where the reader of the answer says what the logs do not.</summary>
    internal DriveAdvice Advice { get; init; } = DriveAdvice.Command;

    /// <summary>
    /// The change as factors of springs and dampers, where there is no file of the changed car: what it would do is forecast by the car that the
    /// drive before tells; null: none.
    /// </summary>
    public LinearChange? Scaled { get; init; }

    /// <summary>The change that is forecast, in words; null: none.</summary>
    internal string? Forecast => Change?.Name ?? (Scaled is { } scaled ? ScaledWords.Said(scaled) : null);

    /// <summary>Which number decides.</summary>
    public ComparedNumber Number { get; init; }

    /// <summary>Of <see cref="Circumstances"/> those that the user says were the same in both drives.</summary>
    public ImmutableArray<string> Same
    {
        get;
        init => field = value.All(s => Circumstances.Contains(s))
            ? value
            : throw new RefusedValueException(
                "what was the same", string.Join(", ", value), string.Join(", ", Circumstances), "Name circumstances of a drive.");
    }

    = [];

    /// <summary>The same, held against what was written down about both drives: of what is said to be the same only what that bears out.</summary>
    /// <param name="before">The drive before, with what holds of it; null where nothing was written down.</param>
    /// <param name="after">The drive after, likewise.</param>
    internal ProveAsked AsWrittenDown(RecordedDrive? before, RecordedDrive? after) => before is null || after is null ? this : this with
    {
        Same = [.. Same.Except(DriveCautions.Differing(before, after).Select(d => d.Word))],
        Contradicted = [.. DriveCautions.Of(before, after, Same)],
    };
}
