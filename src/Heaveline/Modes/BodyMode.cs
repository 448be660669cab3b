namespace Heaveline.Modes;

/// <summary>One of the two undamped body modes of the bounce–pitch model: a frequency and the point about which the body swings.</summary>
public sealed record BodyMode
{
    /// <summary>Circular frequency ω, rad/s.</summary>
    public required double Omega { get; init; }

    /// <summary>Motion centre ahead of the loaded centre of gravity x = z/θ, m; behind is negative; infinite for pure heave.</summary>
    public required double NodeAhead { get; init; }

    /// <summary>Motion centre behind the front axle, m; ahead of it is negative; infinite for pure heave.</summary>
    public required double NodeBehindFrontAxle { get; init; }

    /// <summary>Whether the centre lies between the axles.</summary>
    public required bool NodeBetweenAxles { get; init; }

    /// <summary>Frequency ω/2π, Hz.</summary>
    public double Frequency => Omega / (2.0 * Math.PI);
}
