namespace Heaveline.Cars;

/// <summary>One spring, described at itself, and how far it moves with its wheel.</summary>
public sealed record Spring
{
    /// <summary>Force against its own travel.</summary>
    public required SpringLaw Law { get; init; }

    /// <summary>Spring travel per wheel travel. One when the rate is given at the wheel.</summary>
    public MotionRatio MotionRatio { get; init; } = MotionRatio.One;
}
