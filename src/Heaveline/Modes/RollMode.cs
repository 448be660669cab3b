namespace Heaveline.Modes;

/// <summary>Roll of the body by itself on all springs, bars and tyres, about the middle plane, undamped.</summary>
public sealed record RollMode
{
    /// <summary>
    /// Roll stiffness of springs, bars and interconnection at trim against a slow roll (a fluid line at one pressure), on rigid tyres, N m/rad.
    /// </summary>
    public required double Stiffness { get; init; }

    /// <summary>The same with the tyres in series, N m/rad.</summary>
    public required double StiffnessOnTyres { get; init; }

    /// <summary>Front axle's share of <see cref="Stiffness"/>, bars included (–).</summary>
    public required double FrontShare { get; init; }

    /// <summary>Gravity's tilting moment M·g·h_φ that works against it, N m/rad; 0 when no roll axis height is given.</summary>
    public required double Gravity { get; init; }

    /// <summary>Frequency √((K_φ − M·g·h_φ)/I_xx)/2π with the tyres, a fluid line giving way as it does at that frequency, Hz.</summary>
    public required double Frequency { get; init; }
}
