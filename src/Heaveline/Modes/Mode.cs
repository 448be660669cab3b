using System.Numerics;

namespace Heaveline.Modes;

/// <summary>One damped mode of the linear model: everything moves as Re(shape·e^{λt}).</summary>
public sealed record Mode
{
    /// <summary>Root λ, 1/s; of a conjugate pair the one with positive imaginary part.</summary>
    public required Complex Root { get; init; }

    /// <summary>Who moves how.</summary>
    public required ModeShape Shape { get; init; }

    /// <summary>
    /// Share of each plain motion in the mode (–), summing to 1: φ_j·((2λM + C)φ)_j over their sum, which is the motion's share of the energy in an
    /// undamped mode and the participation factor [Pérez-Arriaga, Verghese and Schweppe, IEEE Trans. PAS-101,
    /// 1982] of its place and speed in a damped one.
    /// </summary>
    public required IReadOnlyDictionary<Motion, double> Shares { get; init; }

    /// <summary>
    /// Where the body moves least along the side view; null when the mode hardly pitches, or does not move the body in the side view.
    /// </summary>
    public required ModeNode? Node { get; init; }

    /// <summary>What moves of the body seen from the side; null where something else moves most.</summary>
    public required BodySwing? Swing { get; init; }

    /// <summary>Whether it swings; otherwise it creeps back (one root of an overdamped motion).</summary>
    public bool Swings => Root.Imaginary > 0.0;

    /// <summary>Undamped frequency |λ|/2π, Hz; of a mode that creeps only |λ|/2π, see <see cref="TimeConstant"/>.</summary>
    public double Frequency => Root.Magnitude / (2.0 * Math.PI);

    /// <summary>Frequency of the damped swing Im λ/2π, Hz; 0 when it creeps.</summary>
    public double DampedFrequency => Root.Imaginary / (2.0 * Math.PI);

    /// <summary>Damping ratio −Re λ/|λ| (–); 1 when it creeps, negative when it grows.</summary>
    public double DampingRatio => Root.Magnitude > 0.0 ? -Root.Real / Root.Magnitude : 0.0;

    /// <summary>The motion with the largest share.</summary>
    public Motion Dominant => Shares.MaxBy(s => s.Value).Key;

    /// <summary>What moves in words, "creeping" when the mode does not swing.</summary>
    public string Name => (Swings, Swing) switch
    {
        (true, { } swing) => BodySwings.Name(swing),
        (false, BodySwing.FrontEnd) => "creeping front end",
        (false, BodySwing.RearEnd) => "creeping rear end",
        (false, { } swing) => "creeping " + BodySwings.Name(swing),
        (true, null) => Words(Dominant),
        _ => "creeping " + Words(Dominant),
    };

    /// <summary>Time in which it falls to 1/e, −1/Re λ, s; infinite without damping, negative when it grows.</summary>
    public double TimeConstant => Root.Real == 0.0 ? double.PositiveInfinity : -1.0 / Root.Real;

    /// <summary>Whether it grows by itself. Rounding of an undamped mode does not count.</summary>
    public bool Grows => Root.Real > 1e-9 * Root.Magnitude;

    internal static string Words(Motion motion) => motion switch
    {
        Motion.Heave => "heave",
        Motion.Pitch => "pitch",
        Motion.Roll => "roll",
        Motion.FrontHop => "front wheel hop",
        Motion.FrontTramp => "front wheel tramp",
        Motion.RearHop => "rear wheel hop",
        Motion.RearTramp => "rear wheel tramp",
        Motion.Flow => "flow in the fluid lines",
        _ => "opposed flow in the fluid lines",
    };
}
