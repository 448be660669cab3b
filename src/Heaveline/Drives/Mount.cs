using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Drives;

/// <summary>How the phone lay in the car.</summary>
public sealed record Mount
{
    /// <summary>Beyond this half-width pitch is said with a caution, rad.</summary>
    public static double Doubtful { get; } = 10.0 / In.Degrees.Factor;

    /// <summary>Beyond this half-width there is no pitch, rad.</summary>
    public static double Refused { get; } = 20.0 / In.Degrees.Factor;

    /// <summary>Beyond this wander the phone was in a hand, rad: gravity leans so far for a tenth of the time in no car.</summary>
    public static double Handling { get; } = 20.0 / In.Degrees.Factor;

    /// <summary>Up along the phone's axes, of length 1.</summary>
    public required Direction Up { get; init; }

    /// <summary>Forward along the phone's axes, of length 1; null where it was not found within <see cref="Refused"/>.</summary>
    public Direction? Forward { get; init; }

    /// <summary>Half-width of forward's 90 % interval about up, rad; null where nothing tells.</summary>
    public double? HalfWidth { get; init; }

    /// <summary>Half-width of up's 90 % interval, rad, from means over sixteenths of the drive.</summary>
    public double UpHalfWidth { get; init; }

    /// <summary>Angle of forward about up from <see cref="ForwardFrom"/>, counter-clockwise seen from above, rad; null without forward.</summary>
    public double? ForwardAngle { get; init; }

    /// <summary>
    /// How far from left the line lies about which bumps driven straight turn the body, rad; null where there are few bumps or it is no farther than
    /// chance lets it lie.
    /// </summary>
    public double? BumpsAside { get; init; }

    /// <summary>The phone's axis (x, y or z) that lies flattest, laid level: forward is told from it.</summary>
    public string ForwardFrom { get; init => field = value ?? ""; } = "";

    /// <summary>Angle between up and the nearest of the phone's axes, rad.</summary>
    public required double Tilt { get; init; }

    /// <summary>
    /// Nine seconds of ten gravity lay within this angle of its mean, rad: little in a phone that lies still, much in one in a hand.
    /// </summary>
    public required double Wander { get; init; }

    /// <summary>Whether gravity wanders so much that the phone cannot have lain in its place.</summary>
    public bool IsHandled => Wander > Handling;

    /// <summary>By what the accelerometer's values are multiplied so that gravity comes out as 9.80665 m/s².</summary>
    public required double Gain { get; init; }

    /// <summary>By how much the speed comes late, s; null where it was not found.</summary>
    public double? SpeedLag { get; init; }

    /// <summary>Share of the slow horizontal acceleration that braking and turning explain; null without speed or turn rate.</summary>
    public double? Explained { get; init; }

    /// <summary>What braking counts for: 1 where speed and acceleration have their right units.</summary>
    public double? Braking { get; init; }

    /// <summary>What turning counts for: 1 where the turn rate has its right unit.</summary>
    public double? Turning { get; init; }

    /// <summary>Whether the gyro turns by the other hand than the accelerometer's axes and was turned round.</summary>
    public bool IsHandTurned { get; init; }

    /// <summary>When the phone was moved in its place, s since the log's start.</summary>
    public ImmutableArray<double> Moves { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Why there is no forward, a sentence; blank where there is one.</summary>
    public string NoForward { get; init => field = value ?? ""; } = "";
}
