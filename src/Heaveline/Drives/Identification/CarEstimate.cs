namespace Heaveline.Drives.Identification;

/// <summary>
/// A number of the car with its interval. It is that of the motion's equivalent linear car, not of the springs and dampers in a car file.
/// </summary>
public sealed record CarEstimate
{
    /// <summary>Which.</summary>
    public required CarNumber Number { get; init; }

    /// <summary>Its value, Hz or a ratio.</summary>
    public required double Value { get; init; }

    /// <summary>Lower end of the 90 % interval.</summary>
    public required double Low { get; init; }

    /// <summary>Upper end of the 90 % interval.</summary>
    public required double High { get; init; }

    /// <summary>Lower end of what was thought with 90 % before the drive.</summary>
    public double KnownLow { get; init; }

    /// <summary>Upper end of what was thought with 90 % before the drive.</summary>
    public double KnownHigh { get; init; }

    /// <summary>What the drive told: 1 less the standard deviation after it over that before it, 0 to 1.</summary>
    public required double Learned { get; init; }

    /// <summary>Whether it is said with its interval.</summary>
    public required bool IsSaid { get; init; }

    /// <summary>Why it is not, a sentence; blank where it is.</summary>
    public string Reason { get; init => field = value ?? ""; } = "";
}
