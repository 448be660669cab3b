using System.Collections.Immutable;

namespace Heaveline.Drives.Identification;

/// <summary>
/// What the car is identified from: one window of a drive about the crossing of a hump, or a stretch of rough road, on the even grid of the drive.
/// </summary>
public sealed record DriveWindow
{
    /// <summary>Samples a second, Hz.</summary>
    public required double Rate { get; init => field = CarValue.Above(value, 0.0, "the rate of a window"); }

    /// <summary>Vertical acceleration of the floor under the phone, up, gravity taken off, m/s², shape (n).</summary>
    public required ImmutableArray<double> Vertical { get; init; }

    /// <summary>Pitch rate, nose down positive, rad/s, shape (n); empty without a gyro.</summary>
    public required ImmutableArray<double> PitchRate { get; init; }

    /// <summary>Time from the first sample to where the front axle is thought to meet the hump, s; 0 on rough road.</summary>
    public double Before { get; init; }

    /// <summary>Standard deviation of that guess, s.</summary>
    public double BeforeSpread { get; init => field = CarValue.Above(value, 0.0, "the doubt of an onset"); } = 0.5;

    /// <summary>Speed, m/s.</summary>
    public required double Speed { get; init => field = CarValue.Above(value, 0.0, "the speed of a window"); }

    /// <summary>Standard deviation of the logarithm of the speed.</summary>
    public double SpeedSpread { get; init => field = CarValue.Above(value, 0.0, "the doubt of a speed"); } = 0.03;

    /// <summary>The site whose hump is crossed; null on rough road without one.</summary>
    public string? Site { get; init; }

    /// <summary>Whether the site is a hump, which can be driven over on purpose; not a hollow or a joint that a road happens to have.</summary>
    public bool IsHump { get; init; } = true;

    /// <summary>The number of the event it holds; 0 for none.</summary>
    public int Event { get; init; }
}
