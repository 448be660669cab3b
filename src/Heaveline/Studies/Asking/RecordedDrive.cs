using System.Collections.Immutable;
using Heaveline.Answers;
using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>
/// A drive that was recorded: what is known of it, and its log, which is read when it is asked for. A drive of a garage has what was written down
/// about it; a log alone has nothing beside.
/// </summary>
public sealed record RecordedDrive
{
    /// <summary>What it is called.</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Say what the drive is called."); }

    /// <summary>Its folder in a garage, or the file, folder or archive of its log, as whoever found it calls it.</summary>
    public required string Path { get; init => field = Checked.NotBlank(value, "Say where the drive lies."); }

    /// <summary>Where, when, the weather, what was odd; blank for nothing.</summary>
    public string Note { get; init => field = value ?? ""; } = "";

    /// <summary>What was changed since the drive before; blank where that is not said.</summary>
    public string Change { get; init => field = value ?? ""; } = "";

    /// <summary>Whether somebody wrote down what is known of it; else it is a log alone.</summary>
    public bool IsDescribed { get; init; }

    /// <summary>The car that was driven, under its load; null where none is named.</summary>
    public LoadedCar? Car { get; init; }

    /// <summary>Pressure of the front tyres above the air's, Pa; null where it is not said.</summary>
    public double? FrontPressure { get; init; }

    /// <summary>Pressure of the rear tyres above the air's, Pa; null where it is not said.</summary>
    public double? RearPressure { get; init; }

    /// <summary>What is known of the drive, and what was decided about its bumps.</summary>
    public EventSettings Settings { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = new();

    /// <summary>Decisions of the reading of its log that are taken otherwise.</summary>
    public ImmutableArray<Overruling> Taken { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>What was the same as in the drive before, each a word of <see cref="ProveAsked.Circumstances"/>.</summary>
    public ImmutableArray<string> Same { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>The drive before the change; null where it follows on none.</summary>
    public RecordedDrive? Before { get; init; }

    /// <summary>
    /// Where what was written down contradicts that it and the drive before were alike, a sentence each; empty where it follows on none.
    /// </summary>
    public IReadOnlyList<string> Unlike => Before is null ? [] : [.. DriveCautions.Of(Before, this, Same)];

    /// <summary>The texts of what was written down, the car's among them.</summary>
    public ImmutableArray<InputText> Inputs { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Tells its log, unread, from what lay there at another time; blank where that cannot be told.</summary>
    public string Look { get; init => field = value ?? ""; } = "";

    /// <summary>Reads the log. It throws a <see cref="NoAnswerException"/> where that is refused.</summary>
    public required Func<CancellationToken, RecordedLog> Read { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>How a file of its log is called beside <see cref="Path"/>.</summary>
    /// <param name="file">The file's own name.</param>
    internal string NameOf(string file) => Path == file || Path.EndsWith("/" + file, StringComparison.Ordinal) ? Path : $"{Path}/{file}";
}
