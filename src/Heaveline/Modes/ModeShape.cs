using System.Numerics;

namespace Heaveline.Modes;

/// <summary>
/// Complex amplitudes of one mode, scaled so that the largest of the plain motions is 1 with phase 0. Plain motions are compared in metres: pitch as
/// ½·wheelbase·θ, roll as ½·mean track·φ, flow as volume over the mean displacer area √(A_f·A_r).
/// </summary>
public sealed record ModeShape
{
    /// <summary>Heave z, m.</summary>
    public required Complex Heave { get; init; }

    /// <summary>Pitch θ, rad, nose-down.</summary>
    public required Complex Pitch { get; init; }

    /// <summary>Roll φ, rad, right-side-down.</summary>
    public required Complex Roll { get; init; }

    /// <summary>Heights of the four wheels u, m: front left, front right, rear left, rear right.</summary>
    public required IReadOnlyList<Complex> Wheels { get; init; }

    /// <summary>Fluid gone from front to rear in the left and the right line, m³; empty without a fluid line that flows.</summary>
    public required IReadOnlyList<Complex> Flow { get; init; }

    /// <summary>The plain motions, m.</summary>
    public required IReadOnlyDictionary<Motion, Complex> Motions { get; init; }
}
