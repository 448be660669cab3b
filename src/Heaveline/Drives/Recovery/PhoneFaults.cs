using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Drives.Recovery;

/// <summary>What a phone does to what it feels, and when it writes. Every chance comes from a seed.</summary>
/// <remarks>Immutable: change a copy with <c>with</c>.</remarks>
public sealed record PhoneFaults
{
    /// <summary>A phone without faults, 100 samples a second.</summary>
    public static PhoneFaults None { get; } = new();

    /// <summary>Samples a second of acceleration and turn rate. 5 to 1000. Default 100.</summary>
    public double Rate { get; init => field = Checked.Within(value, 5.0, 1000.0); } = 100.0;

    /// <summary>Standard deviation of a written instant, s, three of it at most; the sample is taken at the instant written.</summary>
    public double Jitter { get; init => field = Checked.Within(value, 0.0, 0.1); }

    /// <summary>What the accelerometer shows of what it feels (–). 0.5 to 2.</summary>
    public double ForceGain { get; init => field = Checked.Within(value, 0.5, 2.0); } = 1.0;

    /// <summary>What the gyro shows of what it feels (–). 0.5 to 2.</summary>
    public double TurnGain { get; init => field = Checked.Within(value, 0.5, 2.0); } = 1.0;

    /// <summary>Added to each axis of the accelerometer, m/s².</summary>
    public double ForceOffset { get; init => field = Checked.Within(value, -5.0, 5.0); }

    /// <summary>Added to each axis of the gyro, rad/s.</summary>
    public double TurnOffset { get; init => field = Checked.Within(value, -1.0, 1.0); }

    /// <summary>Noise of a sample of the accelerometer, m/s² RMS.</summary>
    public double ForceNoise { get; init => field = Checked.Within(value, 0.0, 5.0); }

    /// <summary>Noise of a sample of the gyro, rad/s RMS.</summary>
    public double TurnNoise { get; init => field = Checked.Within(value, 0.0, 1.0); }

    /// <summary>The step in which the accelerometer counts, m/s²; 0: none.</summary>
    public double ForceStep { get; init => field = Checked.Within(value, 0.0, 1.0); }

    /// <summary>Vibration of the engine along up, Hz; of no account where its size is 0.</summary>
    public double EngineFrequency { get; init => field = Checked.Within(value, 0.0, 500.0); } = 31.0;

    /// <summary>Its size, m/s².</summary>
    public double EngineSize { get; init => field = Checked.Within(value, 0.0, 10.0); }

    /// <summary>Parts in which nothing is written.</summary>
    public ImmutableArray<Stretch> Gaps { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Fixes of the speed a second. 0: the log has no speed. 0 to 20.</summary>
    public double SpeedRate { get; init => field = Checked.Within(value, 0.0, 20.0); } = 1.0;

    /// <summary>By what a fix's speed is late, s. −5 to 5.</summary>
    public double SpeedLag { get; init => field = Checked.Within(value, -5.0, 5.0); }

    /// <summary>Noise of a fix's speed, m/s RMS.</summary>
    public double SpeedNoise { get; init => field = Checked.Within(value, 0.0, 5.0); }

    /// <summary>Fixes of the position a second. 0: the log has no position. 0 to 20.</summary>
    public double PositionRate { get; init => field = Checked.Within(value, 0.0, 20.0); }

    /// <summary>Noise of a fix's position, m RMS, east and north each.</summary>
    public double PositionNoise { get; init => field = Checked.Within(value, 0.0, 100.0); }

    /// <summary>Whether the log has a gyro.</summary>
    public bool HasGyro { get; init; } = true;

    /// <summary>The phone's slip; null: it lies still.</summary>
    public PhoneSlip? Slip { get; init; }

    /// <summary>Where its chances come from.</summary>
    public ulong Seed { get; init; } = 1;
}
