namespace Heaveline.Films;

/// <summary>One frame of a film as it was followed; what is not seen in it is not there.</summary>
public sealed record FilmFrame
{
    /// <summary>Its own presentation time, s since the film's first frame: the instant at which the picture's first row was read.</summary>
    public required double Time { get; init; }

    /// <summary>The front hub as the picture shows it, the camera's own motion in it; null: not seen.</summary>
    public SeenHub? Front { get; init; }

    /// <summary>The rear hub, likewise.</summary>
    public SeenHub? Rear { get; init; }

    /// <summary>
    /// The body's motion since the marked frame about <see cref="FilmTrack.BodyPivot"/>, the camera's own motion in it; null: lost.
    /// </summary>
    public SeenPose? Body { get; init; }

    /// <summary>
    /// The background's motion since the marked frame about the picture's middle, which is the camera's; null: the camera is taken to stand still.
    /// </summary>
    public SeenPose? Camera { get; init; }
}
