namespace Heaveline.Drives.Identification;

/// <summary>
/// Mean power of the windows at one frequency, measured and as the fitted car has it: its hump, the road's roughness and noise together.
/// </summary>
/// <param name="Frequency">Hz.</param>
/// <param name="Vertical">Of the vertical acceleration, measured, (m/s²)²/Hz.</param>
/// <param name="VerticalModel">The same of the model.</param>
/// <param name="Pitch">Of the pitch rate, measured, (rad/s)²/Hz.</param>
/// <param name="PitchModel">The same of the model.</param>
public sealed record FittedSpectrum(double Frequency, double Vertical, double VerticalModel, double Pitch, double PitchModel);
