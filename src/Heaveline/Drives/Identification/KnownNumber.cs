namespace Heaveline.Drives.Identification;

/// <summary>What is known of a number of the car before the drive: its logarithm is normal.</summary>
/// <param name="Centre">Its middle, in the number's own unit, above zero.</param>
/// <param name="Spread">Standard deviation of its logarithm, above zero.</param>
public readonly record struct KnownNumber(double Centre, double Spread);
