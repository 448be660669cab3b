using System.Collections.Immutable;

namespace Heaveline.Drives.Identification;

/// <summary>A drive that was never driven, with the phone and the road that it would meet.</summary>
public sealed record PlannedDrive
{
    /// <summary>The passes.</summary>
    public required ImmutableArray<PlannedPass> Passes { get; init; }

    /// <summary>The humps by name.</summary>
    public ImmutableDictionary<string, PlannedHump> Humps { get; init; } = ImmutableDictionary<string, PlannedHump>.Empty;

    /// <summary>
    /// Displacement density of the road at 0.1 cycles/m, one-sided, m³: 16e-6 is class A of ISO 8608, 64e-6 class B, 256e-6 class C.
    /// </summary>
    public double Roughness { get; init; } = 64e-6;

    /// <summary>Samples a second of the phone, Hz; 0.24 of it is the highest frequency read, 12 Hz at most.</summary>
    public double Rate { get; init; } = 100.0;

    /// <summary>Whether the phone has a gyro.</summary>
    public bool HasTurnRate { get; init; } = true;

    /// <summary>Noise density of the vertical acceleration, one-sided, (m/s²)²/Hz.</summary>
    public double VerticalNoise { get; init; } = 5e-5;

    /// <summary>Noise density of the pitch rate, one-sided, (rad/s)²/Hz.</summary>
    public double PitchNoise { get; init; } = 3.2e-7;
}
