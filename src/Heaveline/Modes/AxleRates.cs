using Heaveline.Elements;

namespace Heaveline.Modes;

/// <summary>
/// What one axle's springs amount to at trim: both its wheels move together, the other axle is held, so that an anti-roll bar has no say and an
/// interconnection only its own end's part.
/// </summary>
public sealed record AxleRates
{
    /// <summary>Tangent rate of the whole axle at its wheels, without tyres, N/m.</summary>
    public required double AxleRate { get; init; }

    /// <summary>Tangent rate of one wheel k_w [SAE J670 "wheel rate"], N/m: the axle's over its number of wheels.</summary>
    public required double WheelRate { get; init; }

    /// <summary>Rate of the whole axle with its tyres in series, K = k·k_t/(k + k_t) [SAE J670 "ride rate"], N/m.</summary>
    public required double RideRate { get; init; }

    /// <summary>Sprung mass on the axle m, kg.</summary>
    public required double SprungMass { get; init; }

    /// <summary>Unsprung mass of the axle, kg.</summary>
    public required double UnsprungMass { get; init; }

    /// <summary>The axle's rate while its wheels hop, N/m: <see cref="AxleRate"/>, but that a fluid line gives way less.</summary>
    public required double HopRate { get; init; }

    /// <summary>Tyre rate of the whole axle k_t, N/m.</summary>
    public required double TyreRate { get; init; }

    /// <summary>Ride frequency with the tyres, √(K/m)/2π, undamped, Hz.</summary>
    public double Frequency => Cycles(RideRate, SprungMass);

    /// <summary>Ride frequency on rigid tyres, √(k/m)/2π, Hz.</summary>
    public double FrequencyOnRigidTyres => Cycles(AxleRate, SprungMass);

    /// <summary>
    /// Effective static deflection δ = sprung load over tangent rate, m. √(g/δ)/2π = 0.4984/√δ is the frequency on rigid tyres for every spring,
    /// linear or not.
    /// </summary>
    public double Deflection => SprungMass * Gravity.Standard / AxleRate;

    /// <summary>Wheel-hop frequency with the body held, √((k + k_t)/m_u)/2π, Hz.</summary>
    public double HopFrequency => Cycles(HopRate + TyreRate, UnsprungMass);

    private static double Cycles(double rate, double mass) => Math.Sqrt(rate / mass) / (2.0 * Math.PI);
}
