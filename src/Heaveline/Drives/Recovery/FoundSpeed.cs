namespace Heaveline.Drives.Recovery;

/// <summary>A speed that a drive tells, with what holds it in nine cases of ten.</summary>
/// <param name="Speed">m/s.</param>
/// <param name="Low">Lower end, m/s; minus infinity where it may lie below all speeds that were looked at.</param>
/// <param name="High">Upper end, m/s; infinity where it may lie above them.</param>
public sealed record FoundSpeed(double Speed, double Low, double High);
