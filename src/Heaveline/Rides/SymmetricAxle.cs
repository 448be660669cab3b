namespace Heaveline.Rides;

/// <summary>
/// One side of one axle of a car that is alike on both sides, as numbers at the wheel. Together: both wheels move alike (heave, pitch); against: they
/// move opposite (roll), with bars, and with a solid axle's elements at their own places.
/// </summary>
public readonly record struct SymmetricAxle
{
    /// <summary>Ahead of the loaded centre of gravity, m; negative behind.</summary>
    public double X { get; init; }

    /// <summary>Half the track, m.</summary>
    public double Y { get; init; }

    /// <summary>Suspension rate per wheel, both wheels together, N/m.</summary>
    public double Rate { get; init; }

    /// <summary>Suspension rate per wheel, wheels against each other, N/m.</summary>
    public double RollRate { get; init; }

    /// <summary>Damping per wheel, together, N s/m.</summary>
    public double Damping { get; init; }

    /// <summary>Damping per wheel, against, N s/m.</summary>
    public double RollDamping { get; init; }

    /// <summary>Moving mass per wheel, together, kg.</summary>
    public double HopMass { get; init; }

    /// <summary>Moving mass per wheel, against, kg; another one for a solid axle.</summary>
    public double TrampMass { get; init; }

    /// <summary>Tyre rate, N/m.</summary>
    public double TyreRate { get; init; }

    /// <summary>Tyre damping, N s/m.</summary>
    public double TyreDamping { get; init; }
}
