namespace Heaveline.Drives.Events;

/// <summary>What was measured about a bump, sample by sample.</summary>
/// <param name="Pitch">Pitch angle, its slow part below 0.1 Hz taken off, rad.</param>
/// <param name="PitchRate">Pitch rate, rad/s.</param>
/// <param name="PitchAcceleration">Pitch acceleration below 8 Hz, rad/s².</param>
/// <param name="Vertical">Vertical acceleration where heave is wanted, m/s².</param>
/// <param name="Heave">Height of the body's middle, its slow part below 0.1 Hz taken off, m.</param>
internal sealed record MeasuredMotion(double[] Pitch, double[] PitchRate, double[] PitchAcceleration, double[] Vertical, double[] Heave);
