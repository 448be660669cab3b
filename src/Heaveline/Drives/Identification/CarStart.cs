namespace Heaveline.Drives.Identification;

/// <summary>Where one start of the fit ended.</summary>
/// <param name="FrontFrequency">Front ride frequency, Hz.</param>
/// <param name="RearFrequency">Rear ride frequency, Hz.</param>
/// <param name="FrontDamping">Front damping ratio.</param>
/// <param name="RearDamping">Rear damping ratio.</param>
/// <param name="PitchIndex">Dynamic index.</param>
/// <param name="Behind">Log likelihood by which it is behind the best, 0 for the best itself.</param>
public sealed record CarStart(
    double FrontFrequency, double RearFrequency, double FrontDamping, double RearDamping, double PitchIndex, double Behind);
