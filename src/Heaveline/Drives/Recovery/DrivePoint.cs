namespace Heaveline.Drives.Recovery;

/// <summary>How a car is driven at one time of a planted drive.</summary>
/// <param name="Time">s.</param>
/// <param name="Speed">m/s, 0 or above.</param>
/// <param name="YawRate">To the left positive, rad/s.</param>
public readonly record struct DrivePoint(double Time, double Speed, double YawRate = 0.0);
