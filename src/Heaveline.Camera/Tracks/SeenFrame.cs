using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>What was found in one frame; all places are those that the camera of the marked frame would see.</summary>
internal sealed record SeenFrame
{
    /// <summary>Its presentation time, s after the first.</summary>
    public required double Time { get; init; }

    /// <summary>The camera's turning from the marked frame to this one.</summary>
    public required CameraTurn Turn { get; init; }

    /// <summary>Where the body's points are; empty: lost.</summary>
    public required PicturePoint?[] Body { get; init; }

    /// <summary>The body's motion since the marked frame.</summary>
    public required Similarity Motion { get; init; }

    /// <summary>The front hub.</summary>
    public required SeenHub? Front { get; init; }

    /// <summary>The rear hub.</summary>
    public required SeenHub? Rear { get; init; }
}
