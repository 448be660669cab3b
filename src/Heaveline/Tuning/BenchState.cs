namespace Heaveline.Tuning;

/// <summary>The suspension in one state of its interconnection: rates, damping and the price in braking.</summary>
public sealed record BenchState
{
    /// <summary>The state in words ("without the link").</summary>
    public required string Name { get; init; }

    /// <summary>Stiffness of the four motions.</summary>
    public required ModalRates Stiffness { get; init; }

    /// <summary>
    /// Damping of the four motions: the dampers' mean slope at zero velocity, and in a pipe what its resistance adds at the stated frequency.
    /// </summary>
    public required ModalRates Damping { get; init; }

    /// <summary>Pitch in steady braking at half a g on the tangent, rad, nose-down positive, anti-dive and tyres included.</summary>
    public required double BrakingPitch { get; init; }

    /// <summary>Frequency at which it holds, Hz; 0 for slow changes.</summary>
    public required double Frequency { get; init; }
}
