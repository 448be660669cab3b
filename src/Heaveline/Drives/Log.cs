using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Drives;

/// <summary>What a phone or a logger wrote during a drive: its sensors on one clock, and how the files were understood.</summary>
public sealed record Log
{
    /// <summary>The sensors, at most one of a kind, acceleration among them.</summary>
    public required ImmutableArray<SensorTrack> Tracks
    {
        get;
        init => field = !value.IsDefault && value.Any(t => t.Kind is SensorKind.Acceleration or SensorKind.AccelerationWithoutGravity)
            ? value
            : throw new RefusedValueException(
                "tracks of a log", "no acceleration", "acceleration among them", "Give the file of the accelerometer.");
    }

    /// <summary>Every decision of the reading, in order.</summary>
    public ImmutableArray<StoryLine> Story { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Decisions that the user took otherwise.</summary>
    public ImmutableArray<Overruling> Overrulings { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>The sensor of a kind; null where the log has none.</summary>
    public SensorTrack? Of(SensorKind kind) => Tracks.FirstOrDefault(t => t.Kind == kind);
}
