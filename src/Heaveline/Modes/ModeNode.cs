namespace Heaveline.Modes;

/// <summary>
/// Where along the side view the body moves least in one mode. An undamped mode has a still point; in a damped one heave and pitch are out of phase,
/// the instantaneous centre wanders, and this is only the place of least amplitude.
/// </summary>
public sealed record ModeNode
{
    /// <summary>Ahead of the loaded centre of gravity, m; behind is negative.</summary>
    public required double Ahead { get; init; }

    /// <summary>Behind the front axle, m; ahead of it is negative.</summary>
    public required double BehindFrontAxle { get; init; }

    /// <summary>Amplitude there over the greater of the amplitudes above the two axles (–): 0 for a point that stands still.</summary>
    public required double Remaining { get; init; }
}
