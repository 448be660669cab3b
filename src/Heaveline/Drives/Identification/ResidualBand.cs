namespace Heaveline.Drives.Identification;

/// <summary>How well the car explains one band of frequencies: the power of what is left, whitened, 1 where the model holds.</summary>
/// <param name="From">Lower end, Hz.</param>
/// <param name="To">Upper end, Hz.</param>
/// <param name="Vertical">Of the vertical acceleration.</param>
/// <param name="Pitch">Of the pitch rate.</param>
public sealed record ResidualBand(double From, double To, double Vertical, double Pitch);
