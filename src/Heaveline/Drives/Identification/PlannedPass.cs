namespace Heaveline.Drives.Identification;

/// <summary>A window that was never driven: what it would tell of a car is worked out from the likelihood.</summary>
public sealed record PlannedPass
{
    /// <summary>Speed, m/s.</summary>
    public required double Speed { get; init => field = CarValue.Above(value, 0.0, "the speed of a planned pass"); }

    /// <summary>How many times.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Name of its hump, one of the planned humps; null for 5 s of rough road.</summary>
    public string? Site { get; init; }

    /// <summary>Standard deviation of the logarithm of the speed as it will be known.</summary>
    public double SpeedSpread { get; init; } = 0.03;
}
