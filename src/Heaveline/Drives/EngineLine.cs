namespace Heaveline.Drives;

/// <summary>A steady hum of the engine in the vertical acceleration.</summary>
/// <param name="Frequency">Its frequency, Hz.</param>
/// <param name="Amplitude">Its amplitude, m/s².</param>
public sealed record EngineLine(double Frequency, double Amplitude);
