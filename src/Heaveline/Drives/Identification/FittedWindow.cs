namespace Heaveline.Drives.Identification;

/// <summary>What the fit says of one window.</summary>
/// <param name="Event">The number of its event; 0 for none.</param>
/// <param name="Site">Its site; null on rough road.</param>
/// <param name="Speed">Speed, m/s.</param>
/// <param name="SpeedHalfWidth">Half-width of its 90 % interval, m/s.</param>
/// <param name="Onset">Time from the window's first sample to where the front axle meets the hump, s.</param>
/// <param name="OnsetHalfWidth">Half-width of its 90 % interval, s.</param>
public sealed record FittedWindow(int Event, string? Site, double Speed, double SpeedHalfWidth, double Onset, double OnsetHalfWidth);
