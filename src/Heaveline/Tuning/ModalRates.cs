using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Tuning;

/// <summary>
/// A suspension's rates in the four motions that four wheels can make against the body: all together, front against rear, left against right, and
/// diagonal against diagonal. With the wheels' rates K these are σᵀ·K·σ, σ the wheel travels per unit of the motion.
/// </summary>
public sealed record ModalRates
{
    /// <summary>Heave: every wheel travels alike. Force per travel, N/m or N s/m.</summary>
    public required double Heave { get; init; }

    /// <summary>Pitch about the middle of the wheelbase: travel ±L/2 per angle. N m/rad or N m s/rad.</summary>
    public required double Pitch { get; init; }

    /// <summary>Roll about the middle plane: travel ±half the track per angle. N m/rad or N m s/rad; 0 for a two-wheeler.</summary>
    public required double Roll { get; init; }

    /// <summary>
    /// Warp: front left and rear right up by w, the others down by w; the sum of the four forces along it per w. N/m or N s/m; 0 for a two-wheeler.
    /// </summary>
    public required double Warp { get; init; }

    /// <summary>Coupling of heave and pitch, force per angle, N/rad: 0 when both axles are alike.</summary>
    public required double HeavePitch { get; init; }

    internal static ModalRates Of(Matrix<double> wheels, double wheelbase, double frontTrack, double rearTrack, bool rolls)
    {
        var vector = Vector<double>.Build;
        var heave = vector.Dense([1.0, 1.0, 1.0, 1.0]);
        var pitch = vector.Dense([0.5 * wheelbase, 0.5 * wheelbase, -0.5 * wheelbase, -0.5 * wheelbase]);
        var roll = vector.Dense([-0.5 * frontTrack, 0.5 * frontTrack, -0.5 * rearTrack, 0.5 * rearTrack]);
        var warp = vector.Dense([1.0, -1.0, -1.0, 1.0]);
        return new ModalRates
        {
            Heave = heave * (wheels * heave),
            Pitch = pitch * (wheels * pitch),
            Roll = rolls ? roll * (wheels * roll) : 0.0,
            Warp = rolls ? warp * (wheels * warp) : 0.0,
            HeavePitch = heave * (wheels * pitch),
        };
    }
}
