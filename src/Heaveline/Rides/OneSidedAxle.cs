namespace Heaveline.Rides;

/// <summary>What the sides of an axle differ by: half of the left wheel's number less the right one's.</summary>
public readonly record struct OneSidedAxle
{
    /// <summary>Half the difference of suspension rates, N/m.</summary>
    public double Rate { get; init; }

    /// <summary>Half the difference of dampings, N s/m.</summary>
    public double Damping { get; init; }
}
